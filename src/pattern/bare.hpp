#pragma once

#include "pattern/meaning.hpp"
#include "pattern/tree.hpp"

#include <vector>

namespace whorl::pattern {

/// Whether increases and decreases that name no stitch may be of this one: not of bobbles and clusters.
bool may_be_meant(const stitch::StitchKind& kind);

/// Makes increases and decreases that name no stitch those of `stitch`: 6 hdc inc, hdc2tog.
void take_stitch(std::vector<Node>& nodes, const std::vector<NodeId>& bare, stitch::KindId stitch,
                 Kinds& kinds);

/// A round that names no stitch at all (`inc x 6`) takes the one of the rounds of its part that stand shortly
/// before it, where they have only one. `bare`: its increases and decreases, less `offset`.
void settle_by_rounds_before(Tree& tree, std::uint32_t part, const std::vector<NodeId>& bare, NodeId offset);

} // namespace whorl::pattern
