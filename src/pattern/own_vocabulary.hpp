#pragma once

#include "pattern/own_list.hpp"
#include "pattern/own_words.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace whorl::pattern {

/// One definition being found out.
struct Explained {
  const Definition& definition;
  std::string_view name;
  std::string_view value;
  std::vector<std::string> names;
  std::vector<words::Concept> known; ///< what the names mean in the language
};

bool has_meaning(const std::vector<words::Concept>& meanings, words::Concept means);

/// How what a list explains joins the words of the language and the kinds of stitches.
class OwnVocabulary {
public:
  explicit OwnVocabulary(const words::Vocabulary& language) : language_(language) {}

  /// The language with the words explained so far that were asked for.
  const words::Vocabulary& vocabulary() const { return extended_ ? *extended_ : language_; }
  const std::vector<stitch::StitchKind>& kinds() const;
  /// "" for a concept that only this list brings.
  std::string_view name_of(words::Concept means) const;

  /// Adds a kind unless there is one of its name.
  void add_kind(const stitch::StitchKind& kind);
  /// In the place of the standard kind of this name, or behind them all.
  void put_kind(const stitch::StitchKind& kind);
  words::Concept add_concept(words::ConceptEntry entry);

  /// All names of a definition mean this.
  void add_names(const Explained& entry, words::Concept means);
  /// The same in every spelling, whatever they meant before.
  void add_spellings(const Explained& entry, words::Concept means);
  /// They mean this stitch, which is put among the kinds.
  void add_stitch(const Explained& entry, const stitch::StitchKind& kind);
  /// The shortest of the names, as it is typed where it is the only one.
  static std::string typed_name(const Explained& entry);

  /// Whether an explanation may use words that were explained before it.
  bool speaks_of_own(std::string_view value) const;
  void extend();

  OwnWords take() { return std::move(out); }

  OwnWords out;

private:
  void own_the_kinds();
  void add_phrase(const std::string& name, words::Concept means, const Explained& entry);

  const words::Vocabulary& language_;
  std::optional<words::Vocabulary> extended_;
  bool waiting_ = false; ///< words were found that `vocabulary()` does not have
};

} // namespace whorl::pattern
