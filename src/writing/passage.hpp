#pragma once

#include "pattern/source.hpp"
#include "pattern/tree.hpp"
#include "words/vocabulary.hpp"

#include <vector>

namespace whorl::writing {

/// A stretch of a pattern's text that is written as one; between them the text stays as it is.
struct Passage {
  enum class Sort : std::uint8_t {
    round,    ///< lines of instruction, with their labels and counts
    placing,  ///< what is placed or done between the rounds
    note,     ///< what is only said
    heading,  ///< of a part
    header,   ///< `Name: value`
    list,     ///< what the pattern explains: abbreviations, stitches
    language, ///< says the language, or the terms
    prose,    ///< any other line that has words
  };
  Sort sort = Sort::prose;
  pattern::Span span;
  std::vector<std::uint32_t> rounds;   ///< in Tree::rounds
  std::vector<std::uint32_t> placings; ///< in Tree::placings, those within it
  std::uint32_t part = 0;              ///< heading: in Tree::parts
  std::uint32_t header = 0;            ///< header: in Tree::headers
};

/// The passages of a pattern in the order of its text; they do not overlap, and each has some letter or
/// figure.
std::vector<Passage> passages_of(const pattern::Source& source, const pattern::Tree& tree,
                                 const words::Vocabulary& vocabulary);

} // namespace whorl::writing
