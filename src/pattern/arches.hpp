#pragma once

#include "pattern/tree.hpp"

#include <vector>

namespace whorl::pattern {

/// Whether a repeat is done within a round: chains at its head are a space in every pass, the first of a
/// round too ("*ch 5, skip 1, sc in next* 12 times"). One that is joined or turned in each pass is several
/// rounds.
bool repeats_within_round(const std::vector<Node>& nodes, const Node& node);

/// Whether chains at the head of a round, behind which stitches are skipped, lead over these to a stitch of
/// this height: more than it takes to climb.
bool leads_over(std::uint32_t chains, int height);

/// Whether chains at the head of a row, whose first stitch of this height goes into a chain space, are a
/// space themselves: more than it takes to climb ("ch 2, turn, sc in first ch-1 sp").
bool leads_to_space(std::uint32_t chains, int height);

/// Chains of the space at the head of a row that begins in the nth chain from the hook with a stitch of this
/// height, for which the chains skipped stand or not; 0: there is none. "Dc in 6th ch from hook": three stand
/// for the stitch, one is the space, one lies under it; "sc in 4th ch from hook".
std::uint32_t chains_of_first_space(std::uint32_t nth, int height, bool counts);

/// Puts the chain spaces that a body makes, and the chains in them, into its effect. Chains worked one after
/// the other are one space; those that a round or row begins with, or that are turned with, climb, if they do
/// not belong to a repeat or lead over skipped stitches.
void put_arches(const std::vector<Node>& nodes, NodeId body, const std::vector<stitch::StitchKind>& kinds,
                Effect& effect);

} // namespace whorl::pattern
