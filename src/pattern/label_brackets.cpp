#include "pattern/label_brackets.hpp"

#include "pattern/label_figure.hpp"

#include "words/ascii.hpp"

namespace whorl::pattern {

using words::ConceptClass;
using words::is_digit;
using words::Word;
using words::WordKind;

namespace {

/// Passes a number and a word of one of these sorts behind it; `place` if they do not stand there.
std::size_t pass_number_and(const Head& head, std::size_t place, std::initializer_list<ConceptClass> sorts) {
  const Word* number = find_word(head, place, [](const Word& w) { return w.kind == WordKind::number; });
  if (number == nullptr || !is_digit(head.line.text[place])) return place;
  const std::size_t unit = pass_blanks(head, number->end);
  const Word* word = find_word(head, unit, [&](const Word& w) {
    return std::find(sorts.begin(), sorts.end(), sort_of(head, w)) != sorts.end();
  });
  return word == nullptr ? place : static_cast<std::size_t>(word->end);
}

} // namespace

std::size_t pass_count(const Head& head, std::size_t place) {
  return pass_number_and(head, place, {ConceptClass::place});
}

std::size_t pass_brackets(const Head& head, std::size_t place) {
  const std::string_view text = head.line.text;
  if (place >= text.size() || (text[place] != '(' && text[place] != '[')) return place;
  const std::size_t close = text.find(text[place] == '(' ? ')' : ']', place);
  const std::size_t open = text.find(text[place], place + 1);
  return close == std::string_view::npos || open < close ? place : close + 1;
}

bool holds_count(const Head& head, std::size_t begin, std::size_t end) {
  const std::size_t inner = pass_blanks(head, begin + 1);
  std::size_t at = pass_number_and(head, inner, {ConceptClass::place, ConceptClass::stitch});
  if (at == inner) {
    const Word* number = find_word(head, inner, [](const Word& w) { return w.kind == WordKind::number; });
    if (number == nullptr || !is_digit(head.line.text[inner])) return false;
    at = number->end;
  }
  return pass_blanks(head, at) + 1 == end;
}

bool holds_rounds(const Head& head, std::size_t begin, std::size_t end, int rounds) {
  const Word* number =
      find_word(head, pass_blanks(head, begin + 1), [](const Word& w) { return w.kind == WordKind::number; });
  if (number == nullptr || static_cast<int>(number->number) != rounds) return false;
  bool row = false;
  const std::size_t word = pass_blanks(head, number->end);
  std::size_t behind = pass_round_word(head, word, row);
  if (behind != word && behind < head.line.text.size() && head.line.text[behind] == '.') ++behind;
  return behind != word && pass_blanks(head, behind) + 1 == end;
}

bool holds_loops(const Head& head, std::size_t begin, std::size_t end) {
  const Word* loops = find_word(head, pass_blanks(head, begin + 1),
                                [&](const Word& w) { return sort_of(head, w) == ConceptClass::loops; });
  return loops != nullptr && pass_blanks(head, loops->end) + 1 == end;
}

bool is_repeated(const Head& head, std::size_t place) {
  const std::size_t at = pass_blanks(head, place);
  if (at >= head.line.text.size()) return false;
  const char mark = mark_at(head, at);
  const std::size_t behind = pass_blanks(head, at + 1);
  const bool times = mark == '*' && behind < head.line.text.size() && is_digit(head.line.text[behind]);
  return times || mark == ',' || phrase_at(head, at, head.times) != nullptr;
}

} // namespace whorl::pattern
