#pragma once

#include "pattern/own_words.hpp"

namespace whorl::pattern {

/// Where a round goes round two parts by the names that stand above them ("sc 4 around the branch, sc 4
/// around the beam"), adds these to a text's own words as names of parts that are joined.
void add_part_words(const Source& source, const words::Vocabulary& vocabulary, OwnWords& own);

/// The names of all parts, in a text in which a round goes through a part and another held against it.
void add_piece_words(const Source& source, const words::Vocabulary& vocabulary, OwnWords& own);

} // namespace whorl::pattern
