#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace whorl::words {

/// What a word means, whatever the language: "sc", "increase", "in", "each", "round". Concepts are numbered
/// in the table of concepts of `symbols/words/rows.xml`; a stitch's concept carries the name of its kind.
using Concept = std::uint16_t;
inline constexpr Concept no_concept = 0xFFFF;

/// What sort of thing a concept is; rows of phrases have slots for these.
enum class ConceptClass : std::uint8_t { word, stitch, decrease, loops, place, start, ending, thing, filler };

struct ConceptEntry {
  std::string name;
  ConceptClass sort = ConceptClass::word;
  std::string works =
      {}; ///< a word for several of a kind in one place ("W" in letters): the kind ("sc"), else ""
  std::uint16_t in_one = 1; ///< … and how many
  std::uint8_t down = 0;    ///< of a spike of the pattern's own: into the stitch so many rounds below
};

/// Whether a phrase is one only as a capital or as a small letter (`V` and `v` in a pattern's own list).
enum class Capitals : std::uint8_t { either, capital, small };

/// A phrase of a language and what it means. Phrases are stored folded.
struct PhraseEntry {
  std::string phrase;         ///< "single crochet"; a trailing `~` leaves the ending open
  Concept means = no_concept; ///< no_concept: a number word
  bool write = false;         ///< the form in which it is written out; it is not looked up
  int cost = 0;
  std::uint32_t number = 0; ///< of a number word
  Capitals letters = Capitals::either;
};

/// A row: concepts and slots in order (`?` may be missing), what it means, its cost; `write` is its form in
/// this language with its slots in order.
struct RowEntry {
  std::string id;      ///< "count-stitch"
  std::string pattern; ///< "count stitch"
  std::string meaning; ///< "plain", "one-place", "all-round", …
  std::string write;
  int cost = 0;
  std::uint16_t habit = 0; ///< name of the habit it follows, as a bit of pattern::Habit; 0: none
};

/// What an element of a row takes: a concept, a class of concepts, a number, a mark, a word that
/// nobody knows, or a passage in brackets or between stars.
enum class Slot : std::uint8_t {
  concept_named,
  concept_class,
  work,
  place,
  count,
  many,
  few,
  nth,
  leave,
  of,
  again,
  group,
  square,
  stars,
  passage,
  list,
  name,
  separator,
  colon,
  hyphen,
  open,
  close,
  star
};

/// One element of a row. `glued`: no blank stands before it.
struct Element {
  Slot slot = Slot::concept_named;
  Concept means = no_concept;
  ConceptClass sort = ConceptClass::word;
  bool glued = false;
  bool operator==(const Element&) const = default;
};

inline constexpr std::uint32_t no_step = 0xFFFFFFFF;

/// One step of the tree of rows: an element behind the elements before it.
struct RowStep {
  Element element;
  std::uint32_t child = no_step;
  std::uint32_t sibling = no_step;
  std::uint32_t end = no_step; ///< first of the rows that end here, in RowTree::ends
};

struct RowEnd {
  std::uint16_t row = 0;
  std::uint32_t next = no_step;
};

/// All rows by their beginnings, so that a line is looked at once. Step 0 is the root.
struct RowTree {
  std::vector<RowStep> steps;
  std::vector<RowEnd> ends;
};

/// The words of one language, ready for looking up. Plain values; copied freely.
struct Vocabulary {
  std::string language;             ///< BCP 47: "en-US"
  std::string extends;              ///< the language it adds to, or ""
  std::vector<std::string> called;  ///< how a text states it, folded: "german", "deutsch"
  bool blanks_between_words = true; ///< false in Japanese and Chinese
  std::vector<ConceptEntry> concepts;
  std::vector<PhraseEntry> phrases; ///< sorted by phrase
  std::vector<RowEntry> rows;
  std::size_t shared_rows = 0; ///< so many of the rows, the first, are those of all languages
  std::vector<std::string>
      times_endings;         ///< words for times that may be grown together with a number: "sechs|mal"
  bool open_endings = false; ///< some phrase ends with `~`
  std::vector<std::uint32_t> by_byte; ///< the first phrase that begins with each byte; one more at the end
  std::vector<Concept> by_name;       ///< the concepts in the order of their names
  std::vector<std::uint32_t>
      written;      ///< per concept the phrase that it is written as; none: as many as there are
  RowTree row_tree; ///< the rows by their beginnings
  const Vocabulary* text =
      nullptr; ///< words of the text around the rounds ("de-x-text"), where there are any
  Concept first_text_concept = no_concept; ///< the first of those that they mean
};

/// Sorts the phrases and grows the tree of rows. Call once all words and rows are in.
void make_ready(Vocabulary& vocabulary);

/// A copy of a vocabulary, ready for looking up, with words of a pattern's own before its own: a phrase of
/// `own` takes the place of the same phrase. `concepts` are added behind those of `base`; `own` may mean
/// them.
Vocabulary with_own_words(const Vocabulary& base, const std::vector<PhraseEntry>& own,
                          const std::vector<ConceptEntry>& concepts);

/// How a concept is written out: "dc" for a single crochet in UK terms; its name if no phrase is.
std::string_view written_form(const Vocabulary& vocabulary, Concept means);

/// Number of the concept of this name, or no_concept.
Concept find_concept(const Vocabulary& vocabulary, std::string_view name);

/// The vocabulary of a language tag, added or built in, or nullptr.
const Vocabulary* find_vocabulary(std::string_view language);

/// A vocabulary of things named in a text of a language: "pt-BR-x-cautions", else "pt-x-cautions"; or
/// nullptr.
const Vocabulary* find_vocabulary_of(std::string_view language, std::string_view things);

/// A language that can be read: its tag, and the language that it is a dialect of, or "".
struct LanguageName {
  std::string_view language;
  std::string_view extends;
  bool operator==(const LanguageName&) const = default;
};

/// All vocabularies, added and built in, in order of their tags.
std::vector<LanguageName> known_vocabularies();

/// The tag of the language that a tag comes closest to: its own, the first of its kind ("pt-BR" for "pt"), or
/// that of its first part ("de" for "de-AT"); "" if there is none. Capitals do not count.
std::string_view closest_language(std::string_view tag);

/// Adds vocabularies to those that find_vocabulary knows; one of the same tag takes the place of another.
/// To be called before anything is read: what find_vocabulary gave before stays as it was.
void add_vocabularies(std::vector<Vocabulary> vocabularies);

/// Those that were added, the last of a tag only.
std::vector<const Vocabulary*> added_vocabularies();

} // namespace whorl::words
