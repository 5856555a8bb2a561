#include "pattern/label_head.hpp"

#include "pattern/colour.hpp"
#include "pattern/limits.hpp"
#include "pattern/text_words.hpp"
#include "words/ascii.hpp"

namespace whorl::pattern {

namespace {

using words::Concept;
using words::ConceptClass;
using words::Word;
using words::WordKind;

constexpr std::size_t longest_label = 96;   ///< bytes of a line's head that are looked at
constexpr std::uint32_t longest_ending = 6; ///< bytes of the letters of an ordinal: "nd", "th", "ème"
constexpr std::size_t longest_scanned = 3;  ///< letters and digits of a number that was scanned

using words::is_digit;
using words::is_folded_letter;

std::string_view head_of(std::string_view text) {
  std::size_t end = std::min(text.size(), longest_label);
  while (end < text.size() && end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0) == 0x80) --end;
  return text.substr(0, end);
}

std::size_t letters_behind(const Head& head, std::size_t place) {
  std::size_t end = place;
  while (end < head.line.text.size() && is_folded_letter(head.line.text[end])) ++end;
  return end;
}

bool is_round_word(const Head& head, std::size_t place) {
  return phrase_at(head, place, head.round) != nullptr || phrase_at(head, place, head.row) != nullptr;
}

/// The letters glued to an ordinal, which are no word for round: "nd", "th".
std::size_t pass_ending(const Head& head, std::size_t place) {
  if (!head.vocabulary.blanks_between_words) return place;
  const std::size_t end = letters_behind(head, place);
  const std::size_t next = pass_blanks(head, end);
  const bool links = phrase_at(head, next, head.conjunction) != nullptr ||
                     phrase_at(head, next, head.to) != nullptr ||
                     end_of_text_word(head.vocabulary, head.line.text, next, TextWord::range_link) !=
                         next; // "3rd and 4th rows"
  const bool word = is_round_word(head, place) && !is_round_word(head, next) && !links;
  return end - place > longest_ending || word ? place : end;
}

/// What a scanner's letter was before: `l` and `I` are 1, `O` is 0; -1 for others.
int scanned_digit(char c) {
  if (is_digit(c)) return c - '0';
  if (c == 'l' || c == 'i') return 1;
  return c == 'o' ? 0 : -1;
}

/// "l", "lO", "lst": a number of which a scanner took a digit for a letter.
LabelNumber scanned_number(const Head& head, std::size_t place) {
  const std::string_view text = head.line.text;
  LabelNumber number;
  std::size_t end = place;
  for (; end < text.size() && scanned_digit(text[end]) >= 0 && end - place < longest_scanned; ++end)
    number.value = number.value * 10 + scanned_digit(text[end]);
  const bool letter = std::any_of(text.begin() + static_cast<std::ptrdiff_t>(place),
                                  text.begin() + static_cast<std::ptrdiff_t>(end), is_folded_letter);
  if (!letter || number.value == 0 || (end < text.size() && (is_digit(text[end]) || text[end] == '\'')))
    return {};
  const bool ordinal = text.substr(end, 2) == "st" || text.substr(end, 2) == "th";
  number.end = ordinal ? end + 2 : end;
  number.ordinal = ordinal;
  return number.end < text.size() && is_folded_letter(text[number.end]) ? LabelNumber{} : number;
}

int roman_figure(char letter) { return letter == 'i' ? 1 : letter == 'v' ? 5 : letter == 'x' ? 10 : 0; }

/// "Rnd IV:", in capitals that a mark closes.
LabelNumber roman_number(const Head& head, std::size_t place) {
  const std::string_view text = head.line.text;
  std::size_t end = place;
  int value = 0;
  for (; end < text.size() && head.line.capital[end] && roman_figure(text[end]) > 0; ++end) {
    const int figure = roman_figure(text[end]);
    const int next = end + 1 < text.size() && head.line.capital[end + 1] ? roman_figure(text[end + 1]) : 0;
    value += figure < next ? -figure : figure;
  }
  const bool closed = end != place && (pass_closing(head, end, ":.-)") != end ||
                                       is_round_word(head, pass_blanks(head, end))); // "VII giro"
  return closed && value > 0 ? LabelNumber{value, end, false} : LabelNumber{};
}

} // namespace

