#include "pattern/own_vocabulary.hpp"

#include "pattern/own_names.hpp"
#include "words/lattice.hpp"

#include <algorithm>

namespace whorl::pattern {

using words::Concept;
using words::ConceptClass;
using words::no_concept;

namespace {

constexpr int other_case_cost = 2;

bool is_plural(const std::string& name) { return name.size() > 2 && name.back() == 's'; }

} // namespace

bool has_meaning(const std::vector<Concept>& meanings, Concept means) {
  return std::find(meanings.begin(), meanings.end(), means) != meanings.end();
}

const std::vector<stitch::StitchKind>& OwnVocabulary::kinds() const {
  return out.kinds.empty() ? stitch::standard_kinds() : out.kinds;
}

std::string_view OwnVocabulary::name_of(Concept means) const {
  return means < vocabulary().concepts.size() ? std::string_view(vocabulary().concepts[means].name)
                                              : std::string_view();
}

void OwnVocabulary::own_the_kinds() {
  if (out.kinds.empty()) out.kinds = stitch::standard_kinds();
}

void OwnVocabulary::add_kind(const stitch::StitchKind& kind) {
  if (stitch::find_kind(kinds(), kind.name)) return;
  own_the_kinds();
  out.kinds.push_back(kind);
}

void OwnVocabulary::put_kind(const stitch::StitchKind& kind) {
  own_the_kinds();
  if (const auto id = stitch::find_kind(out.kinds, kind.name))
    out.kinds[*id] = kind;
  else
    out.kinds.push_back(kind);
}

Concept OwnVocabulary::add_concept(words::ConceptEntry entry) {
  const auto means = static_cast<Concept>(language_.concepts.size() + out.concepts.size());
  out.concepts.push_back(std::move(entry));
  return means;
}

void OwnVocabulary::add_names(const Explained& entry, Concept means) {
  if (name_of(means) == "ch") // a chain is worked into too
    add_names(entry, words::find_concept(vocabulary(), "chain"));
  bool any = false;
  for (const std::string& name : entry.names) {
    if (has_meaning(meanings_of(name, vocabulary()), means)) {
      out.as_known.push_back(name);
      continue;
    }
    for (const std::string& spelt : spellings_of(name)) {
      add_phrase(spelt, means, entry);
      if (spelt.size() > 1 && !is_plural(spelt)) add_phrase(spelt + "s", means, entry);
    }
    any = true;
  }
  waiting_ = waiting_ || any;
  const bool letter = entry.names.front().size() == 1; // which is known, but nobody's usual word
  if ((any || letter) && !name_of(means).empty() && is_work(vocabulary(), means))
    out.own_names.push_back({typed_name(entry), std::string(name_of(means)), 1});
}

void OwnVocabulary::add_spellings(const Explained& entry, Concept means) {
  for (const std::string& named : entry.names)
    for (const std::string& name : spellings_of(named)) {
      add_phrase(name, means, entry);
      add_phrase(name + "s", means, entry);
    }
  waiting_ = true;
}

void OwnVocabulary::add_stitch(const Explained& entry, const stitch::StitchKind& kind) {
  put_kind(kind);
  const Concept same = words::find_concept(vocabulary(), kind.name);
  add_names(entry, same != no_concept ? same : add_concept({kind.name, ConceptClass::stitch}));
}

std::string OwnVocabulary::typed_name(const Explained& entry) {
  return entry.names.size() == 1 ? std::string(entry.name) : entry.names.back();
}

bool OwnVocabulary::speaks_of_own(std::string_view value) const {
  if (!waiting_) return false;
  const std::string low = folded(value);
  return std::any_of(out.phrases.begin(), out.phrases.end(), [&low](const words::PhraseEntry& entry) {
    const std::size_t at = low.find(entry.phrase);
    return at != std::string::npos && (at == 0 || low[at - 1] < 'a' || low[at - 1] > 'z');
  });
}

void OwnVocabulary::extend() {
  extended_ = words::with_own_words(language_, out.phrases, out.concepts);
  waiting_ = false;
}

/// A single letter is told by its capital; in the other case it is dearer.
void OwnVocabulary::add_phrase(const std::string& name, Concept means, const Explained& entry) {
  words::PhraseEntry phrase;
  phrase.phrase = name;
  phrase.means = means;
  if (name.size() == 1) {
    const bool capital = entry.name.front() >= 'A' && entry.name.front() <= 'Z';
    phrase.letters = capital ? words::Capitals::capital : words::Capitals::small;
    out.phrases.push_back(phrase);
    phrase.letters = capital ? words::Capitals::small : words::Capitals::capital;
    phrase.cost = other_case_cost;
  }
  out.phrases.push_back(phrase);
}

} // namespace whorl::pattern
