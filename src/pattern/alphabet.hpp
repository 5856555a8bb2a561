#pragma once

#include "pattern/own_words.hpp"

namespace whorl::pattern {

/// Where most lines of a text work in letters (`6X`, `(X, V)*6`) that no list explains, adds what letters
/// mean by habit to its own words, with a note. Returns whether it did.
bool add_found_letters(const Source& source, const words::Vocabulary& vocabulary, OwnWords& own);

} // namespace whorl::pattern