bool is_roman(const Head& head, std::size_t place) { return roman_number(head, place).end != 0; }

namespace {

/// The S of "Rnd S:" was a 5, the B of "Rnd B:" an 8.
LabelNumber scanned_capital(const Head& head, std::size_t place) {
  const char letter = head.line.text[place];
  if (!head.line.capital[place] || (letter != 's' && letter != 'b')) return {};
  const std::size_t behind = pass_closing(head, place + 1, ":.-");
  const std::size_t next = pass_blanks(head, behind);
  const bool abbreviated =
      mark_at(head, place + 1) == '.' && letters_behind(head, next) == next + 1; // "S.c.", "S. c."
  const bool closed = behind != place + 1 && !abbreviated;
  return closed ? LabelNumber{letter == 's' ? 5 : 8, place + 1, false} : LabelNumber{};
}

LabelNumber number_of_digits(const Head& head, std::size_t place) {
  const Word* word = find_word(head, place, [&](const Word& w) {
    return w.kind == WordKind::number && is_digit(head.line.text[w.end - 1]) && w.number <= limit::number;
  });
  if (word == nullptr) return {};
  const std::size_t end = pass_ending(head, word->end);
  const bool old = end == word->end + 1 && head.line.text[word->end] == 'd' &&
                   (word->number == 2 || word->number == 3); // "2d row", as old books print it
  const Word* mark = phrase_at(head, word->end, head.ordinal);
  const bool marked = mark != nullptr && mark->end == end && is_folded_letter(head.line.text[word->end]);
  const bool ordinal = old || marked || (end != word->end && end - word->end >= 2);
  return {static_cast<int>(word->number), ordinal ? end : word->end, ordinal};
}

LabelNumber number_of_letters(const Head& head, std::size_t place) {
  const Word* word = find_word(head, place, [&](const Word& w) {
    return w.kind == WordKind::number && !is_digit(head.line.text[w.begin]);
  });
  if (word != nullptr) return {static_cast<int>(word->number), word->end, false};
  const Word* first = phrase_at(head, place, head.first);
  return first == nullptr ? LabelNumber{} : LabelNumber{1, first->end, true};
}

/// What may stand between the numbers of a label.
struct Link {
  std::size_t end = 0; ///< where the second number may begin; 0: nothing stands there
  enum { dash, comma, conjunction, word } kind = dash;
  bool spaced = false;
};

/// "à", "et", "bis", "a" between blanks: short words of other languages between two numbers.
std::size_t pass_foreign_link(const Head& head, std::size_t place) {
  constexpr std::size_t longest = 3;
  const std::string_view text = head.line.text;
  const std::size_t end = letters_behind(head, place);
  if (end == place || end - place > longest || end >= text.size() || text[end] != ' ') return place;
  const Word* word = find_word(head, place, [](const Word& w) { return w.kind != WordKind::unknown; });
  const bool known = word != nullptr && text.substr(place, end - place) != "a";
  if (is_colour(text.substr(place, end - place), head.vocabulary)) return place; // "r4 red 8 sc"
  const bool letter = end == place + 1 && text[place] != 'a';
  return known || letter ? place : end;
}

/// Behind two dots or three: "R5..R7", "5...7".
std::size_t pass_dots(const Head& head, std::size_t place) {
  const std::string_view text = head.line.text;
  const std::size_t end = std::min(text.find_first_not_of('.', place), text.size());
  return place < text.size() && (end == place + 2 || end == place + 3) ? end : place;
}

/// Behind the "to" of "through to".
std::size_t behind_to(const Head& head, std::size_t place) {
  const Word* to = phrase_at(head, pass_blanks(head, place), head.to);
  return to == nullptr ? place : to->end;
}

Link link_at(const Head& head, std::size_t place) {
  const std::size_t at = pass_blanks(head, place);
  const char mark = at < head.line.text.size() ? mark_at(head, at) : '\0';
  Link link;
  link.spaced = at != place;
  if (mark == '-' || mark == '~') link = {at + 1, Link::dash, link.spaced};
  if (mark == '-' && mark_at(head, at + 1) == '>') link.end = at + 2; // "R4 -> R6"
  if (const std::size_t dots = pass_dots(head, at); dots != at) link = {dots, Link::word, link.spaced};
  if (mark == ',' || mark == '+' || mark == '/') link = {at + 1, Link::comma, link.spaced};
  if (mark == '&') link = {at + 1, Link::conjunction, link.spaced};
  if (const Word* word = phrase_at(head, at, head.to))
    link = {behind_to(head, word->end), Link::word, link.spaced};
  if (const std::size_t end = end_of_text_word(head.vocabulary, head.line.text, at, TextWord::range_link);
      end != at)
    link = {behind_to(head, end), Link::word, link.spaced};
  if (const Word* word = phrase_at(head, at, head.conjunction))
    link = {word->end, Link::conjunction, link.spaced};
  if (const std::size_t end = pass_foreign_link(head, at); link.end == 0 && end != at)
    link = {end, Link::word, link.spaced};
  if (link.end != 0) link.end = pass_blanks(head, link.end);
  return link;
}

/// "5.-8.", "5)-8)", "5- to 7-": the mark that closes the first number stands before what links it.
Link link_behind_mark(const Head& head, std::size_t place) {
  if (place >= head.line.text.size()) return {};
  const char mark = mark_at(head, place);
  if (mark == '\0' || std::string_view(".)>-:").find(mark) == std::string_view::npos) return {};
  const bool twice = mark == '.' && place + 1 < head.line.text.size() && mark_at(head, place + 1) == ')';
  const std::size_t behind = place + (twice ? 2 : 1); // "3.) bis 6.)"
  const std::size_t next = pass_blanks(head, behind);
  if (mark == '.' && next < head.line.text.size() && head.line.capital[next]) return {}; // a sentence begins
  const Link link = link_at(head, behind);
  const bool links = link.kind == Link::word || link.kind == Link::conjunction;
  return links || (link.kind == Link::dash && !link.spaced) ? link : Link{};
}

void take_link(const Link& link, LabelNumbers& numbers) {
  numbers.dash = numbers.dash || link.kind == Link::dash;
  numbers.comma = numbers.comma || link.kind == Link::comma;
  numbers.word = numbers.word || link.kind == Link::word || link.kind == Link::conjunction;
  numbers.spaced = numbers.spaced || link.spaced;
}

/// Takes up the number behind a link; false if none follows on.
bool take_number(const Head& head, NumberForm form, const Link& link, LabelNumbers& numbers) {
  if (link.end == 0) return false;
  bool row = false;
  std::size_t place = link.end;
  if (link.kind == Link::comma)
    if (const Word* conjunction = phrase_at(head, place, head.conjunction)) place = conjunction->end;
  place = pass_blanks(head, place);
  const std::size_t behind = pass_round_word(head, place, row);
  const LabelNumber next = label_number_at(head, pass_ordinal_lead(head, pass_blanks(head, behind)), form);
  const bool list = link.kind == Link::comma || link.kind == Link::conjunction;
  if (next.end == 0 || next.value <= numbers.to || (list && next.value != numbers.to + 1)) return false;
  if (numbers.ranges() && numbers.word && link.kind == Link::dash) return false; // "5 to 7 - 24 sc"
  if (list && numbers.dash) return false;
  take_link(link, numbers);
  numbers.to = next.value;
  numbers.end = next.end;
  numbers.again = numbers.again || behind != place;
  numbers.ordinal = numbers.ordinal || next.ordinal;
  return true;
}

/// "第6圈至第8圈": where no blanks divide the words, the word for round stands behind each number.
Link link_behind_word(const Head& head, std::size_t place) {
  bool row = false;
  const std::size_t behind = pass_round_word(head, place, row);
  return head.vocabulary.blanks_between_words || behind == place ? Link{} : link_at(head, behind);
}

/// "7.ª y 8.ª vtas.", "7:e-10:e varvet": the mark of an ordinal stands before what links it to the next.
bool take_next_ordinal(const Head& head, NumberForm form, LabelNumbers& numbers) {
  const Word* mark = phrase_at(head, numbers.end, head.ordinal);
  if (mark == nullptr || !take_number(head, form, link_at(head, mark->end), numbers)) return false;
  numbers.ordinal = true;
  return true;
}

/// … and behind the second number too: "第2圈 - 12X" gives round 2 only.
bool take_next_with_word(const Head& head, NumberForm form, LabelNumbers& numbers) {
  LabelNumbers more = numbers;
  if (!take_number(head, form, link_behind_word(head, numbers.end), more) || !is_round_word(head, more.end))
    return false;
  numbers = more;
  return true;
}

bool take_next(const Head& head, NumberForm form, LabelNumbers& numbers) {
  return take_next_with_word(head, form, numbers) || take_next_ordinal(head, form, numbers) ||
         take_number(head, form, link_at(head, numbers.end), numbers) ||
         take_number(head, form, link_behind_mark(head, numbers.end), numbers);
}

ConceptClass sort_of(const Head& head, const Word& word) {
  if (word.kind != WordKind::phrase || word.means >= head.vocabulary.concepts.size())
    return ConceptClass::word;
  return head.vocabulary.concepts[word.means].sort;
}

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

/// `R` of "R3": one letter that is no word of the language, with a number behind it.
std::size_t pass_round_letter(const Head& head, std::size_t place) {
  if (place + 1 >= head.line.text.size()) return place;
  const Word* letter = find_word(head, place, [](const Word&) { return true; });
  if (letter == nullptr || letter->kind != WordKind::unknown || letter->end != place + 1) return place;
  const LabelNumber number = number_of_digits(head, pass_blanks(head, letter->end));
  return head.line.capital[place] && number.end != 0 ? letter->end : place;
}

} // namespace

