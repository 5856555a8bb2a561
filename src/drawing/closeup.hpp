#pragma once

#include "drawing/box.hpp"
#include "drawing/copy.hpp"
#include "drawing/legend_making.hpp"

namespace whorl::drawing {

/// What only pictures for screens have: what is done, what comes next, what is worked into.
namespace ink {
inline constexpr Color done{0x8d8983}, coming{0xcfcac2}, lit{0xFBE7A6};
}

/// The rings of a figure in the order in which they are worked: what it repeats or begins with, then round by
/// round.
std::vector<std::uint32_t> in_order(const layout::Figure& figure);

/// The ring that one is worked into, which stands before it; none: it begins the figure.
std::uint32_t ring_below(const layout::Figure& figure, std::uint32_t ring);

/// One repeat of a ring, drawn large and turned upright in the middle of `area`: what it is worked into, lit,
/// its stitches with their names, and a dotted line from each to the place that it goes into. `making.scale`
/// is that of its symbols.
Group draw_closeup(const Making& making, std::size_t figure, std::uint32_t ring, const Box& area);

/// The lit ground under the items of a ring: a broad line along them, `scale` mm per W.
Item lit_band(const layout::Figure& figure, const layout::Ring& ring, const Frame& frame);

/// The items that a step shows close up, from `first` of the ring's on: one repeat, as far from the ring's
/// ends as it can be, or a few stitches of a round without repeats.
struct Repeat {
  std::uint32_t first = 0, count = 0;
};
Repeat repeat_shown(const layout::Figure& figure, const layout::Ring& ring);

} // namespace whorl::drawing
