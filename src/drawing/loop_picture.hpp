#pragma once

#include "drawing/copy.hpp"
#include "drawing/legend.hpp"

namespace whorl::drawing {

/// Whether a figure has stitches that are marked as worked in one loop.
bool has_loop_marks(const layout::Figure& figure);

/// Room that the picture of the two loops needs at the least.
inline constexpr double loop_picture_width = 38, loop_picture_height = 32;

/// Three stitch tops from above with the names of their two loops, in the middle of `width`. A set of loops
/// that are worked into are coloured, as their name says; none: the front one, a legend's.
struct LoopsWorked {
  std::uint8_t loops = stitch::front;
  Color color = ink::yarn_ground;
};
Drawn draw_loop_picture(const Copy& copy, Point at, double width, const LoopsWorked& worked = {});

} // namespace whorl::drawing
