#pragma once

#include "drawing/standing.hpp"

#include <functional>
#include <vector>

namespace whorl::drawing {

/// How high the legend is in a width; empty: it stands under everything.
using LegendHeight = std::function<double(double)>;

/// The arrangement, at least so wide, that takes the least paper of a good shape: part by part, parts side by
/// side where that leaves less paper empty, the legend among them.
Arrangement best_arrangement(const Copy& copy, const std::vector<Cell>& cells,
                             const std::vector<Block>& blocks, double least, const LegendHeight& legend);

/// The arrangement, just so wide, that is lowest.
Arrangement lowest_arrangement(const Copy& copy, const std::vector<Cell>& cells,
                               const std::vector<Block>& blocks, double width);

} // namespace whorl::drawing
