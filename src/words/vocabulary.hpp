#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace whorl::words {

/// What a word means, whatever the language: "sc", "increase", "in", "each", "round". Concepts are numbered in the
/// table of concepts of `symbols/words/rows.xml`; a stitch's concept carries the name of its kind.
using Concept = std::uint16_t;
inline constexpr Concept no_concept = 0xFFFF;

/// What sort of thing a concept is; rows of phrases have slots for these.
enum class ConceptClass : std::uint8_t { word, stitch, decrease, loops, place, start, ending, thing, filler };

struct ConceptEntry {
  std::string name;
  ConceptClass sort = ConceptClass::word;
};

/// A phrase of a language and what it means. Phrases are stored folded.
struct PhraseEntry {
  std::string phrase;          ///< "single crochet"; a trailing `~` leaves the ending open
  Concept means = no_concept;
  bool write = false;          ///< the form in which it is written out
  int cost = 0;
};

/// A row: concepts and slots in order (`?` may be missing), what it means, its cost; `write` is its form in this
/// language with its slots in order.
struct RowEntry {
  std::string id;              ///< "count-stitch"
  std::string pattern;         ///< "count stitch"
  std::string meaning;         ///< "plain", "one-place", "all-round", …
  std::string write;
  int cost = 0;
  std::uint16_t habit = 0;     ///< name of the habit it follows, as a bit of pattern::Habit; 0: none
};

/// The words of one language, ready for looking up. Plain values; copied freely.
struct Vocabulary {
  std::string language;                ///< BCP 47: "en-US"
  std::string extends;                 ///< the language it adds to, or ""
  bool blanks_between_words = true;    ///< false in Japanese and Chinese
  std::vector<ConceptEntry> concepts;
  std::vector<PhraseEntry> phrases;    ///< sorted by phrase
  std::vector<RowEntry> rows;
};

/// Number of the concept of this name, or no_concept.
Concept find_concept(const Vocabulary& vocabulary, std::string_view name);

/// The vocabularies built into the program, by tag, in order of their tags.
const std::vector<Vocabulary>& built_in_vocabularies();

/// The built-in vocabulary of a language tag, or nullptr.
const Vocabulary* find_vocabulary(std::string_view language);

} // namespace whorl::words
