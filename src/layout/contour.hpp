#pragma once

#include "layout/extents.hpp"

#include <vector>

namespace whorl::layout {

/// Which way work runs round a disc; angles count from 12 o'clock in that direction.
enum class Way : std::uint8_t { anticlockwise, clockwise };

/// The direction from the centre at an angle.
Point outward(double angle, Way way);

/// The direction in which work runs there.
Point along(double angle, Way way);

/// The point of a circle round (0, 0) at an angle.
Point on_circle(double radius, double angle, Way way);

/// Cubic curves (1 + 3n points) along a circle from one angle to a greater one.
std::vector<Point> circle_curve(double radius, double from, double to, Way way);

/// Goes straight on, as a cubic curve, to a point.
void line_to(Point to, std::vector<Point>& points);

/// Goes on along a circle, at whose first angle it stands, to a greater one.
void curve_on(double radius, double from, double to, Way way, std::vector<Point>& points);

} // namespace whorl::layout
