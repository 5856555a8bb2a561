#pragma once

#include "layout/place.hpp"
#include "layout/stadium.hpp"

#include <vector>

namespace whorl::layout {

/// The line with eight zigzags outside the heads of a folded ring, which stand on a lap, from one place of it
/// to another.
Stroke break_on(const Stadium& stadium, const Lap& heads, double from, double to);

/// The arrow of direction on a lap: its shaft, then its head.
std::vector<Stroke> arrow_on(const Stadium& stadium, const Lap& lap);

} // namespace whorl::layout
