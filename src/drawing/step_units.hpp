#pragma once

#include "drawing/steps.hpp"

namespace whorl::drawing {

/// The rings of a figure in the order in which they are worked: what it repeats or begins with, then round by
/// round.
std::vector<std::uint32_t> in_order(const layout::Figure& figure);

} // namespace whorl::drawing
