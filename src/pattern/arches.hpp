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

/// Puts the chain spaces that a body makes, and the chains in them, into its effect. Chains worked one after
/// the other are one space; those that a round or row begins with, or that are turned with, climb, if they do
/// not belong to a repeat or lead over skipped stitches.
void put_arches(const std::vector<Node>& nodes, NodeId body, const std::vector<stitch::StitchKind>& kinds,
                Effect& effect);

} // namespace whorl::pattern
