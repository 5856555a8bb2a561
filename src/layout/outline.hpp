#pragma once

#include "layout/contour.hpp"

#include <vector>

namespace whorl::layout {

/// Contours round a convex core: straight sides, and an arc round each of its corners. Lengths along them
/// count from the start of the first side in the direction of `way`; `r` is the distance from the core.
struct Surround {
  std::vector<Point> corners; ///< anticlockwise
  Way way = Way::anticlockwise;
};

/// The outline round all points, with few corners: a short side is left out where its neighbours meet no
/// further than `loose` from it. Empty where the points have no breadth.
Surround outline_round(const std::vector<Point>& points, double loose);

double length_of(const Surround& outline, double r);

/// A point of a contour and the way out there; the way on is square to it.
struct OnSurround {
  Point at, out, on;
};
OnSurround on_outline(const Surround& outline, double r, double at);

/// A place of one contour carried to another, square to both.
double carried(const Surround& outline, double r, double at, double to);

/// A place of a contour, and how far the core is there from a point.
struct NearSurround {
  double at = 0;
  double away = 0;
};

/// Where the core is met from a point in it in this direction.
NearSurround met_outline(const Surround& outline, double r, Point p, Point direction);

/// How far a point is from the core; 0: it lies in it.
double away_from(const Surround& outline, Point p);

/// The middle of the arc round the corner that is nearest to a point, and how far that corner is.
NearSurround near_corner(const Surround& outline, double r, Point p);

/// Straight pieces along a contour from one place to a greater one, its arcs in short chords.
std::vector<Point> along_outline(const Surround& outline, double r, double from, double to);

} // namespace whorl::layout
