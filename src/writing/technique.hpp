#pragma once

#include "writing/telling.hpp"

namespace whorl::writing {

/// "in Body, from round 3 on": of which parts and rounds a technique holds; "": of all.
std::string scope_of(const pattern::Technique& technique, const pattern::Tree& tree, const Say& say);

/// A sentence of the techniques that hold for a way of working and that its moves do not show; "": there are
/// none.
std::string technique_fact(const Used& used, const pattern::Tree& tree, const Say& say);

/// What the ids of moves end with, where a technique that holds for the whole pattern makes them others:
/// "-under" for the yarn, "-between" for the hook; "".
struct OtherMoves {
  std::string yarn, hook;
};
OtherMoves other_moves(const Used& used, const pattern::Tree& tree);

} // namespace whorl::writing
