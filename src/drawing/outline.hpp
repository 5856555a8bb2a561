#pragma once

#include "drawing/scene.hpp"

#include <vector>

namespace whorl::drawing {

/// Points along a path, curves cut into eight: one run for each piece between moves.
std::vector<std::vector<Point>> flatten(const Path& path);

/// The smallest convex outline that holds discs of `radius` about the points, anticlockwise where y is
/// upward.
layout::Convex convex_around(const std::vector<Point>& points, double radius);

/// The ink of a pen as convex pieces: a closed shape is one, an open line one for each bend.
void append_ink(std::vector<layout::Convex>& ink, const Pen& pen);

} // namespace whorl::drawing
