#include "pattern/label_numbers.hpp"

#include "pattern/colour.hpp"
#include "pattern/text_words.hpp"
#include "words/ascii.hpp"

namespace whorl::pattern {

using words::is_digit;
using words::is_folded_letter;
using words::Word;
using words::WordKind;

namespace {

/// What may stand between the numbers of a label.
struct Link {
  std::size_t end = 0; ///< where the second number may begin; 0: nothing stands there
  enum { dash, comma, conjunction, word } kind = dash;
  bool spaced = false;
  bool slash = false;
};

/// Letters of a text, those of several bytes counted once.
std::size_t letters_in(std::string_view text) {
  return static_cast<std::size_t>(std::count_if(
      text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

/// "à", "et", "bis", "a" between blanks: short words of other languages between two numbers.
std::size_t pass_foreign_link(const Head& head, std::size_t place) {
  constexpr std::size_t longest = 3;
  const std::string_view text = head.line.text;
  const std::size_t end = letters_behind(head, place);
  if (end == place || letters_in(text.substr(place, end - place)) > longest || end >= text.size() ||
      text[end] != ' ')
    return place;
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
  if (mark == ',' || mark == '+' || mark == '/') link = {at + 1, Link::comma, link.spaced, mark == '/'};
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

/// Whether a new sentence begins behind a full stop.
bool begins_sentence(const Head& head, std::size_t behind) {
  const std::size_t next = pass_blanks(head, behind);
  return next < head.line.text.size() && head.line.capital[next];
}

/// "5.-8.", "5)-8)", "5- to 7-": the mark that closes the first number stands before what links it.
Link link_behind_mark(const Head& head, std::size_t number) {
  const std::size_t place = pass_blanks(head, number);
  if (place >= head.line.text.size()) return {};
  const char mark = mark_at(head, place);
  if (place != number && mark != '.') return {}; // "6 . - 9 ."
  if (mark == '\0' || std::string_view(".)>-:").find(mark) == std::string_view::npos) return {};
  const std::string_view both = std::string_view(head.line.text).substr(place, 3);
  const bool twice = both.substr(0, 2) == ".)" || both.substr(0, 2) == "-)" || both == ".- ";
  const std::size_t behind = place + (twice ? 2 : 1); // "3.) bis 6.)", "r4.- hasta r8.-"
  if ((mark == '.' || mark == ':') && begins_sentence(head, behind)) return {}; // "Carr 1: As 3 corr …"
  const Link link = link_at(head, behind);
  const bool links = link.kind == Link::word || link.kind == Link::conjunction;
  return links || (link.kind == Link::dash && (!link.spaced || place != number)) ? link : Link{};
}

void take_link(const Link& link, LabelNumbers& numbers) {
  numbers.dash = numbers.dash || link.kind == Link::dash;
  numbers.comma = numbers.comma || link.kind == Link::comma;
  numbers.word = numbers.word || link.kind == Link::word || link.kind == Link::conjunction;
  numbers.spaced = numbers.spaced || link.spaced;
}

/// The 6 of "R2-6V", of "giro 2 - 6mb": so many stitches, and the end of no range.
bool is_glued_to_work(const Head& head, std::size_t place, bool again) {
  std::size_t end = place;
  while (end < head.line.text.size() && words::is_digit(head.line.text[end])) ++end;
  const bool glued = end != place && end < head.line.text.size() && is_folded_letter(head.line.text[end]);
  return glued && !again && !is_round_word(head, end) && works_at(head, end) &&
         phrase_at(head, end, head.ordinal) == nullptr;
}

/// "number", "no.", "nr", "№" before the number; `place` if none stands there.
std::size_t pass_word_number(const Head& head, std::size_t place) {
  const std::string_view text = head.line.text;
  const std::size_t end = end_of_text_word(head.vocabulary, text, place, TextWord::number);
  if (end == place || end >= text.size()) return place;
  const bool sign = !words::is_small(text[end - 1]); // "no.", "nº", "№"
  return text[end] == ' ' || (sign && is_digit(text[end])) ? pass_blanks(head, end) : place;
}

/// Takes up the number behind a link; false if none follows on.
bool take_number(const Head& head, NumberForm form, Link link, LabelNumbers& numbers) {
  if (link.end == 0) return false;
  std::size_t place = link.end;
  if (link.kind == Link::comma)
    if (const Word* conjunction = phrase_at(head, place, head.conjunction)) place = conjunction->end;
  const NumberLead lead = number_lead_at(head, pass_blanks(head, place));
  const std::size_t sign = pass_word_number(head, lead.end); // "№4-№6"
  const LabelNumber next = label_number_at(head, pass_ordinal_lead(head, sign), form);
  const bool closed = next.end != 0 && pass_closing(head, next.end, ".)-:") != next.end;
  if (link.slash && (lead.word || closed) && next.value > numbers.to + 1)
    link.kind = Link::dash; // "R4/R7", "5/8- 24 sc"
  const bool list = link.kind == Link::comma || link.kind == Link::conjunction;
  if (next.end == 0 || next.value <= numbers.to || (list && next.value != numbers.to + 1)) return false;
  if (numbers.ranges() && numbers.word && link.kind == Link::dash) return false; // "5 to 7 - 24 sc"
  if (numbers.ranges() && numbers.word && link.kind == Link::word) return false; // "5 по 6. По 24 сбн"
  if (numbers.comma && link.kind == Link::word) return false; // "р. 3, 4, 5 по 10 сбн"
  if ((list && numbers.dash) || is_glued_to_work(head, lead.end, lead.word)) return false;
  take_link(link, numbers);
  numbers.to = next.value;
  numbers.end = next.end;
  numbers.again = numbers.again || lead.word;
  numbers.ordinal = numbers.ordinal || next.ordinal;
  return true;
}

/// "第6圈至第8圈", "4р - 5р": the word for round stands behind each number.
Link link_behind_word(const Head& head, std::size_t place) {
  bool row = false;
  const std::size_t word = pass_blanks(head, pass_ordinal_mark(head, place));
  const std::size_t behind = is_round_word(head, word) ? pass_round_word(head, word, row) : word;
  if (behind == word) return {};
  Link link = link_at(head, behind);
  if (link.end == 0) link = link_behind_mark(head, behind); // "5R.-6R."
  const bool surely = link.kind == Link::dash || link.kind == Link::word;
  return surely || !head.vocabulary.blanks_between_words ? link : Link{};
}

/// "7.ª y 8.ª vtas.", "7:e-10:e varvet": the mark of an ordinal stands before what links it to the next.
bool take_next_ordinal(const Head& head, NumberForm form, LabelNumbers& numbers) {
  const Word* mark = phrase_at(head, pass_blanks(head, numbers.end), head.ordinal); // "5 e t/m 10 e t."
  if (mark == nullptr) return false;
  const bool stops = head.line.text[mark->end - 1] == '.';
  if (stops && (begins_sentence(head, mark->end) || (numbers.ranges() && numbers.word))) return false;
  if (!take_number(head, form, link_at(head, mark->end), numbers)) return false;
  numbers.ordinal = true;
  return true;
}

/// … and behind the second number too: "第2圈 - 12X" gives round 2 only.
bool take_next_with_word(const Head& head, NumberForm form, LabelNumbers& numbers) {
  LabelNumbers more = numbers;
  if (!take_number(head, form, link_behind_word(head, numbers.end), more)) return false;
  if (!is_round_word(head, pass_blanks(head, pass_ordinal_mark(head, more.end)))) return false;
  numbers = more;
  return true;
}

/// "3'ten 8'e kadar 12": behind the words that end a range no number goes on with it.
bool has_ended(const Head& head, const LabelNumbers& numbers) {
  const std::size_t at = pass_blanks(head, numbers.end);
  return numbers.ranges() && end_of_text_word(head.vocabulary, head.line.text, at, TextWord::range_end) != at;
}

bool take_next(const Head& head, NumberForm form, LabelNumbers& numbers) {
  if (has_ended(head, numbers)) return false;
  return take_next_with_word(head, form, numbers) || take_next_ordinal(head, form, numbers) ||
         take_number(head, form, link_at(head, numbers.end), numbers) ||
         take_number(head, form, link_behind_mark(head, numbers.end), numbers);
}

/// The "с" of "Ряды с 6 по 8"; `place` if a number does not follow.
std::size_t pass_from(const Head& head, std::size_t place) {
  const Word* from = phrase_at(head, place, head.from);
  if (from == nullptr || phrase_at(head, place, head.between) != nullptr) return place;
  std::size_t at = pass_blanks(head, from->end);
  at = pass_blanks(head, end_of_text_word(head.vocabulary, head.line.text, at, TextWord::article));
  return label_number_at(head, at, NumberForm::any).end != 0 ? at : place;
}

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

NumberLead number_lead_at(const Head& head, std::size_t place) {
  NumberLead lead;
  std::size_t at = pass_round_word(head, place, lead.row);
  lead.word = at != place;
  const auto pass_mark = [&](char mark) {
    at = pass_blanks(head, at);
    if (at < head.line.text.size() && mark_at(head, at) == mark) at = pass_blanks(head, at + 1);
  };
  if (lead.word) pass_mark('.');
  pass_mark('#');
  if (lead.word) at = pass_from(head, pass_word_number(head, at));
  lead.end = at;
  return lead;
}

std::size_t pass_ordinal_mark(const Head& head, std::size_t place) {
  const Word* mark = phrase_at(head, pass_blanks(head, place), head.ordinal);
  return mark != nullptr && is_round_word(head, pass_blanks(head, mark->end)) ? mark->end : place;
}

LabelNumbers numbers_run_at(const Head& head, std::size_t place) {
  const std::string_view text = head.line.text;
  LabelNumbers run;
  for (std::size_t at = place;;) {
    const LabelNumber number = label_number_at(head, at, NumberForm::digits);
    if (number.end == 0 || (run.end != 0 && number.value != run.to + 1)) break;
    if (run.end == 0) run.from = number.value;
    run.to = number.value;
    run.end = number.end;
    at = run.end < text.size() && text[run.end] == '.' ? run.end + 1 : run.end;
    at = pass_blanks(head, at);
    if (at == run.end) break;
  }
  return run.ranges() ? run : LabelNumbers{};
}

namespace {

/// "6)7)8)", "4-5-6": numbers one after the other with a mark between; none if there are fewer than three.
LabelNumbers marked_run_at(const Head& head, std::size_t place, char mark) {
  LabelNumbers run;
  for (std::size_t at = place;;) {
    const LabelNumber number = label_number_at(head, at, NumberForm::digits);
    if (number.end == 0 || number.ordinal || (run.end != 0 && number.value != run.to + 1)) break;
    if (run.end == 0) run.from = number.value;
    run.to = number.value;
    run.end = number.end;
    if (run.end >= head.line.text.size() || mark_at(head, run.end) != mark) break;
    at = run.end + 1;
  }
  run.word = true; // it is nothing else
  return run.to >= run.from + 2 ? run : LabelNumbers{};
}

/// "tours 5 6 7 :", "carr 6 7 e 8 pb": three numbers or more that follow on with blanks between them, the
/// last perhaps behind "and"; of two, a mark has to close them.
LabelNumbers spaced_run_at(const Head& head, std::size_t place) {
  LabelNumbers run = numbers_run_at(head, place);
  if (run.end == 0) return run;
  const std::size_t at = pass_blanks(head, run.end);
  if (const Word* conjunction = phrase_at(head, at, head.conjunction)) {
    const LabelNumber last = label_number_at(head, pass_blanks(head, conjunction->end), NumberForm::digits);
    if (last.end != 0 && last.value == run.to + 1) run.to = last.value, run.end = last.end;
  }
  const bool closed = pass_closing(head, run.end, ":)") != run.end;
  const bool glued = !is_digit(head.line.text[run.end - 1]) ||
                     (run.end < head.line.text.size() && is_folded_letter(head.line.text[run.end]));
  run.word = true;
  return !glued && (closed || run.to >= run.from + 2) ? run : LabelNumbers{};
}

/// "4) 5)", "6) - 8)", "⑤⑥": a bracket closes each of two numbers; none if it is not so.
LabelNumbers closed_pair_at(const Head& head, std::size_t place) {
  const auto closed = [&](const LabelNumber& number) {
    if (number.end == 0 || number.ordinal || number.end >= head.line.text.size()) return false;
    const auto& from = head.line.from;
    const bool circled = mark_at(head, number.end) == '.' && from[number.end] == from[number.end + 1];
    return circled || mark_at(head, number.end) == ')';
  };
  const LabelNumber first = label_number_at(head, place, NumberForm::digits);
  if (!closed(first)) return {};
  const Link link = link_at(head, first.end + 1);
  const std::size_t next = link.end != 0 ? link.end : pass_blanks(head, first.end + 1);
  const LabelNumber second = label_number_at(head, next, NumberForm::digits);
  const bool ranges = link.end != 0 && (link.kind == Link::dash || link.kind == Link::word);
  if (!closed(second) || second.value <= first.value) return {};
  if (!ranges && second.value != first.value + 1) return {};
  LabelNumbers pair;
  pair.from = first.value;
  pair.to = second.value;
  pair.end = second.end;
  pair.word = true; // it is nothing else
  return pair;
}

} // namespace

LabelNumbers label_numbers_at(const Head& head, std::size_t place, NumberForm form) {
  const LabelNumber first = label_number_at(head, place, form);
  if (first.end == 0) return {};
  for (const char mark : {')', '-'})
    if (const LabelNumbers run = marked_run_at(head, place, mark); run.end != 0) return run;
  if (const LabelNumbers pair = closed_pair_at(head, place); pair.end != 0) return pair;
  if (const LabelNumbers run = spaced_run_at(head, place); run.end != 0) return run;
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
    const std::size_t at = pass_blanks(head, conjunction != nullptr ? conjunction->end : link.end);
    number = label_number_at(head, number_lead_at(head, at).end, NumberForm::digits);
  }
  return follow_on ? SpreadNumbers{} : spread;
}

} // namespace whorl::pattern