Head head_of(std::string_view text, std::uint32_t begin, const words::Vocabulary& vocabulary) {
  const auto find = [&](const char* name) { return words::find_concept(vocabulary, name); };
  Head head{vocabulary,
            words::fold(head_of(text), begin),
            {},
            find("round"),
            find("row"),
            find("to"),
            find("in"),
            find("and"),
            find("next"),
            find("last"),
            find("first"),
            find("times"),
            find("step"),
            find("ordinal")};
  head.lattice = words::lattice(head.line, vocabulary);
  return head;
}

std::size_t pass_blanks(const Head& head, std::size_t place) {
  while (place < head.line.text.size() && head.line.text[place] == ' ') ++place;
  return place;
}

bool is_end(const Head& head, std::size_t place) { return pass_blanks(head, place) >= head.line.text.size(); }

const Word* phrase_at(const Head& head, std::size_t place, Concept means) {
  if (means == words::no_concept) return nullptr;
  return find_word(head, place,
                   [=](const Word& w) { return w.kind == WordKind::phrase && w.means == means; });
}

char mark_at(const Head& head, std::size_t place) {
  const Word* mark = find_word(head, place, [](const Word& w) { return w.kind == WordKind::mark; });
  return mark == nullptr ? '\0' : mark->mark;
}

