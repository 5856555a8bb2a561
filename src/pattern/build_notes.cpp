#include "pattern/building.hpp"
#include "pattern/byte_before.hpp"
#include "pattern/placing.hpp"

#include <algorithm>

namespace whorl::pattern {

using words::Word;
using words::WordKind;

namespace {

bool is_instruction(const Sentence& sentence, const Word& word) {
  return word.kind == WordKind::number || is_work(sentence, word) || word.mark == '(' || word.mark == ')';
}

/// The word that a path passed over.
const Word* word_passed(const Sentence& sentence, const Path& path) {
  for (const Word& word : words_at(sentence, path.begin))
    if (skip_blanks(sentence.text(), word.end) == path.end || word.end == path.end) return &word;
  return nullptr;
}

} // namespace

void keep_note(Building& b, Span span, bool joined) {
  auto& placings = b.reading.placings;
  if (joined && !placings.empty() && placings.back().what == What::note)
    placings.back().span = cover(placings.back().span, span);
  else
    placings.push_back(make_note(span));
}

namespace {

/// "in next", "in each", "in 2": a place, and which, begins there.
bool leads_into_place(const Sentence& sentence, std::uint32_t at) {
  const Word* in = word_meaning(sentence, at, sentence.in);
  if (in == nullptr) return false;
  const WordsAt words = words_at(sentence, skip_blanks(sentence.text(), in->end));
  return std::any_of(words.begin(), words.end(), [&](const Word& word) {
    const bool each =
        word.kind == WordKind::phrase && sentence.vocabulary.concepts[word.means].name == "each";
    return each || word.means == sentence.next || word.kind == WordKind::number;
  });
}

/// A word alone between two commas, alone in what is repeated, or led into a place stands where a stitch
/// would: nobody adds a note so.
bool stands_for_stitch(const Sentence& sentence, const Path& path) {
  constexpr std::string_view opens = "([*", closes = ")]*";
  const std::string_view text = sentence.text();
  const char head = byte_before(text, path.begin), tail = path.end < text.size() ? text[path.end] : '\0';
  const auto is = [](std::string_view marks, char c) { return c != 0 && marks.find(c) != marks.npos; };
  const bool begins = head == '\0' || head == ',' || is(opens, head);
  if (!begins) return false;
  if (leads_into_place(sentence, path.end)) return true;
  const bool repeated = is(opens, head) || is(closes, tail);
  return tail == ',' || (repeated && is(closes, tail));
}

/// "sc in blorp": a word behind "in" where a stitch still wants its place.
bool stands_for_place(const Building& b, const Path& path) {
  if (path.before == no_path) return false;
  const Path& in = b.reader.paths[static_cast<std::size_t>(path.before)];
  if (in.taken != Taken::passed || in.before == no_path) return false;
  if (word_meaning(b.reader.sentence, in.begin, b.reader.sentence.in) == nullptr) return false;
  const Path& row = b.reader.paths[static_cast<std::size_t>(in.before)];
  if (row.taken != Taken::row) return false;
  const Piece& piece = b.reader.pieces[static_cast<std::size_t>(row.match)];
  return piece.verb == Verb::stitch && !piece.work.to_end && piece.work.times == 1 &&
         piece.work.where == Where::next;
}

} // namespace

void put_passed(Building& b, const Path& path, bool joined) {
  const Sentence& sentence = b.reader.sentence;
  const Word* word = word_passed(sentence, path);
  if (word == nullptr) return;
  const bool unknown = word->kind == WordKind::unknown;
  if (is_instruction(sentence, *word) ||
      (unknown && (stands_for_stitch(sentence, path) || stands_for_place(b, path))))
    b.reading.passed_over.push_back(word->span);
  else if (unknown)
    keep_note(b, word->span, joined);
}

void put_placing(Building& b, Sequence& sequence, const Path& path) {
  const std::vector<Placing> all = placings_in(b.reader.sentence, path.begin, path.end);
  const bool changes =
      std::any_of(all.begin(), all.end(), [](const Placing& p) { return p.what == What::change; });
  const std::uint8_t yarn = changes ? number_of_yarn(b, path.begin, path.end) : std::uint8_t{0};
  if (yarn != 0) sequence.yarn = yarn;
  b.reading.placings.insert(b.reading.placings.end(), all.begin(), all.end());
}

void put_aside(Building& b, Sequence& sequence, const Path& path) {
  const std::vector<Placing> all = placings_in(b.reader.sentence, path.begin, path.end);
  if (std::any_of(all.begin(), all.end(), [](const Placing& p) { return p.what == What::change; }))
    return put_placing(b, sequence, path);
  keep_note(b, b.reader.sentence.span(path.begin, path.end), false);
}

} // namespace whorl::pattern
