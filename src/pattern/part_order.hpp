#pragma once

#include "pattern/tree.hpp"

namespace whorl::pattern {

/// The nodes of a body in the order of the text.
std::vector<NodeId> nodes_in(const Tree& tree, NodeId body);

/// Whether a node names a round by its index in the tree, other than for the other side of its chain.
bool names_round(const Node& node);

/// Whether it works through the piece in hand and another part together.
bool goes_through_two(const Node& node);

/// Whether a part begins by itself and works into no part but those before `before`: it may as well be made
/// before that one.
bool can_be_made_before(const Tree& tree, std::uint32_t part, std::uint32_t before);

/// Makes a part before an earlier one; all that points at parts and rounds follows.
void make_before(Tree& tree, std::uint32_t part, std::uint32_t before);

} // namespace whorl::pattern
