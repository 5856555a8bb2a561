#pragma once

#include "drawing/scene.hpp"

#include <vector>

namespace whorl::drawing {

/// How a strand lies on the hook: a whole loop, yarn laid over it, a loop drawn up out of the work, the loop
/// of a stitch itself.
enum class Strand : std::uint8_t { loop, wrap, drawn, taken };

struct OnHook {
  Strand strand = Strand::loop;
  bool fresh = false; ///< drawn in ink; all else is hollow yarn
};

/// A hook between two moves, as a picture needs it.
struct HookState {
  std::vector<OnHook> strands; ///< from the handle to the head
  int waiting = 0;             ///< loops that were let go
  bool inserted = false;       ///< it stands in a stitch
};

/// Size of a picture, in mm.
inline constexpr double hook_picture_width = 33, hook_picture_height = 15.6;

/// The hook with its head to the left and what lies on it, the picture's upper left corner at `at`.
Group draw_hook(const HookState& hook, Point at);

} // namespace whorl::drawing
