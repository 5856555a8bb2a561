#pragma once

#include "drawing/scene.hpp"

namespace whorl::drawing {

/// A line through points; `closed` joins the last to the first.
Path line_through(const std::vector<Point>& points);
Path closed_through(const std::vector<Point>& points);

/// Cubic curves: a start and three points each.
Path curve_through(const std::vector<Point>& points);

Path circle(Point centre, double radius);

/// A triangle with its point at `tip`, that looks along `direction` (a unit vector).
Path triangle(Point tip, Point direction, double length, double base);

/// A piece of a break line: straight, one zigzag in its middle, straight; `width` long.
Path break_line(Point middle, double width, double zigzag);

/// The arrow of direction as two paths, shaft and head, bent like those beside the discs; `width` wide,
/// pointing to the left where `way` is -1, to the right where it is 1.
std::vector<Path> bent_arrow(Point middle, double width, double way);

} // namespace whorl::drawing
