#pragma once

#include "layout/place.hpp"
#include "layout/stadium.hpp"

#include <vector>

namespace whorl::layout {

/// The line with eight zigzags outside a folded ring, whose heads stand at `outer`, from one place to
/// another.
Stroke break_on(const Stadium& stadium, double outer, double from, double to);

/// The arrow of direction on a contour: its shaft, then its head.
std::vector<Stroke> arrow_on(const Stadium& stadium, double r);

} // namespace whorl::layout
