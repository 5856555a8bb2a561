#pragma once

#include "layout/extents.hpp"

#include <cmath>

namespace whorl::layout {

inline double dot(Point a, Point b) { return a.x * b.x + a.y * b.y; }
inline double cross(Point a, Point b) { return a.x * b.y - a.y * b.x; }
inline double length(Point p) { return std::sqrt(dot(p, p)); }

/// The direction of a point from the origin; up where it is none.
inline Point unit(Point p) { return length(p) > 1e-9 ? (1 / length(p)) * p : Point{0, 1}; }

} // namespace whorl::layout
