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

/// What belongs to one part: its figures, and which of the blocks are its own.
struct Section {
  std::vector<Cell> cells;
  std::vector<std::size_t> blocks;
};

/// A part's figures in rows of `figures` at the most, its furniture above the low ones and in the columns
/// that they leave free within `width`; what finds no room there stands under them. As wide as it needs to
/// be.
Arrangement set_section(const Copy& copy, const Section& section, const std::vector<Block>& blocks,
                        double figures, double width);

} // namespace whorl::drawing
