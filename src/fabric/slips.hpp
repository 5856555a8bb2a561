#pragma once

#include "fabric/fabric.hpp"

#include <string>
#include <vector>

namespace whorl::fabric {

/// A slip of the hand that gives a round another count than its pattern.
enum class SlipKind : std::uint8_t {
  increase_missed,    ///< one stitch where several go into one place
  decrease_missed,    ///< a plain stitch in each place that a decrease draws together
  decrease_for_plain, ///< two plain stitches drawn together
  two_in_one,         ///< two stitches where one is meant
  stitch_skipped,
  repeat_left_out,
  repeat_too_many,
  ring_count,        ///< too few or too many worked into the ring
  join_worked,       ///< the joining slip stitch was worked into, or counted
  chain_counted,     ///< the starting chain was counted, which is no stitch
  chain_not_counted, ///< … was not, which is one
  round_left_out,    ///< the count is that of the round before
  round_too_many,    ///< the count is that of the round after
  earlier_round,     ///< the round named had already another count
};

/// Stitches of a round, from the first to the last; those that count are numbered from 1.
struct Stretch {
  std::uint32_t first = 0;
  std::uint32_t last = 0;
  bool operator==(const Stretch&) const = default;
};

/// One slip that explains a count, and where it can be.
struct Slip {
  SlipKind what = SlipKind::increase_missed;
  std::uint32_t round = none; ///< index into Fabric::rounds: where it was made
  std::uint32_t times = 1;    ///< made so often
  std::vector<Stretch> where; ///< in the round as the pattern has it; empty: nowhere in particular
  std::uint32_t repeats = 0;  ///< passes of the repeat that it is in; 0: it is in none
  std::uint32_t have = 0;     ///< how many stitches that round then has
  int cost = 0;               ///< less is likelier
};

/// The slips that would give `round` (an index into Fabric::rounds) `have` stitches instead of its own count,
/// likeliest first, at most eight. None where the count is right or the round has no stitches here.
std::vector<Slip> slips(const Fabric& fabric, std::uint32_t round, std::uint32_t have);

/// The slip in a sentence for a beginner.
std::string told(const Fabric& fabric, const Slip& slip);

} // namespace whorl::fabric
