#pragma once

#include "layout/contour.hpp"

#include <vector>

namespace whorl::layout {

/// So near the line on which rounds begin stands upright, and their numbers make a column.
inline constexpr double upright_beside = 1.25;

/// Contours round a core that lies on the x axis: two straight sides and two half circles. Lengths along them
/// count from a line over the end at which rounds begin, first slanting, then upright, in the direction of
/// work; `r` is the distance from the core.
struct Stadium {
  double half = 0; ///< half the length of the core
  Way way = Way::anticlockwise;
  double beside = upright_beside; ///< rounds begin no further beside the end of the first side
};

double length_of(const Stadium& stadium, double r);

/// The point of a contour, and the way out and the way on there.
Point point_on(const Stadium& stadium, double r, double at);
Point outward(const Stadium& stadium, double r, double at);
Point along(const Stadium& stadium, double r, double at);

/// A place of one contour carried to another, square to both: it may come to lie before the start there, or
/// behind the end.
double carried_square(const Stadium& stadium, double r, double at, double to);

/// The place on a contour under what stands `aside` of the ray from a place, at distance `far` from the core.
double aside_on(const Stadium& stadium, double r, double at, double aside, double far);

/// A place carried to another contour, as far as the other begins and ends there.
double carried(const Stadium& stadium, double r, double at, double to);

/// Cubic curves (1 + 3n points) along a contour from one place to a greater one.
std::vector<Point> curve_on(const Stadium& stadium, double r, double from, double to);

/// The nearest point of the core: the middle of the half circle, or square below.
Point core_under(const Stadium& stadium, Point p);

// Places along a contour.
double side_begins(const Stadium& stadium, double r);     ///< the first straight side, by which work begins
double far_end_begins(const Stadium& stadium, double r);  ///< the half circle at the far end
double back_begins(const Stadium& stadium, double r);     ///< the side along which work comes back
double near_end_begins(const Stadium& stadium, double r); ///< the half circle in which rounds end

} // namespace whorl::layout
