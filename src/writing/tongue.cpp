#include "writing/tongue.hpp"

#include "words/fold.hpp"
#include "writing/name.hpp"

#include <algorithm>

namespace whorl::writing {
namespace {

/// Puts `value` where `slot` stands; false if it stands there and there is nothing to put.
bool fill(std::string& text, std::string_view slot, const std::string& value) {
  for (std::size_t at = text.find(slot); at != std::string::npos; at = text.find(slot, at + value.size())) {
    if (value.empty()) return false;
    text.replace(at, slot.size(), value);
  }
  return true;
}

} // namespace

Tongue::Tongue(const words::Vocabulary& words, const Say& say, bool full)
    : words_(words), say_(say), full_(full), written_(words.concepts.size()) {
  for (const words::PhraseEntry& entry : words.phrases)
    if (entry.write && entry.means < written_.size() && written_[entry.means].empty())
      written_[entry.means] = entry.phrase;
}

std::optional<std::string> Tongue::word(words::Concept means) const {
  if (means >= written_.size() || written_[means].empty()) return std::nullopt;
  return written_[means];
}

std::optional<std::string> Tongue::word(std::string_view concept_name) const {
  return word(words::find_concept(words_, concept_name));
}

bool Tongue::understands(std::string_view phrase, std::string_view concept_name) const {
  const words::Concept means = words::find_concept(words_, concept_name);
  const std::string folded = words::fold(phrase).text;
  return std::any_of(words_.phrases.begin(), words_.phrases.end(), [&](const words::PhraseEntry& entry) {
    return entry.means == means && !entry.write && entry.phrase == folded;
  });
}

std::string Tongue::longest_phrase(std::string_view concept_name) const {
  const words::Concept means = words::find_concept(words_, concept_name);
  const auto blanks = [](const std::string& text) { return std::count(text.begin(), text.end(), ' '); };
  std::string longest;
  for (const words::PhraseEntry& entry : words_.phrases)
    if (entry.means == means && !entry.write && blanks(entry.phrase) > blanks(longest)) longest = entry.phrase;
  return longest;
}

std::optional<std::string> Tongue::row(std::string_view id, const Slots& slots) const {
  const auto row = std::find_if(words_.rows.begin(), words_.rows.end(),
                                [id](const words::RowEntry& entry) { return entry.id == id; });
  if (row == words_.rows.end() || row->write.empty()) return std::nullopt;
  std::string text = row->write;
  if (!fill(text, "{n}", slots.n) || !fill(text, "{stitch}", slots.stitch) || !fill(text, "{list}", slots.list) ||
      !fill(text, "{loops}", slots.loops))
    return std::nullopt;
  return text;
}

std::optional<std::string> Tongue::stitch(const pattern::Tree& tree, stitch::KindId kind) const {
  if (kind >= tree.kinds.size()) return std::nullopt;
  const stitch::StitchKind& entry = tree.kinds[kind];
  if (entry.own) return entry.name;
  if (full_ && has_words(say_, "stitch-" + entry.name)) return say_("stitch-" + entry.name, {});
  return word(entry.name);
}

std::optional<Together> together_of(std::string_view kind) {
  constexpr std::string_view ending = "tog";
  if (kind.size() <= ending.size() || kind.substr(kind.size() - ending.size()) != ending) return std::nullopt;
  const std::string_view front = kind.substr(0, kind.size() - ending.size());
  const std::size_t digits = front.find_last_not_of("0123456789") + 1;
  if (digits == 0 || digits == front.size()) return std::nullopt;
  return Together{std::string(front.substr(0, digits)), std::string(front.substr(digits))};
}

} // namespace whorl::writing
