#pragma once

#include "pattern/brackets.hpp"
#include "words/lattice.hpp"

#include <string_view>

namespace whorl::pattern {

/// A line's text made ready for reading: folded, looked up, its passages paired.
struct Sentence {
  const words::Vocabulary& vocabulary;
  words::Folded folded;
  words::Lattice lattice;
  Brackets brackets;
  words::Concept increase = words::no_concept;
  words::Concept times = words::no_concept;
  words::Concept conjunction = words::no_concept;
  words::Concept counted = words::no_concept;
  words::Concept not_counted = words::no_concept;
  words::Concept side = words::no_concept;    ///< of the chain, the other one
  words::Concept skipped = words::no_concept; ///< stitches left in an earlier round
  words::Concept unused = words::no_concept;  ///< loops left free
  words::Concept leg = words::no_concept;     ///< another part, by its name and number
  words::Concept in = words::no_concept;
  words::Concept with = words::no_concept;
  words::Concept space = words::no_concept;
  words::Concept chain = words::no_concept; ///< as a place
  words::Concept chain_loop = words::no_concept;
  words::Concept next = words::no_concept;
  bool yarns = false; ///< some word may name a yarn
  bool opens = false; ///< some word tells of places that the round before does not have

  std::string_view text() const { return folded.text; }
  std::uint32_t size() const { return static_cast<std::uint32_t>(folded.text.size()); }
  words::Span span(std::uint32_t begin, std::uint32_t end) const { return folded.span(begin, end); }
};

Sentence look_up(std::string_view text, std::uint32_t begin, const words::Vocabulary& vocabulary);

/// The words that may begin at a place, the longest first.
struct WordsAt {
  const words::Word* first = nullptr;
  const words::Word* last = nullptr;
  const words::Word* begin() const { return first; }
  const words::Word* end() const { return last; }
  bool empty() const { return first == last; }
};
WordsAt words_at(const Sentence& sentence, std::uint32_t at);

/// The word at `at` that means `wanted`, or nullptr.
const words::Word* word_meaning(const Sentence& sentence, std::uint32_t at, words::Concept wanted);

/// The number at `at`, or nullptr.
const words::Word* number_at(const Sentence& sentence, std::uint32_t at);

/// Where the letters that begin at `at` end; `at` if none do.
std::uint32_t end_of_letters(const Sentence& sentence, std::uint32_t at);

/// The sort of a phrase; `word` for everything else.
words::ConceptClass sort_of(const Sentence& sentence, const words::Word& word);

/// True for a stitch, an increase or a decrease.
bool is_work(const Sentence& sentence, const words::Word& word);

} // namespace whorl::pattern
