#pragma once

#include "pattern/choice.hpp"
#include "pattern/way.hpp"

namespace whorl::pattern {

/// Settles which rounds the nodes from `first_node` on speak of, that belong to the last round of the tree:
/// the numbers of free loops and skipped stitches as typed, the names of parts that are joined.
void name_rounds(Tree& tree, std::size_t first_node, const Reader& reader);

/// The last round of the tree is worked as one before.
void refer(Tree& tree, std::uint32_t round, const Target& target);

/// A round of the tree goes on from the edge of another.
void open_part_edge(Tree& tree, std::uint32_t round, std::uint32_t edge);

/// A round of the tree begins along another, which is the last of its part, in so many a stitch of it; 0:
/// that is not said.
void open_last_round(Tree& tree, std::uint32_t round, std::uint32_t edge, std::uint16_t stitch);

/// A round of the tree begins along the other side of the starting chain of the part that `owner` is a round
/// of; it may open it itself, in one of the nodes from `first_node` on.
void open_chain_of(Tree& tree, std::size_t first_node, std::uint32_t round, std::uint32_t owner);

} // namespace whorl::pattern
