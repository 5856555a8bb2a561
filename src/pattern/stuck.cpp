#include "pattern/stuck.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

using words::Element;
using words::Slot;
using words::Vocabulary;

std::string written(const Vocabulary& vocabulary, words::Concept means) {
  return std::string(words::written_form(vocabulary, means));
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

/// A way a row could go on, and the row, which tells how early it is taught.
struct GoingOn {
  std::uint16_t row = 0;
  std::string text;
};

const words::RowStep& step_at(const Vocabulary& vocabulary, std::uint32_t step) {
  return vocabulary.row_tree.steps[step];
}

/// The child of a step that takes `slot`, or no_step.
std::uint32_t child_taking(const Vocabulary& vocabulary, std::uint32_t step, Slot slot) {
  std::uint32_t child = step_at(vocabulary, step).child;
  while (child != words::no_step && step_at(vocabulary, child).element.slot != slot)
    child = step_at(vocabulary, child).sibling;
  return child;
}

/// Adds `text` and the place behind it if a row ends so.
void add_ending(const Vocabulary& vocabulary, std::uint32_t step, const std::string& text,
                std::vector<GoingOn>& out) {
  const std::uint32_t place = child_taking(vocabulary, step, Slot::place);
  const bool place_ends = place != words::no_step && step_at(vocabulary, place).end != words::no_step;
  const std::uint32_t last = place_ends ? place : step;
  const std::uint32_t end = step_at(vocabulary, last).end;
  if (end == words::no_step) return;
  const bool several = text.back() >= '2' && text.back() <= '9';
  const std::string st = " " + written(vocabulary, "st") + (several ? "s" : "");
  out.push_back({vocabulary.row_tree.ends[end].row, place_ends ? text + st : text});
}

void add_from(const Vocabulary& vocabulary, std::uint32_t child, std::vector<GoingOn>& out) {
  const std::string word = shown(vocabulary, step_at(vocabulary, child).element);
  if (word.empty()) return;
  add_ending(vocabulary, child, word, out);
  const std::uint32_t count = child_taking(vocabulary, child, Slot::count);
  if (count != words::no_step) add_ending(vocabulary, count, word + " 3", out);
}

/// What may begin a piece, in the order in which it is taught.
std::vector<std::string> pieces(const Vocabulary& vocabulary) {
  return {"3 " + written(vocabulary, "sc"), written(vocabulary, "increase"), written(vocabulary, "dec")};
}

std::vector<std::string> could_follow(const Vocabulary& vocabulary, const std::vector<std::uint32_t>& steps) {
  if (steps.empty()) return pieces(vocabulary);
  std::vector<GoingOn> all;
  for (const std::uint32_t step : steps)
    for (std::uint32_t child = step_at(vocabulary, step).child; child != words::no_step;
         child = step_at(vocabulary, child).sibling)
      add_from(vocabulary, child, all);
  std::stable_sort(all.begin(), all.end(), [](const GoingOn& a, const GoingOn& b) { return a.row < b.row; });
  std::vector<std::string> texts;
  for (const GoingOn& one : all)
    if (texts.size() < 3 && std::find(texts.begin(), texts.end(), one.text) == texts.end())
      texts.push_back(one.text);
  return texts;
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

/// The first word that the best path passes over and that is no filler; where the piece before it began.
struct FirstPassed {
  std::uint32_t at = 0;
  std::uint32_t piece = 0;
  bool found = false;
};

bool is_filler(const Sentence& sentence, const Path& path) {
  const WordsAt words = words_at(sentence, path.begin);
  return !words.empty() && sort_of(sentence, *words.first) == words::ConceptClass::filler;
}

FirstPassed first_passed(const WorkReader& reader, std::int32_t last) {
  std::vector<std::int32_t> steps;
  for (std::int32_t path = last; path != no_path; path = reader.paths[static_cast<std::size_t>(path)].before)
    steps.push_back(path);
  std::uint32_t piece = no_number;
  for (auto step = steps.rbegin(); step != steps.rend(); ++step) {
    const Path& path = reader.paths[static_cast<std::size_t>(*step)];
    if (path.taken == Taken::passed && !is_filler(reader.sentence, path))
      return {path.begin, piece == no_number ? path.begin : piece, true};
    if (path.taken == Taken::row && path.inner != no_path)
      if (const FirstPassed inside = first_passed(reader, path.inner); inside.found) return inside;
    piece = path.taken == Taken::row ? path.begin : path.taken == Taken::passed ? piece : no_number;
  }
  return {};
}

/// How far the rows come that begin with the piece before the word, or with the word itself.
Furthest furthest_from(const WorkReader& reader, const FirstPassed& passed, std::uint32_t stop) {
  Furthest furthest;
  std::vector<Match> found;
  match_rows(reader.sentence, passed.piece, {stop, no_bracket, 0}, found, &furthest);
  if (furthest.at < passed.at) furthest = {passed.at, passed.at, {}};
  return furthest;
}

Furthest find_furthest(WorkReader& reader, std::uint32_t begin, std::uint32_t stop) {
  const std::vector<std::int32_t> paths = read_stretch(reader, begin, stop, Extent::line);
  const FirstPassed passed = paths.empty() ? FirstPassed{} : first_passed(reader, paths.front());
  if (!passed.found) return {begin, begin, {}};
  return furthest_from(reader, passed, stop);
}

} // namespace

Stuck stuck_at(WorkReader& reader, std::uint32_t begin, std::uint32_t stop, std::string_view text,
               std::uint32_t text_begin) {
  const Sentence& sentence = reader.sentence;
  const Furthest at = find_furthest(reader, begin, stop);
  Stuck stuck;
  stuck.span = word_span(sentence, at.at);
  const std::uint32_t words = words_back(sentence.text(), at.at, 0);
  const Span before = sentence.span(at.steps.empty() ? words : std::max(at.begin, words),
                                    trim_separators(sentence.text(), 0, at.at));
  if (before.begin < before.end)
    stuck.after = std::string(text.substr(before.begin - text_begin, before.length()));
  while (!stuck.after.empty() && stuck.after.back() == ' ') stuck.after.pop_back();
  stuck.could_follow = could_follow(sentence.vocabulary, at.steps);
  return stuck;
}

} // namespace whorl::pattern
