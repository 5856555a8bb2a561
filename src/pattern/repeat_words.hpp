#pragma once

#include "pattern/sentence.hpp"

namespace whorl::pattern {

/// Where the words begin that say how the list before them is repeated: the last "repeat" or "around" outside
/// brackets and stars, or "x 6" at the end; `end` if there are none.
std::uint32_t find_repeat(const Sentence& sentence, std::uint32_t begin, std::uint32_t end);

/// "Repeat (2 sc, inc) 6 times": behind a word at the head that only says so again.
std::uint32_t behind_leading_repeat(const Sentence& sentence, std::uint32_t begin);

/// "6 times: …", "Repeat 6 x: …": behind the colon; `begin` if the stretch does not begin so.
std::uint32_t behind_repeat(const Sentence& sentence, std::uint32_t begin, std::uint32_t end);

/// "Begin with 1 sc and an inc, then work 2 sc and an inc five times, …": where the passage stands that is
/// repeated in the middle of such a sentence; empty if there is none.
words::Span then_repeated(const Sentence& sentence, std::uint32_t begin, std::uint32_t end);

/// "Ch 3, 2 dc in next st, then | 1 dc, 2 dc in next st, repeat to end": behind the word that parts what is
/// repeated from the chain and the stitches that the list begins with; `begin` if none does.
std::uint32_t behind_beginning(const Sentence& sentence, std::uint32_t begin, std::uint32_t end);

/// Whether from `begin` to `end`, where "around" stands, are only stitches with their numbers, not all alike:
/// "2 sc, inc around" goes round as a whole where it divides.
bool is_plain_list(const Sentence& sentence, std::uint32_t begin, std::uint32_t end);

/// Behind the chains that a line begins with, "ch 1, …"; `begin` if it does not.
std::uint32_t behind_first_chains(const Sentence& sentence, std::uint32_t begin, std::uint32_t end);

} // namespace whorl::pattern
