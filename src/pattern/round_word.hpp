#pragma once

#include "pattern/own_words.hpp"

namespace whorl::pattern {

/// Where lines begin with a word that the language does not know and numbers that follow on ("Vta 1", "Lap 2
/// -", "3. krs"), adds it to a text's own words as a word for round.
void add_round_words(const Source& source, const words::Vocabulary& vocabulary, OwnWords& own);

} // namespace whorl::pattern
