#pragma once

#include "pattern/brackets.hpp"

namespace whorl::pattern {

/// "In each ch-sp: 3 dc, ch 2, 3 dc; join": what a colon behind a place leads to is a passage as in brackets.
void pair_told_places(const words::Folded& text, const words::Lattice& lattice,
                      const words::Vocabulary& vocabulary, Brackets& brackets);

} // namespace whorl::pattern
