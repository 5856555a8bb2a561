#include "pattern/label_figure.hpp"

#include "pattern/limits.hpp"
#include "pattern/text_words.hpp"
#include "words/ascii.hpp"
#include "words/scanned.hpp"

namespace whorl::pattern {

using words::is_digit;
using words::is_folded_letter;
using words::Word;
using words::WordKind;

namespace {

constexpr std::uint32_t longest_ending = 6; ///< bytes of the letters of an ordinal: "nd", "th", "ème"
constexpr std::size_t longest_scanned = 3;  ///< letters and digits of a number that was scanned

/// The ", 4th" behind "3rd".
bool ordinal_follows(const Head& head, std::size_t place) {
  const std::string_view text = head.line.text;
  if (place >= text.size() || text[place] != ',') return false;
  const std::size_t next = pass_blanks(head, place + 1);
  std::size_t end = next;
  while (end < text.size() && is_digit(text[end])) ++end;
  return end != next && letters_behind(head, end) != end;
}

/// The letters glued to an ordinal, which are no word for round: "nd", "th".
std::size_t pass_ending(const Head& head, std::size_t place) {
  if (!head.vocabulary.blanks_between_words) return place;
  const std::size_t end = letters_behind(head, place);
  const std::size_t next = pass_blanks(head, end);
  const bool links = phrase_at(head, next, head.conjunction) != nullptr ||
                     phrase_at(head, next, head.to) != nullptr || ordinal_follows(head, next) ||
                     end_of_text_word(head.vocabulary, head.line.text, next, TextWord::range_link) !=
                         next; // "3rd and 4th rows"
  const bool word = is_round_word(head, place) && !is_round_word(head, next) && !links;
  return end - place > longest_ending || word ? place : end;
}

/// Whether a capital S may have been a 5 by what stands behind it: a mark that closes a label, the sign of an
/// ordinal, a word for round or what links it to a second number. "S1:", "S.c.", "S H" are letters.
bool may_be_five(const Head& head, std::size_t behind) {
  const std::string_view text = head.line.text;
  const std::size_t next = pass_blanks(head, behind);
  if (next >= text.size() || std::string_view(":|-~)").find(text[next]) != std::string_view::npos)
    return true;
  return phrase_at(head, next, head.ordinal) != nullptr || phrase_at(head, next, head.to) != nullptr ||
         is_round_word(head, next) ||
         end_of_text_word(head.vocabulary, text, next, TextWord::range_link) != next;
}

/// "l", "lO", "lst": a number of which a scanner took a digit for a letter.
LabelNumber scanned_number(const Head& head, std::size_t place) {
  const std::string_view text = head.line.text;
  LabelNumber number;
  std::size_t end = place;
  for (std::size_t letters = 0; end < text.size() && letters < longest_scanned; ++letters) {
    const bool five = text[end] == 's' && head.line.capital[end] && may_be_five(head, end + 1);
    const words::ScannedDigit digit = five               ? words::ScannedDigit{5}
                                      : text[end] == 'i' ? words::ScannedDigit{1}
                                                         : words::scanned_digit(text, end);
    if (digit.value < 0) break;
    number.value = number.value * 10 + digit.value;
    end += digit.length;
  }
  const bool letter = std::any_of(text.begin() + static_cast<std::ptrdiff_t>(place),
                                  text.begin() + static_cast<std::ptrdiff_t>(end), is_folded_letter);
  if (!letter || number.value == 0 || (end < text.size() && (is_digit(text[end]) || text[end] == '\'')))
    return {};
  const bool ordinal = text.substr(end, 2) == "st" || text.substr(end, 2) == "th";
  number.end = ordinal ? end + 2 : end;
  number.ordinal = ordinal;
  const bool marked = phrase_at(head, number.end, head.ordinal) != nullptr; // "lÂ° g.", "l.ª v."
  const bool runs_on = number.end < text.size() && is_folded_letter(text[number.end]);
  return runs_on && !marked ? LabelNumber{} : number;
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

/// The capital З of "З." and "З)" was typed for a 3.
LabelNumber typed_three(const Head& head, std::size_t place) {
  const words::ScannedDigit digit = words::scanned_digit(head.line.text, place);
  const std::size_t end = place + digit.length;
  const bool three = digit.length == 2 && digit.value > 0 && head.line.capital[place];
  return three && pass_closing(head, end, ":.)") != end ? LabelNumber{digit.value, end, false}
                                                        : LabelNumber{};
}

/// The "-й" of "4-й", the "'inci" of "1'inci".
bool is_hyphened(const Head& head, const Word& mark) {
  const std::string_view text = head.line.text;
  return head.vocabulary.blanks_between_words && !is_folded_letter(text[mark.begin]) &&
         is_folded_letter(text[mark.end - 1]) && letters_behind(head, mark.end) == mark.end;
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
  if (mark != nullptr && is_hyphened(head, *mark)) return {static_cast<int>(word->number), mark->end, true};
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

/// The O of "O1:", the o of "o.1", where a letter stands for the word for round though it means something
/// else too; `place` if none stands there.
std::size_t pass_round_initial(const Head& head, std::size_t place) {
  const std::string& text = head.line.text;
  const std::size_t end = end_of_text_word(head.vocabulary, text, place, TextWord::round_initial);
  if (end == place || end >= text.size()) return place;
  if (text[end] == '.' && end + 1 < text.size() && number_of_digits(head, end + 1).end != 0) return end;
  const LabelNumber number = is_digit(text[end]) ? number_of_digits(head, end) : LabelNumber{};
  if (number.end == 0) return place;
  const std::string again = "-" + text.substr(place, end - place); // "o3-o4:"
  const bool small = pass_closing(head, number.end, ":)") != number.end ||
                     text.compare(number.end, again.size(), again) == 0;
  const bool capital = head.line.capital[place] && pass_closing(head, number.end, ":.)-") != number.end;
  return small || capital ? end : place;
}

/// `R` of "R3": one letter that is no word of the language, with a number behind it.
std::size_t pass_round_letter(const Head& head, std::size_t place) {
  if (place + 1 >= head.line.text.size()) return place;
  if (const std::size_t end = pass_round_initial(head, place); end != place) return end;
  const Word* letter = find_word(head, place, [](const Word&) { return true; });
  if (letter == nullptr || letter->kind != WordKind::unknown || letter->end != place + 1) return place;
  const LabelNumber number = number_of_digits(head, pass_blanks(head, letter->end));
  return head.line.capital[place] && number.end != 0 ? letter->end : place;
}

} // namespace

std::size_t pass_round_word(const Head& head, std::size_t place, bool& row) {
  const Word* round = phrase_at(head, place, head.round);
  const Word* its_row = phrase_at(head, place, head.row);
  if (round == nullptr && its_row != nullptr) row = true;
  const Word* word = round != nullptr ? round : its_row;
  return word != nullptr ? word->end : pass_round_letter(head, place);
}

LabelNumber label_number_at(const Head& head, std::size_t place, NumberForm form) {
  if (place >= head.line.text.size()) return {};
  LabelNumber number;
  if (is_digit(head.line.text[place])) number = number_of_digits(head, place);
  if (number.end == 0 && form == NumberForm::digits) return typed_three(head, place);
  if (number.ordinal && form != NumberForm::digits) // "1О" with a Cyrillic letter is 10, and no 1st
    if (const LabelNumber scanned = scanned_number(head, place); scanned.end == number.end) return scanned;
  if (number.end == 0 && form == NumberForm::any) number = number_of_letters(head, place);
  const bool glued = number.end != 0 && number.end < head.line.text.size() &&
                     is_folded_letter(head.line.text[number.end]) && !is_round_word(head, number.end);
  if (number.end == 0 && form == NumberForm::any) number = roman_number(head, place);
  if (number.end == 0 && form == NumberForm::any) number = scanned_capital(head, place);
  if ((number.end == 0 || glued) && form != NumberForm::digits)
    if (const LabelNumber scanned = scanned_number(head, place); scanned.end != 0) return scanned;
  return number;
}

} // namespace whorl::pattern
