#pragma once

#include "pattern/tree.hpp"
#include "words/vocabulary.hpp"
#include "writing/telling.hpp"

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace whorl::writing {

/// What stands in the slots of a written row.
struct Slots {
  std::string n, stitch, list, loops;
};

/// Names by what they are called in the first language, folded.
using Names = std::map<std::string, std::string, std::less<>>;

/// A language to write in: its words backwards. Nothing is made up: where it has no form for something, there
/// is none, and whoever asks writes it in another way.
class Tongue {
public:
  /// `say`: the words beside a pattern's, in that language. `full`: no abbreviation, where it has full words.
  /// `names`: what is called otherwise there, or stays as it is, folded: colours, parts.
  /// `own`: abbreviations of the pattern's own, which are kept.
  Tongue(const words::Vocabulary& words, const Say& say, bool full, Names names = {},
         std::vector<pattern::OwnName> own = {});

  const words::Vocabulary& words() const { return words_; }
  const Say& say() const { return say_; }
  bool full() const { return full_; }

  /// How a concept is written, or none: "inc", "in", "MR".
  std::optional<std::string> word(std::string_view concept_name) const;
  std::optional<std::string> word(words::Concept means) const;
  /// The pattern's own abbreviation of a concept or a kind of stitch, so many in one place; none: it has
  /// none.
  std::optional<std::string> own_name(std::string_view means, std::uint32_t in_one = 1) const;
  bool has_own_names() const { return !own_.empty(); }
  /// A row of this id with its slots filled; none where the language has no form for it, or it needs a slot
  /// that is empty.
  std::optional<std::string> row(std::string_view id, const Slots& slots) const;
  /// A text of the language's sheet; none where it has none.
  std::optional<std::string> sentence(const std::string& id, const std::vector<std::string>& with) const;
  /// The names in a text put into the language; what is none stays.
  std::string named(std::string_view text) const;
  /// Name and length of what is called so at a place of a folded text; none: it is no name.
  const Names::value_type* name_at(std::string_view folded, std::size_t at) const;
  /// Whether the language understands a phrase as a concept.
  bool understands(std::string_view phrase, std::string_view concept_name) const;
  /// The way to say a concept that has most words: "front post double crochet"; "" where it has one word
  /// only.
  std::string longest_phrase(std::string_view concept_name) const;
  /// How a kind of stitch is called, so many of it; none if the language cannot tell it.
  std::optional<std::string> stitch(const pattern::Tree& tree, stitch::KindId kind,
                                    std::uint64_t count = 1) const;
  /// In full words, abbreviations are put out in full; else the text as it is.
  std::string in_full(std::string_view text) const;
  /// What stands between two steps of a list.
  std::string_view comma() const { return words_.blanks_between_words ? ", " : "、"; }

private:
  /// How it is called in full, so many of it; none if the language does not say.
  std::optional<std::string> full_stitch(const std::string& kind, std::uint64_t count) const;

  const words::Vocabulary& words_;
  const Say& say_;
  bool full_;
  Names names_;
  std::vector<pattern::OwnName> own_;
  std::vector<std::string> written_;                           ///< per concept; "": it has no written form
  std::map<std::string, std::string, std::less<>> full_words_; ///< by their abbreviations
};

/// "2tog" of "hdc2tog": the stitch, and how many of it are worked together.
struct Together {
  std::string base, number;
};
std::optional<Together> together_of(std::string_view kind);

/// "dc5pc": a popcorn (`as`) of 5 dc.
struct Gathered {
  std::string of, number, as;
};
std::optional<Gathered> gathered_of(std::string_view kind);

} // namespace whorl::writing
