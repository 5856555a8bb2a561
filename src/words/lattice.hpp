#pragma once

#include "words/fold.hpp"
#include "words/vocabulary.hpp"

#include <vector>

namespace whorl::words {

/// What kind of piece of the line a word is.
enum class WordKind : std::uint8_t { phrase, number, mark, unknown };

/// One possible word: a phrase of the vocabulary, a number, a mark of punctuation, or letters nobody knows.
struct Word {
  Span span;               ///< in the file
  std::uint32_t begin = 0; ///< in the folded text
  std::uint32_t end = 0;
  WordKind kind = WordKind::unknown;
  Concept means = no_concept; ///< phrase
  std::uint32_t number = 0;   ///< number
  char mark = 0;              ///< mark: one ASCII character
  bool glued = false;         ///< no blank between it and the word before
  int cost = 0;
};

/// Every word that begins at each place of a line. A place is a folded byte at which a word may begin; words
/// of one place stand together, the longest first.
struct Lattice {
  std::vector<Word> words;
  std::vector<std::uint32_t> at; ///< per folded byte: index of its first word; one more at the end
};

Lattice lattice(const Folded& line, const Vocabulary& vocabulary);

/// Where a text has letters that scanning took for figures: `l8`, `2O`. `begin` is its first byte in the file.
std::vector<Span> scanned_figures(std::string_view text, std::uint32_t begin);

} // namespace whorl::words