std::size_t pass_closing(const Head& head, std::size_t place, std::string_view marks) {
  std::size_t at = pass_blanks(head, place);
  bool closed = false;
  for (int i = 0; i < 2 && at < head.line.text.size(); ++i) {
    const char mark = mark_at(head, at);
    if (mark == '\0' || marks.find(mark) == std::string_view::npos) break;
    closed = true;
    ++at;
  }
  return closed ? at : place;
}

std::size_t pass_round_word(const Head& head, std::size_t place, bool& row) {
  const Word* round = phrase_at(head, place, head.round);
  const Word* its_row = phrase_at(head, place, head.row);
  if (round == nullptr && its_row != nullptr) row = true;
  const Word* word = round != nullptr ? round : its_row;
  return word != nullptr ? word->end : pass_round_letter(head, place);
}

std::size_t pass_ordinal_lead(const Head& head, std::size_t place) {
  const Word* lead = head.vocabulary.blanks_between_words ? nullptr : phrase_at(head, place, head.ordinal);
  return lead == nullptr ? place : lead->end;
}

LabelNumber label_number_at(const Head& head, std::size_t place, NumberForm form) {
  if (place >= head.line.text.size()) return {};
  LabelNumber number;
  if (is_digit(head.line.text[place])) number = number_of_digits(head, place);
  if (number.end == 0 && form == NumberForm::any) number = number_of_letters(head, place);
  const bool glued = number.end != 0 && number.end < head.line.text.size() &&
                     is_folded_letter(head.line.text[number.end]) && !is_round_word(head, number.end);
  if (number.end == 0 && form == NumberForm::any) number = roman_number(head, place);
  if (number.end == 0 && form == NumberForm::any) number = scanned_capital(head, place);
  if ((number.end == 0 || glued) && form != NumberForm::digits)
    if (const LabelNumber scanned = scanned_number(head, place); scanned.end != 0) return scanned;
  return number;
}

