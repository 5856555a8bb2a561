#include "pattern/stuck.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

using words::Element;
using words::Slot;
using words::Vocabulary;

std::string written(const Vocabulary& vocabulary, words::Concept means) {
  for (const words::PhraseEntry& entry : vocabulary.phrases)
    if (entry.means == means && entry.write) return entry.phrase;
  return vocabulary.concepts[means].name;
}

std::string written(const Vocabulary& vocabulary, std::string_view name) {
  return written(vocabulary, words::find_concept(vocabulary, name));
}

std::string written_class(const Vocabulary& vocabulary, words::ConceptClass sort) {
  for (std::size_t i = 0; i < vocabulary.concepts.size(); ++i) {
    const bool plain = sort != words::ConceptClass::stitch || vocabulary.concepts[i].name == "sc";
    if (vocabulary.concepts[i].sort == sort && plain)
      return written(vocabulary, static_cast<words::Concept>(i));
  }
  return {};
}

/// An element as it would be typed; "" for those that are no word to suggest.
std::string shown(const Vocabulary& vocabulary, const Element& element) {
  switch (element.slot) {
  case Slot::concept_named:
    return written(vocabulary, element.means);
  case Slot::concept_class:
    return written_class(vocabulary, element.sort);
  case Slot::work:
    return written(vocabulary, "sc");
  case Slot::place:
    return written(vocabulary, "st");
  case Slot::count:
  case Slot::again:
    return "3";
  case Slot::many:
  case Slot::few:
  case Slot::leave:
  case Slot::nth:
  case Slot::of:
    return "2";
  default:
    return {};
  }
}

/// The words from a step on, as short as a row can be, with its place.
std::string shown_from(const Vocabulary& vocabulary, std::uint32_t step) {
  const auto& steps = vocabulary.row_tree.steps;
  std::string text;
  for (; step != words::no_step; step = steps[step].child) {
    const std::string word = shown(vocabulary, steps[step].element);
    if (word.empty()) return {};
    const bool place = steps[step].element.slot == Slot::place;
    text += (text.empty() ? "" : " ") + word + (place && text.size() > 1 && text.back() == '3' ? "s" : "");
    const std::uint32_t child = steps[step].child;
    const bool place_next = child != words::no_step && steps[child].element.slot == Slot::place;
    if (steps[step].end != words::no_step && !place_next) break;
  }
  return text;
}

/// What may begin a piece, in the order in which it is taught.
std::vector<std::string> pieces(const Vocabulary& vocabulary) {
  return {"3 " + written(vocabulary, "sc"), written(vocabulary, "increase"), written(vocabulary, "dec")};
}

std::vector<std::string> could_follow(const Vocabulary& vocabulary, std::uint32_t step) {
  if (step == 0) return pieces(vocabulary);
  const auto& steps = vocabulary.row_tree.steps;
  std::vector<std::string> all;
  for (std::uint32_t child = steps[step].child; child != words::no_step && all.size() < 3;
       child = steps[child].sibling) {
    const std::string text = shown_from(vocabulary, child);
    if (!text.empty() && std::find(all.begin(), all.end(), text) == all.end()) all.push_back(text);
  }
  return all;
}

/// Where the word that ends before `at` begins, so that at most three stand before the place.
std::uint32_t words_back(std::string_view text, std::uint32_t at, std::uint32_t least) {
  std::uint32_t begin = at;
  for (int n = 0; n < 3 && begin > least; ++n) {
    while (begin > least && text[begin - 1] == ' ') --begin;
    while (begin > least && text[begin - 1] != ' ') --begin;
  }
  return begin;
}

Span word_span(const Sentence& sentence, std::uint32_t at) {
  const WordsAt words = words_at(sentence, at);
  if (!words.empty()) return words.first->span;
  return sentence.span(std::min(at, sentence.size()), sentence.size());
}

} // namespace

Stuck stuck_at(const WorkReader& reader, std::string_view text, std::uint32_t text_begin) {
  const Sentence& sentence = reader.sentence;
  const Furthest& at = reader.blocked.at != 0 ? reader.blocked : reader.furthest;
  Stuck stuck;
  stuck.span = word_span(sentence, at.at);
  const std::uint32_t begin = at.step != 0 ? at.begin : words_back(sentence.text(), at.at, 0);
  const Span before = sentence.span(begin, trim_separators(sentence.text(), begin, at.at));
  stuck.after = std::string(text.substr(before.begin - text_begin, before.length()));
  while (!stuck.after.empty() && stuck.after.back() == ' ') stuck.after.pop_back();
  stuck.could_follow = could_follow(sentence.vocabulary, at.step);
  return stuck;
}

} // namespace whorl::pattern
