#pragma once

#include "pattern/sentence.hpp"
#include "pattern/tree.hpp"

#include <cstdint>
#include <string_view>

namespace whorl::pattern {

/// Whether a word at a place means a concept of this name.
bool means(const Sentence& sentence, std::uint32_t at, std::string_view name);

/// The mark of an ordinal at a place, or nullptr.
const words::Word* ordinal_mark_at(const Sentence& sentence, std::uint32_t at);

bool is_round_word(const Sentence& sentence, std::uint32_t at);

/// The rounds that [begin, end) of a sentence names, the number behind "round" or before it ("rounds 10 and
/// 11", "the 11th round"), and whether what is placed lies between them.
void read_rounds(const Sentence& sentence, std::uint32_t begin, std::uint32_t end, Placing& placing);

} // namespace whorl::pattern
