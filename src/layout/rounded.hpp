#pragma once

#include "layout/contour.hpp"

namespace whorl::layout {

/// Contours of a motif round (0, 0), all of one form: circles, or polygons with rounded corners. Places along
/// one are fractions of it, from 12 o'clock in the direction of work; `r` is the distance of a side from the
/// middle.
struct Rounded {
  int corners = 0; ///< 0: circles; else at least 3
  Way way = Way::anticlockwise;
  double corner = 0.42; ///< radius of a corner, r being 1
  double ahead = 0;     ///< how far ahead of 12 o'clock the first side's middle is, in sides
};

double length_of(const Rounded& contour, double r);

/// The point of a contour, and the way out there.
Point point_on(const Rounded& contour, double r, double at);
Point outward(const Rounded& contour, double at);

/// A place of one contour carried to another, square to both.
double carried(const Rounded& contour, double r, double at, double to);

/// Cubic curves (1 + 3n points) once round a contour.
std::vector<Point> curve_round(const Rounded& contour, double r);

/// The contour on which a point lies, and its place there.
struct Spotted {
  double r = 0, at = 0;
};
Spotted spot_of(const Rounded& contour, Point p);

} // namespace whorl::layout
