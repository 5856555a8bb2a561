#pragma once

#include "drawing/box.hpp"
#include "drawing/copy.hpp"
#include "drawing/legend_making.hpp"
#include "drawing/repeat.hpp"

namespace whorl::drawing {

/// What of a ring is drawn large.
struct Shown {
  Repeat repeat;
  fabric::StitchId now = 0, end = fabric::none; ///< worked in this picture; others are done, or to come
  std::string caption;
};

/// Some stitches of a ring, drawn large and turned upright in the middle of `area`: what they are worked
/// into, lit, the stitches with their names, and a dotted line from each to the place that it goes into.
/// `making.scale` is that of its symbols.
Group draw_closeup(const Making& making, std::size_t figure, std::uint32_t ring, const Shown& shown,
                   const Box& area);

} // namespace whorl::drawing
