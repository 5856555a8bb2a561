#pragma once

#include "stitch/moves.hpp"

#include <cstdint>
#include <vector>

namespace whorl::stitch {

/// What lies on the hook: a whole loop (the first, or what a pull leaves), yarn laid over it, a loop drawn up
/// out of the work, or the loop of a stitch itself.
enum class Held : std::uint8_t { loop, wrap, drawn, taken };

struct HeldLoop {
  Held what = Held::loop;
  bool fresh = false; ///< came onto the hook since `settle`
  bool operator==(const HeldLoop&) const = default;
};

/// The hook between two moves.
struct Hook {
  std::vector<HeldLoop> loops{HeldLoop{}}; ///< from the handle to the head, in the order they came
  int dropped = 0;                         ///< loops that were let go and wait
  bool inserted = false;                   ///< it stands in a stitch, and nothing has been drawn through yet
  bool operator==(const Hook&) const = default;

  int count() const { return static_cast<int>(loops.size()); }
};

/// Does one move; false if it needs more loops than there are.
bool make(const Move& move, Hook& hook);

/// What is on the hook is no longer fresh.
void settle(Hook& hook);

} // namespace whorl::stitch
