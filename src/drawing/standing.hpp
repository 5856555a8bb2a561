#pragma once

#include "drawing/section.hpp"

#include <vector>

namespace whorl::drawing {

/// A figure where it stands: its upright axis and its lower edge.
struct StandingCell {
  Cell cell;
  Point at;
};

/// The head of a part above its first figure.
struct StandingHead {
  std::uint32_t part = 0;
  Point at;
  double width = 0;
};

/// A block where it stands; `at` is its top left corner.
struct StandingBlock {
  std::size_t block = 0;
  Point at;
  Setting setting;
};

/// How figures and furniture stand between the margins, in mm from the upper left corner, y downward.
struct Arrangement {
  std::vector<StandingCell> cells;
  std::vector<StandingHead> heads;
  std::vector<StandingBlock> blocks;
  Point legend;            ///< its upper left corner …
  double legend_width = 0; ///< … 0: it stands under everything
  double width = 0, height = 0;
};

/// Sets down a part, one of the pieces of its front, with its upper left corner at `at`.
void set_down(const Section& section, const std::vector<Block>& blocks, const SectionSlices& slices,
              std::uint32_t piece, Point at, double width, Arrangement& whole);

} // namespace whorl::drawing
