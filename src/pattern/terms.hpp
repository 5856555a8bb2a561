#pragma once

#include "pattern/finding.hpp"
#include "pattern/source.hpp"
#include "words/vocabulary.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace whorl::pattern {

/// Which terms the words of a pattern are, and from what that is known.
struct Terms {
  enum class From : std::uint8_t {
    nothing,  ///< the text does not tell: the terms it was given with
    stated,   ///< "UK terms", `Terms: US`
    word,     ///< a word that only these terms have: `sc`, `htr`
    chains,   ///< the height of the chains that rounds begin with
    shortest, ///< a toy whose shortest stitch is dc
  };
  const words::Vocabulary* vocabulary = nullptr;
  From from = From::nothing;
  std::string stated;       ///< as typed: "UK"; "" if the text does not say
  Span stated_span;         ///< where it says so
  std::string word;         ///< word: which it is
  bool contradicts = false; ///< the text says other terms than its words are
};

/// Finds out the terms of a text that was given with `given`; a dialect that extends it may be chosen.
Terms find_terms(const Source& source, const words::Vocabulary& given);

/// What is said of the terms: a warning where the text contradicts itself, a note where it does not say them.
std::optional<Finding> tell_terms(const Terms& terms);

/// The name of a kind of stitch in the terms of a vocabulary: "dc2tog" for sc2tog in UK terms.
std::string spoken(std::string_view kind, const words::Vocabulary& vocabulary);

/// The same in the terms of a built-in language: Tree::language.
std::string spoken(std::string_view kind, std::string_view language);

/// What crocheters call the terms of a language: en-US has US terms, en-GB UK terms.
std::string terms_of(std::string_view language);

} // namespace whorl::pattern
