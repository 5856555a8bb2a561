#pragma once

#include "pattern/sentence.hpp"

namespace whorl::pattern {

/// Whether what stands at [begin, end) of a folded sentence is not to be done: "do not stuff", "nicht
/// ausstopfen". Where no blanks divide words, the word for "not" stands behind it: "綿を入れない".
bool is_negated(const Sentence& sentence, std::uint32_t begin, std::uint32_t end);

} // namespace whorl::pattern
