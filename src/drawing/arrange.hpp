#pragma once

#include "drawing/blocks.hpp"
#include "drawing/rows.hpp"

#include <vector>

namespace whorl::drawing {

/// A block where it stands; `at` is its top left corner.
struct StandingBlock {
  std::size_t block = 0;
  Point at;
  Setting setting;
};

/// How figures and furniture stand between the margins, in mm from the upper left corner, y downward.
struct Arrangement {
  std::vector<Row> rows;
  std::vector<double> heads; ///< of each row: where the heads of its parts begin …
  std::vector<double> tops;  ///< … and its figures
  std::vector<StandingBlock> blocks;
  double width = 0, height = 0;
};

/// Figures in rows of `figures` at the most, furniture in the columns that they leave free within `width`;
/// what finds no room there stands under them.
Arrangement arrange(const Copy& copy, const std::vector<Cell>& cells, const std::vector<Block>& blocks,
                    double figures, double width);

/// The arrangement, at least so wide, that takes the least paper of a good shape.
Arrangement best_arrangement(const Copy& copy, const std::vector<Cell>& cells,
                             const std::vector<Block>& blocks, double least);

/// The arrangement, just so wide, that is lowest.
Arrangement lowest_arrangement(const Copy& copy, const std::vector<Cell>& cells,
                               const std::vector<Block>& blocks, double width);

} // namespace whorl::drawing