namespace {

std::size_t pass_word(const Head& head, std::size_t place, std::string_view word) {
  const std::string_view text = head.line.text;
  const std::size_t end = place + word.size();
  const bool stands = place < text.size() && text.substr(place, word.size()) == word;
  return stands && letters_behind(head, end) == end ? end : place;
}

/// "inc. -", "inc:" behind a range; `inc` is an increase where a number or work follows.
std::size_t pass_short_inclusive(const Head& head, std::size_t at) {
  const std::string_view text = head.line.text;
  std::size_t end = pass_word(head, at, "inc");
  if (end == at) return at;
  if (end < text.size() && text[end] == '.') ++end;
  const std::size_t behind = pass_closing(head, end, ":-");
  const std::size_t next = pass_blanks(head, behind);
  return behind != end && next < text.size() && !(is_digit(text[next]) && text[end - 1] != '.') ? end : at;
}

} // namespace

std::size_t pass_inclusive(const Head& head, std::size_t place) {
  std::size_t at = pass_blanks(head, place);
  if (at < head.line.text.size() && mark_at(head, at) == ',') at = pass_blanks(head, at + 1);
  if (const std::size_t end = end_of_text_word(head.vocabulary, head.line.text, at, TextWord::inclusive);
      end != at)
    return end;
  const std::size_t end = pass_short_inclusive(head, at);
  return end == at ? place : end;
}

LabelNumbers label_numbers_at(const Head& head, std::size_t place, NumberForm form) {
  const LabelNumber first = label_number_at(head, place, form);
  if (first.end == 0) return {};
  LabelNumbers numbers;
  numbers.from = numbers.to = first.value;
  numbers.end = first.end;
  numbers.ordinal = first.ordinal;
  while (!(numbers.dash && numbers.ranges()) && take_next(head, form, numbers)) {
  }
  if (numbers.ranges()) numbers.end = pass_inclusive(head, numbers.end);
  return numbers;
}

SpreadNumbers spread_numbers_at(const Head& head, std::size_t place) {
  SpreadNumbers spread;
  bool follow_on = true;
  for (LabelNumber number = label_number_at(head, place, NumberForm::digits); number.end != 0;) {
    if (!spread.numbers.empty()) {
      if (number.value <= spread.numbers.back()) return {};
      follow_on = follow_on && number.value == spread.numbers.back() + 1;
    }
    spread.numbers.push_back(number.value);
    spread.end = number.end;
    const Link link = link_at(head, number.end);
    if (link.end == 0 || link.kind == Link::dash || link.kind == Link::word) break;
    const Word* conjunction =
        link.kind == Link::comma ? phrase_at(head, link.end, head.conjunction) : nullptr;
    bool row = false;
    const std::size_t at = pass_blanks(head, conjunction != nullptr ? conjunction->end : link.end);
    number = label_number_at(head, pass_blanks(head, pass_round_word(head, at, row)), NumberForm::digits);
  }
  return follow_on ? SpreadNumbers{} : spread;
}

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

bool holds_loops(const Head& head, std::size_t begin, std::size_t end) {
  const Word* loops = find_word(head, pass_blanks(head, begin + 1),
                                [&](const Word& w) { return sort_of(head, w) == ConceptClass::loops; });
  return loops != nullptr && pass_blanks(head, loops->end) + 1 == end;
}

} // namespace whorl::pattern
