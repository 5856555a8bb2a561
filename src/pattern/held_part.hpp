#pragma once

#include "words/lattice.hpp"

namespace whorl::pattern {

/// Parts that are joined without sewing. "Through the ear and the head together" becomes one word that says
/// how to go in (the concept "two parts"); "place the ear against the head" one that works nothing ("part
/// held"); behind these "both layers" are those of the two parts. Brackets that hold the names of the two,
/// and no more, are taken out of the line. False: no part is told of.
bool tell_held_parts(words::Folded& line, words::Lattice& lattice, const words::Vocabulary& vocabulary);

} // namespace whorl::pattern
