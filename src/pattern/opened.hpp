#pragma once

#include "words/lattice.hpp"
#include "words/vocabulary.hpp"

namespace whorl::pattern {

/// Makes blanks of brackets that hold nothing but loops, "18 sc (BLO)", how often what stands before is
/// worked, "2 sc, inc (x 6)", or more stitches in its place, "5 sc, (ch 3, sc in same st)". True if any was.
bool open_brackets(words::Folded& line, const words::Lattice& lattice, const words::Vocabulary& vocabulary);

/// Sets a blank between words typed as one, "6xinc", "incx6", "12 BLOsc". True if any was.
bool part_words(words::Folded& line, const words::Lattice& lattice, const words::Vocabulary& vocabulary);

} // namespace whorl::pattern
