#pragma once

#include "pattern/line.hpp"
#include "pattern/tree.hpp"

namespace whorl::pattern {

/// The loops that a line between the rounds gives for all of them: "Work in BLO throughout"; 0: none does.
std::uint8_t loops_throughout(const Reader& reader, const Cut& cut);

/// The loops that a line directly above a round gives for that round: "Now with white, in back loops only"; 0:
/// it gives none.
std::uint8_t loops_above(const Reader& reader, Span line);

/// "Use invisible decreases throughout": a bare `dec` of single crochet is one.
void decrease_invisibly(Tree& tree, const Reader& reader, const Cut& cut);

/// The tree's last round is worked in these loops, where it does not say otherwise itself.
void work_in_loops(Tree& tree, std::uint8_t loops);

} // namespace whorl::pattern
