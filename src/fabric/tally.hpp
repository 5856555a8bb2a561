#pragma once

#include "fabric/fabric.hpp"

namespace whorl::fabric {

/// Tallies the last round of the fabric by kind, joins and starting chains apart, and puts it behind
/// `tallies`.
void tally_round(Fabric& fabric);

/// Whether a count of `whole` speaks of this kind too: "18 sc" of decreases and of sc that are worked in
/// another way, "6 popcorns" of those of 5 dc.
bool is_of(const stitch::StitchKind& kind, const stitch::StitchKind& whole);

/// What a stated count speaks of: the tally of its unit, else all stitches of the round that count. In a
/// round of nothing but slip stitches these are the stitches, in a round of nothing but chains the chains.
std::uint32_t counted_as(const Fabric& fabric, const Round& round, const pattern::Stated& stated);

/// "(6 sc, 6 dc)" is 12 in all: the sum of several kinds that a text counts; 0 if it counts no several.
std::uint32_t sum_of_kinds(const std::vector<pattern::Stated>& stated);

/// Whether a text counts groups and parts of a round, as it has them, but not all its stitches: "5 V-sts, 2
/// dc".
bool counts_groups(const Fabric& fabric, const Round& round, const std::vector<pattern::Stated>& stated);

/// Whether a round has not what its text says it has.
bool is_miscounted(const Round& round);

} // namespace whorl::fabric
