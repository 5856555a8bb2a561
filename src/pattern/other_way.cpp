#include "pattern/other_way.hpp"

#include "pattern/own_names.hpp"
#include "pattern/technique_told.hpp"
#include "words/fold.hpp"
#include "words/lattice.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

using words::Concept;

/// The one stitch that an explanation names, without a number; none if it names several.
Concept only_stitch(std::string_view text, const words::Vocabulary& vocabulary) {
  Concept only = words::no_concept;
  std::uint32_t end = 0;
  for (const words::Word& word : words::lattice(words::fold(text), vocabulary).words) {
    if (word.begin < end) continue;
    if (word.kind == words::WordKind::number) return words::no_concept;
    if (word.kind != words::WordKind::phrase || !is_work(vocabulary, word.means)) continue;
    if (only != words::no_concept && only != word.means) return words::no_concept;
    only = word.means;
    end = word.end;
  }
  return only;
}

bool may_be_worked_otherwise(How how) {
  return how == How::yarn_under || how == How::yarn_over || how == How::between_legs;
}

/// Whether another definition is of the same stitch, worked as it is or in yet another way.
bool stands_beside(const Source& source, const Definition& other, Concept stitch, How how,
                   const words::Vocabulary& vocabulary) {
  const std::string_view value = source.at(other.value);
  if (how_told(value, vocabulary.language) == how) return false;
  if (leading(value, vocabulary).means == stitch) return true;
  const std::vector<std::string> names = names_of(source.at(other.name));
  return std::any_of(names.begin(), names.end(), [&](const std::string& name) {
    const auto meanings = meanings_of(name, vocabulary);
    return std::find(meanings.begin(), meanings.end(), stitch) != meanings.end();
  });
}

} // namespace

std::optional<stitch::StitchKind> stitch_in_other_way(const Source& source, const OwnList& list,
                                                      const Definition& definition,
                                                      const words::Vocabulary& vocabulary,
                                                      const std::vector<stitch::StitchKind>& kinds) {
  const std::string_view value = source.at(definition.value);
  const std::optional<How> how = how_told(value, vocabulary.language);
  if (!how || !may_be_worked_otherwise(*how)) return std::nullopt;
  const Concept stitch = only_stitch(value, vocabulary);
  if (stitch == words::no_concept) return std::nullopt;
  const auto kind = stitch::find_kind(kinds, vocabulary.concepts[stitch].name);
  if (!kind || kinds[*kind].takes != 1 || kinds[*kind].makes != 1) return std::nullopt;
  if (stands_beside(source, {definition.name, {}, {}}, stitch, *how, vocabulary)) return std::nullopt;
  const bool beside =
      std::any_of(list.definitions.begin(), list.definitions.end(), [&](const Definition& other) {
        return !(other.name == definition.name) && stands_beside(source, other, stitch, *how, vocabulary);
      });
  return beside ? std::optional(kinds[*kind]) : std::nullopt;
}

} // namespace whorl::pattern
