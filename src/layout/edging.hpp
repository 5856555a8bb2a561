#pragma once

#include "layout/line.hpp"
#include "layout/straight.hpp"

#include <cstdint>
#include <vector>

namespace whorl::layout {

/// The rounds worked round the edge of a flat piece, or along some of it, one outside the other.
struct Edging {
  std::vector<std::uint32_t> rounds;
  std::vector<Item> lead;  ///< chains that the last row ended with, which the first of them begins with
  std::uint32_t inked = 0; ///< lines drawn before
};

/// Adds them round the rows that stand in a figure: each stitch outside what it is worked into, turned from
/// the piece; groups at a corner fan round it. False: they find no room near to their places, and the figure
/// is as it was.
bool add_edging(const fabric::Fabric& fabric, const Extents& extents, const Page& page, const Edging& edging,
                const Footing& footing, Straight& drawn);

/// Writes their numbers beside the first stitches, clear of all that stands in the figure.
void add_edging_labels(const Extents& extents, Straight& drawn);

} // namespace whorl::layout
