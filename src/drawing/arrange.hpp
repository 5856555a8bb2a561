#pragma once

#include "drawing/section.hpp"

#include <vector>

namespace whorl::drawing {

/// The arrangement, at least so wide, that takes the least paper of a good shape: part by part, small parts
/// side by side.
Arrangement best_arrangement(const Copy& copy, const std::vector<Cell>& cells,
                             const std::vector<Block>& blocks, double least);

/// The arrangement, just so wide, that is lowest.
Arrangement lowest_arrangement(const Copy& copy, const std::vector<Cell>& cells,
                               const std::vector<Block>& blocks, double width);

} // namespace whorl::drawing
