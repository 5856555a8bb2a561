#pragma once

#include "words/lattice.hpp"
#include "words/vocabulary.hpp"

#include <algorithm>
#include <string_view>

namespace whorl::pattern {

/// The head of a line, its words, and the concepts that labels are made of.
struct Head {
  const words::Vocabulary& vocabulary;
  words::Folded line;
  words::Lattice lattice;
  words::Concept round, row, to, through, conjunction, next, last, first, times, step, ordinal, from, between;
};

Head head_of(std::string_view text, std::uint32_t begin, const words::Vocabulary& vocabulary);

std::size_t pass_blanks(const Head& head, std::size_t place);

/// Whether nothing but blanks stands behind `place`.
bool is_end(const Head& head, std::size_t place);

/// Where the letters that begin at `place` end.
std::size_t letters_behind(const Head& head, std::size_t place);

/// The first word at `place` of which `is_it` is true.
template <typename Test> const words::Word* find_word(const Head& head, std::size_t place, Test is_it) {
  if (place + 1 >= head.lattice.at.size()) return nullptr;
  const auto* first = head.lattice.words.data() + head.lattice.at[place];
  const auto* last = head.lattice.words.data() + head.lattice.at[place + 1];
  const auto* found = std::find_if(first, last, is_it);
  return found == last ? nullptr : found;
}

const words::Word* phrase_at(const Head& head, std::size_t place, words::Concept means);

/// The sort of a phrase; `word` for everything else.
words::ConceptClass sort_of(const Head& head, const words::Word& word);

/// Whether a stitch, an increase or a decrease stands there.
bool works_at(const Head& head, std::size_t place);

/// The mark at a place, or '\0'.
char mark_at(const Head& head, std::size_t place);

/// Passes the mark that closes a label; ":-" and ".)" are one.
std::size_t pass_closing(const Head& head, std::size_t place, std::string_view marks);

/// Whether a word for round or row stands there.
bool is_round_word(const Head& head, std::size_t place);

/// Passes 第, which stands before the number of an ordinal where no blanks divide the words.
std::size_t pass_ordinal_lead(const Head& head, std::size_t place);

} // namespace whorl::pattern
