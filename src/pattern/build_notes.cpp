#include "pattern/building.hpp"
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

/// A word alone between two commas stands where a stitch would: nobody adds a note so.
bool stands_for_stitch(const Sentence& sentence, const Path& path) {
  const std::string_view text = sentence.text();
  std::uint32_t before = path.begin;
  while (before > 0 && text[before - 1] == ' ') --before;
  const bool comma_before = before == 0 || text[before - 1] == ',';
  return comma_before && path.end < text.size() && text[path.end] == ',';
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

} // namespace whorl::pattern
