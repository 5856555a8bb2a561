#pragma once

#include "drawing/blocks.hpp"
#include "drawing/cell.hpp"
#include "drawing/slicing.hpp"

#include <vector>

namespace whorl::drawing {

/// What belongs to one part: its figures, and which of the blocks are its own.
struct Section {
  std::uint32_t part = 0;
  std::vector<Cell> cells;
  std::vector<std::size_t> blocks;
};

/// The ways to set the figures and the furniture of a part, without its head. Things are its cells, then its
/// blocks.
struct SectionSlices {
  Slicing slicing;
  Front front;
  std::vector<std::vector<Setting>> forms; ///< of each block
};

/// Figures stand in their order, from the upper left on; furniture beside or under them, and above low ones
/// that stand beside high ones. `most`: width that tables keep within.
SectionSlices slices_of(const Section& section, const std::vector<Block>& blocks, double most);

} // namespace whorl::drawing
