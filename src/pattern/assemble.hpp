#pragma once

#include "pattern/choice.hpp"
#include "pattern/tree.hpp"

namespace whorl::pattern {

/// Takes a reading's nodes and kinds over into the tree; the body's node in the tree.
NodeId take_over(Tree& tree, const Reading& reading);

/// Adds a settled line to the tree as the next round of `part`.
void add_round(Tree& tree, std::uint32_t part, const Ways& line, const Settled& settled, Span span,
               std::string_view label);

/// Adds placings behind the last round so far.
void add_placings(Tree& tree, std::uint32_t part, std::vector<Placing> placings);

} // namespace whorl::pattern
