#pragma once

#include "layout/contour.hpp"

#include <vector>

namespace whorl::layout {

/// What an oval's rings go round: a core that lies on the x axis.
struct Stadium {
  double half = 0; ///< half the length of the core
  Way way = Way::anticlockwise;
};

/// One way round a core, two straight sides and two half circles: `r` from it. Lengths along it count from
/// where its round begins, in the direction of work.
struct Lap {
  double r = 0;
  double lead = 0; ///< it begins so far before the first straight side; behind that side's start: negative
};

double length_of(const Stadium& stadium, double r);

/// The lap at another distance that begins square to where this one does.
Lap square_to(const Stadium& stadium, const Lap& lap, double r);

/// The point of a lap, and the way out and the way on there.
Point point_on(const Stadium& stadium, const Lap& lap, double at);
Point outward(const Stadium& stadium, const Lap& lap, double at);
Point along(const Stadium& stadium, const Lap& lap, double at);

/// A place of one lap carried to another, square to both: it may come to lie before the start there, or
/// behind the end.
double carried(const Stadium& stadium, const Lap& from, double at, const Lap& to);

/// The place on a lap under what stands `aside` of the ray from a place, at distance `far` from the core.
double aside_on(const Stadium& stadium, const Lap& lap, double at, double aside, double far);

/// Cubic curves (1 + 3n points) along a lap from one place to a greater one.
std::vector<Point> curve_on(const Stadium& stadium, const Lap& lap, double from, double to);

/// The nearest point of the core: the middle of the half circle, or square below.
Point core_under(const Stadium& stadium, Point p);

// Places along a lap that begins with the first side.
double far_end_begins(const Stadium& stadium);            ///< the half circle at the far end
double back_begins(const Stadium& stadium, double r);     ///< the side along which work comes back
double near_end_begins(const Stadium& stadium, double r); ///< the half circle in which rounds end

} // namespace whorl::layout
