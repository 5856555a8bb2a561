#pragma once

#include "layout/divide.hpp"

#include <cstdint>
#include <vector>

namespace whorl::layout {

/// What a disc would show as one ring, as far as the choice of strips asks. Rounds are places of what is
/// divided.
struct Tier {
  std::uint32_t first = 0, last = 0;
  std::uint32_t count = 0; ///< its stitches
  std::uint32_t weight = ring_weight;
  bool even = false;     ///< no round of it has more or fewer stitches than the one before
  bool coloured = false; ///< worked in several yarns
  bool owner = false;    ///< the faint round in whose loops the part begins

  /// How much a tier counts from the centre, in fourteenths of a ring.
  static constexpr std::uint32_t ring_weight = 14, looped_weight = 21, folded_weight = 28;
};

/// Takes strips out of discs: even tiers that stand far out for their few stitches (the k-th of n stitches
/// where 10 k > 3 n; of one or two rounds on the way to more stitches 50 k > 18 n), or that are worked in
/// several yarns; but of several short ones on the way none, as where a pointed hat grows in steps; and the
/// outer tiers of a cone, where most stand as far out and the longest is at most 2.1 times the shortest. Little growing and shrinking between strips and behind the last goes with them. The
/// round of an owner keeps the first of the part's own. `tiers` are those of all discs, in the order of work.
std::vector<Stretch> choose_strips(const std::vector<Stretch>& discs, const std::vector<Tier>& tiers,
                                   const Ends& ends);

} // namespace whorl::layout
