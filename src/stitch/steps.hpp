#pragma once

#include "stitch/hook.hpp"
#include "stitch/kind.hpp"

#include <cstddef>
#include <optional>
#include <vector>

namespace whorl::stitch {

/// Where an insertion goes, as a beginner is told.
enum class Goes : std::uint8_t {
  next,        ///< into the next stitch
  same,        ///< into the stitch that the leg before went into
  chain_made,  ///< into the first of the chains just made
  stitch_made, ///< into the top of the stitch that the chains just made stand on
  first_made,  ///< into the top of the first stitch of the group just made
};

/// One numbered step of the description of a stitch: a move, several wraps at once, or a repeat of steps.
struct Step {
  Move move;                 ///< a repeat: the last move of its pass
  int times = 1;             ///< a yarn over: how many; a repeat: how many more passes
  Goes goes = Goes::next;    ///< insert, take_loop: where; a repeat: where its passes begin
  bool all = false;          ///< pull_through: everything that is on the hook
  bool through_work = false; ///< pull_through, pick_up: through the place the hook stands in, too
  std::size_t first = 0;     ///< a repeat: number of its first step, from 1; 0: no repeat
  std::size_t last = 0;      ///< … and of its last
  std::vector<int> loops;    ///< on the hook after it; a repeat: after each pass
  Hook hook;                 ///< the hook after it
};

/// A stitch in numbered steps, from its row of moves: wraps that follow on one another are one step, and a
/// pass that comes three times or more is told once where that spares many steps. None if the row cannot be
/// worked.
std::optional<std::vector<Step>> steps_of(const StitchKind& kind);

} // namespace whorl::stitch
