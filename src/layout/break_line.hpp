#pragma once

#include "layout/place.hpp"

namespace whorl::layout {

/// A break line outside a folded ring: from the heads to its middle, and how far from that its zigzags reach,
/// stroke and air included.
inline constexpr double ring_break_middle = 0.575, ring_break_reach = 0.26;
inline constexpr int ring_zigzags = 8;
inline constexpr double zigzag_high = 0.20;      ///< above and below any break line
inline constexpr double ring_zigzag_long = 0.48; ///< along it

/// The arrow of direction: from all ink to it, and how long it is.
inline constexpr double arrow_gap = 0.62, arrow_long = 2.6;

/// Its head: where it ends, the way it runs there, and the way out.
inline Stroke arrow_head(Point tip, Point on, Point out) {
  constexpr double barb_long = 0.42, barb_aside = 0.19;
  const Point back = tip - barb_long * on, aside = barb_aside * out;
  return {Line::direction, {back + aside, tip, back - aside}, false};
}

} // namespace whorl::layout
