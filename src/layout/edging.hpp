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
  bool anywhere = false;   ///< however far out they find room
};

/// How an edging stands: not at all, since there is nothing that it could go along, or no room near to its
/// places; or with some stitches nearer to other places than to their own; or with all by their own.
enum class Edged : std::uint8_t { nowhere, crowded, aside, by_places };

/// Adds rounds round the rows that stand in a figure: each stitch outside what it is worked into, turned from
/// the piece; groups at a corner fan round it. Where they find no room the figure is of no use.
Edged add_edging(const fabric::Fabric& fabric, const Extents& extents, const Page& page, const Edging& edging,
                 const Footing& footing, Straight& drawn);

/// Writes their numbers beside the first stitches, clear of all that stands in the figure.
void add_edging_labels(const Extents& extents, Straight& drawn);

} // namespace whorl::layout
