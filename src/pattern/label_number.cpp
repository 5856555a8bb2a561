#include "pattern/label_number.hpp"

#include "pattern/costs.hpp"
#include "pattern/label_brackets.hpp"
#include "pattern/text_words.hpp"
#include "words/ascii.hpp"

#include <algorithm>

namespace whorl::pattern {

using words::is_digit;
using words::is_folded_letter;

std::size_t place_of(const Head& head, std::uint32_t byte) {
  const auto& from = head.line.from;
  return static_cast<std::size_t>(std::lower_bound(from.begin(), from.end(), byte) - from.begin());
}

namespace {

using words::Word;
using words::WordKind;

/// The label as far as it is read, and where reading goes on.
struct Reached {
  Label label;
  std::size_t begin = 0;
  std::size_t end = 0; ///< of the label as typed
};

/// "b" of `41b`; 0 where no single letter is glued to the number.
int letter_behind(const Head& head, std::size_t place) {
  if (place >= head.line.text.size()) return 0;
  const char letter = head.line.text[place];
  if (letter < 'b' || letter > 'f') return 0;
  const std::size_t behind = place + 1;
  const bool ends = behind == head.line.text.size() ||
                    std::string_view(" .:)-").find(head.line.text[behind]) != std::string_view::npos;
  return ends ? letter - 'a' : 0;
}

/// The count in brackets at `place`, which stands before the work; where reading goes on.
std::size_t take_count_in_brackets(const Head& head, std::size_t place, Label& label) {
  const std::size_t at = pass_blanks(head, place);
  const std::size_t end = pass_brackets(head, at);
  if (end != at && label.to > label.from && holds_rounds(head, at, end, label.to - label.from + 1))
    return end; // "6-11 (6 rounds)"
  if (end == at || !holds_count(head, at, end) || is_repeated(head, end) || is_end(head, end)) return place;
  label.count = head.line.span(at, end);
  return end;
}

std::size_t place_of_unit(const Head& head, std::size_t at) {
  while (at < head.line.text.size() && is_digit(head.line.text[at])) ++at;
  return at;
}

bool is_work_of(const Head& head, const Word& word) {
  const words::ConceptClass sort = head.vocabulary.concepts[word.means].sort;
  return sort == words::ConceptClass::stitch || sort == words::ConceptClass::decrease ||
         head.vocabulary.concepts[word.means].name == "increase";
}

/// "6 sts - MR 6": the count before the work, set off by a dash or a colon.
std::size_t take_count_before_dash(const Head& head, std::size_t place, Label& label) {
  const std::size_t at = pass_blanks(head, place);
  const std::size_t end = pass_count(head, at);
  if (end == at) return place;
  const std::size_t mark = pass_blanks(head, end);
  const std::size_t behind = pass_closing(head, end, "-:=>");
  const std::size_t first = pass_blanks(head, behind);
  const bool works = find_word(head, pass_blanks(head, place_of_unit(head, at)), [&](const Word& w) {
                       return w.kind == WordKind::phrase && is_work_of(head, w);
                     }) != nullptr;
  if (works && head.line.text[mark] == '=' && first < head.line.text.size() &&
      is_digit(head.line.text[first]))
    return place; // "6П = 12": what stands before is the work
  const bool set_off = behind != end && (mark != end || head.line.text[mark] == ':') && !is_end(head, behind);
  if (!set_off) return place;
  label.count = head.line.span(at, end);
  return behind;
}

/// Brackets between number and mark: a count, the loops of the round, an aside ("(WS)", "(brown)").
std::size_t take_brackets(const Head& head, std::size_t place, std::string_view marks, Label& label) {
  const std::size_t counted = take_count_in_brackets(head, place, label);
  if (counted != place) return counted;
  const std::size_t at = pass_blanks(head, place);
  const std::size_t end = pass_brackets(head, at);
  if (end == at) return place;
  const std::size_t behind = pass_closing(head, end, marks);
  const bool loops = holds_loops(head, at, end);
  if (behind == end && !is_end(head, end) && !(loops && !is_repeated(head, end))) return place;
  label.aside = head.line.span(at, end);
  label.loops_aside = loops;
  return end;
}

bool close(const Head& head, Reached& reached, std::size_t place, std::string_view marks) {
  Label& label = reached.label;
  const std::size_t bracket = label.word || label.ordinal ? take_brackets(head, place, marks, label)
                                                          : take_count_in_brackets(head, place, label);
  std::size_t behind = pass_closing(head, bracket, marks);
  label.closed = behind != place || (label.word && is_end(head, place));
  if (label.closed && label.count.empty()) behind = take_count_before_dash(head, behind, label);
  if (label.closed && label.count.empty()) behind = take_count_in_brackets(head, behind, label);
  label.span = head.line.span(reached.begin, reached.end);
  label.work = head.line.from[pass_blanks(head, behind)];
  if (label.loops_aside) label.work = label.aside.begin + 1;
  return label.closed;
}

/// Whether a range cannot be anything else: "6 to 10", "R12 – R15", "6-10:".
bool is_surely_range(const Head& head, const LabelNumbers& numbers, bool has_word) {
  const std::size_t end = pass_brackets(head, pass_blanks(head, numbers.end));
  const bool counts = end != pass_blanks(head, numbers.end);
  if (counts && is_end(head, end) && numbers.dash && numbers.spaced && !numbers.again) return false;
  const bool listed = has_word && numbers.comma && !numbers.dash;
  const std::string_view marks = numbers.word || listed ? ":.)>-/" : ":.)>";
  if (pass_closing(head, end, marks) != end || is_end(head, end)) return true;
  const bool three = numbers.comma && numbers.to >= numbers.from + 2; // "r6,7,8 just sc"
  return has_word && (numbers.word || numbers.again || three);
}

/// "of 4" in "Rnd 1 of 4:"; `place` if that does not stand there.
std::size_t pass_total(const Head& head, std::size_t place) {
  const std::string_view text = head.line.text;
  std::size_t end = place;
  for (const std::string_view words : {" of ", "/"})
    if (end == place && place < text.size() && text.substr(place, words.size()) == words)
      end = place + words.size();
  const std::size_t digits = end;
  while (end < text.size() && is_digit(text[end])) ++end;
  return end != digits && pass_closing(head, end, ":") != end ? end : place;
}

/// The a of "Round 3a:", whose b follows: it tells nothing more.
bool is_first_letter(const Head& head, std::size_t place) {
  const std::string_view text = head.line.text;
  return place < text.size() && text[place] == 'a' && pass_closing(head, place + 1, ":.)") != place + 1 &&
         text[place + 1] != ' ';
}

void take_letter(const Head& head, Reached& reached) {
  if (is_first_letter(head, reached.end)) {
    ++reached.end;
    return;
  }
  reached.label.again = letter_behind(head, reached.end);
  if (reached.label.again > 0) ++reached.end;
}

/// Behind what leads to words that leave the end open: the dash of "6-end", the "to" of "6 to the end".
std::size_t pass_open_link(const Head& head, std::size_t place) {
  const std::size_t at = pass_blanks(head, place);
  if (at >= head.line.text.size()) return place;
  if (mark_at(head, at) == '-') return pass_blanks(head, at + 1);
  const Word* to = phrase_at(head, at, head.to);
  return to == nullptr ? place : pass_blanks(head, to->end);
}

/// Passes "-end", "and onward", "+", "-?", which a mark closes; `place` if they do not stand there.
std::size_t pass_open_end(const Head& head, std::size_t place, std::string_view marks) {
  const std::string_view text = head.line.text;
  if (place >= text.size()) return place;
  const std::size_t linked = pass_open_link(head, place);
  std::size_t end = place;
  if (text[place] == '+') end = place + 1;
  if (linked != place && linked < text.size() && text[linked] == '?') end = linked + 1;
  for (const std::size_t at : {linked, pass_blanks(head, place)})
    if (end == place)
      if (const std::size_t told = end_of_text_word(head.vocabulary, text, at, TextWord::open_end);
          told != at && (linked == at || told > at + 1))
        end = told;
  return end != place && pass_closing(head, end, marks) != end ? end : place;
}

/// "Rnds 3, 5 and 7:", numbers that do not follow on.
bool add_spread_numbers(const Head& head, std::size_t begin, std::size_t place, const Label& so_far,
                        std::vector<Label>& labels) {
  const SpreadNumbers spread = spread_numbers_at(head, place);
  if (spread.end == 0) return false;
  Reached reached{so_far, begin, spread.end};
  reached.label.from = reached.label.to = spread.numbers.front();
  reached.label.spread = spread.numbers;
  if (!close(head, reached, reached.end, closing_marks)) return false;
  labels.push_back(reached.label);
  return true;
}

/// Passes what may stand behind a range and its word for round: "inclusive", まで, "kadar".
std::size_t pass_range_end(const Head& head, std::size_t place) {
  const std::size_t at = pass_blanks(head, place);
  const std::size_t end = end_of_text_word(head.vocabulary, head.line.text, at, TextWord::range_end);
  return end != at ? end : pass_inclusive(head, place);
}

/// "3- 6 sc": the dash is glued to the first number, the second stands apart.
bool stands_apart(const Head& head, std::size_t first_end) {
  return head.line.text.substr(std::min(first_end, head.line.text.size()), 2) == "- ";
}

/// Adds the readings of the numbers at `place`: the first alone, and all together.
void add_numbers(const Head& head, std::size_t begin, std::size_t place, const Label& so_far,
                 std::vector<Label>& labels) {
  const NumberForm form = so_far.word ? NumberForm::any : NumberForm::digits;
  const LabelNumber first = label_number_at(head, place, form);
  if (first.end == 0) return;
  const bool wide = !head.vocabulary.blanks_between_words; // "1、环起6针"
  const std::string_view marks = so_far.word ? closing_marks
                                 : wide      ? closing_marks_of_wide_numbers
                                             : closing_marks_of_numbers;
  Reached alone{so_far, begin, first.end};
  alone.label.from = alone.label.to = first.value;
  take_letter(head, alone);
  if (so_far.word) alone.end = pass_total(head, alone.end);
  if (so_far.word && add_spread_numbers(head, begin, place, so_far, labels)) return;
  if (const std::size_t end = pass_open_end(head, alone.end, marks); end != alone.end) {
    alone.label.open_end = true;
    alone.end = end;
  }
  const bool closed = close(head, alone, alone.end, marks);

  if (alone.label.open_end) return labels.push_back(alone.label);
  const LabelNumbers numbers = label_numbers_at(head, place, form);
  const std::size_t told_end = numbers.ranges() ? pass_range_end(head, numbers.end) : numbers.end;
  const bool told = told_end != numbers.end; // "3'ten 8'e kadar"
  const bool surely = numbers.ranges() && (told || is_surely_range(head, numbers, so_far.word));
  if (!surely && (closed || so_far.word)) labels.push_back(alone.label);
  if (!numbers.ranges() || !(numbers.dash || surely) || (numbers.comma && !surely)) return;
  Reached range{so_far, begin, told_end};
  range.label.from = numbers.from;
  range.label.to = numbers.to;
  const bool range_closed = close(head, range, range.end, marks) || told;
  range.label.closed = range_closed;
  if (!so_far.word && !range_closed && !numbers.dash) return;
  const bool spaced = numbers.spaced || stands_apart(head, first.end);
  if (!surely && spaced) range.label.cost = cost::doubtful;
  if (!surely && !spaced && !labels.empty()) labels.back().cost = cost::doubtful;
  labels.push_back(range.label);
}

/// "3.5 mm hook" begins with no label, "11.40 sc" may; the stop of "③5" was not typed.
void doubt_decimal_point(const Head& head, std::vector<Label>& labels, std::size_t number_end) {
  const std::string_view text = head.line.text;
  const std::size_t behind = number_end + 1;
  const bool decimal = behind < text.size() && text[number_end] == '.' && is_digit(text[behind]) &&
                       head.line.from[number_end] != head.line.from[behind];
  if (decimal)
    for (Label& label : labels) label.cost += cost::decimal_point;
}

/// The "a" of "9 a row", as translations have it.
std::size_t pass_article(const Head& head, std::size_t place) {
  const std::string_view text = head.line.text;
  return place + 1 < text.size() && text[place] == 'a' && text[place + 1] == ' '
             ? pass_blanks(head, place + 1)
             : place;
}

/// Letters of another alphabet glued to a number, which a mark closes: the р of "13р:", but no "6сбн =6".
bool is_foreign_word(const Head& head, std::size_t begin, const LabelNumbers& numbers) {
  if (!is_digit(head.line.text[begin])) return false; // 头, "first", is no number with letters behind
  std::size_t letters = numbers.end;
  while (letters > 0 && is_folded_letter(head.line.text[letters - 1])) --letters;
  return !works_at(head, letters) && numbers.ordinal &&
         static_cast<unsigned char>(head.line.text[numbers.end - 1]) >= 0x80 &&
         pass_closing(head, numbers.end, closing_marks) != numbers.end;
}

/// The Latin p that is typed for the р of "13р:", a mark behind it; `place` if it is not there.
std::size_t pass_latin_letter(const Head& head, std::size_t place) {
  const std::string_view text = head.line.text;
  if (place >= text.size() || text[place] != 'p') return place;
  return pass_closing(head, place + 1, closing_marks_of_numbers) != place + 1 ? place + 1 : place;
}

/// Whether rounds behind `place` are only named, as what stands between them is told: "5段目と6段目の間に".
bool only_names_rounds(const Head& head, std::size_t place) {
  const std::size_t at = pass_blanks(head, place);
  return phrase_at(head, at, head.between) != nullptr &&
         end_of_text_word(head.vocabulary, head.line.text, at, TextWord::range_end) == at;
}

/// Whether a number and a word for round tell how many rounds: "5 rounds".
bool counts_rounds(const Head& head, std::size_t word, std::size_t end) {
  return is_text_word(head.vocabulary, head.line.text.substr(word, end - word), TextWord::rounds_counted);
}

/// The numbers before a word for round, in whatever form they stand.
LabelNumbers numbers_before_word(const Head& head, std::size_t place) {
  if (LabelNumbers run = numbers_run_at(head, place); run.end != 0) {
    const std::size_t mark = pass_ordinal_mark(head, run.end);
    run.ordinal = mark != run.end;
    run.end = mark;
    if (is_round_word(head, pass_blanks(head, mark))) return run; // "6.7.8.9. sira"
  }
  const bool roman = is_roman(head, place) && phrase_at(head, place, head.round) == nullptr;
  LabelNumbers numbers =
      roman ? LabelNumbers{} : label_numbers_at(head, place, NumberForm::scanned); // "II giro" is no 11
  if (numbers.end == 0) {
    numbers = label_numbers_at(head, place, NumberForm::any);
    numbers.ordinal = numbers.end != 0;
  }
  if (numbers.end == 0) return numbers;
  if (const std::size_t end = pass_ordinal_mark(head, numbers.end); end != numbers.end) {
    numbers.end = end;
    numbers.ordinal = true;
  }
  return numbers;
}

/// Whether nothing but the count stands behind `place`: " (12)", " = 12".
bool only_counts(const Head& head, std::size_t place) {
  const std::size_t at = pass_blanks(head, place);
  if (const std::size_t end = pass_brackets(head, at); end != at) return is_end(head, end);
  if (at >= head.line.text.size() || mark_at(head, at) != '=') return false;
  const LabelNumber count = label_number_at(head, pass_blanks(head, at + 1), NumberForm::digits);
  return count.end != 0 && is_end(head, count.end);
}

/// "I omgang 2 hækler vi …": a small word that looks like a Roman one, the number behind the word for round.
bool only_leads(const Head& head, std::size_t begin, std::size_t behind) {
  if (!is_roman(head, begin)) return false;
  if (end_of_text_word(head.vocabulary, head.line.text, begin, TextWord::told_lead) == begin) return false;
  const LabelNumber number = label_number_at(head, pass_blanks(head, behind), NumberForm::digits);
  return number.end != 0 && !works_at(head, pass_blanks(head, number.end));
}

/// "2nd Round -", "3rd rnd:", "12 row:", "5-8 rows:", "4th and 5th rounds:", "9 a row:", "13р:", "13p:",
/// "第6圈至第8圈", "8段目から14段目まで".
std::vector<Label> number_before_word(const Head& head, std::size_t begin) {
  const LabelNumbers numbers = numbers_before_word(head, pass_ordinal_lead(head, begin));
  if (numbers.end == 0) return {};
  Reached reached;
  reached.begin = begin;
  bool row = false;
  const std::size_t word = pass_article(head, pass_blanks(head, numbers.end));
  reached.end = pass_round_word(head, word, row);
  const std::size_t letter = pass_latin_letter(head, numbers.end);
  const bool foreign =
      reached.end == word && (is_foreign_word(head, begin, numbers) || letter != numbers.end);
  if (foreign) reached.end = letter;
  if ((reached.end == word && !foreign) || only_leads(head, begin, reached.end)) return {};
  const bool counts = !numbers.ranges() && counts_rounds(head, word, reached.end);
  if (numbers.ranges()) reached.end = pass_range_end(head, reached.end);
  if (only_names_rounds(head, reached.end)) return {};
  Label& label = reached.label;
  if (row) label.kind = RoundKind::row;
  label.word = true;
  label.ordinal = numbers.ordinal;
  label.from = numbers.from;
  label.to = numbers.to;
  const bool glued = !head.vocabulary.blanks_between_words;
  const bool closed = close(head, reached, reached.end, closing_marks);
  label.unclosed = !closed;
  label.closed = closed || glued;
  label.loose = !label.closed && !label.ordinal;
  if (label.loose && (counts || is_end(head, reached.end))) return {};
  const bool only = label.loose || only_counts(head, reached.end);
  if (only && word == numbers.end && works_at(head, word)) return {}; // "6V (12)", where V is an increase
  return {label};
}

/// "Rang suivant.", "Vuelta siguiente:": the word for round before that for "next", a mark behind them.
std::vector<Label> round_then_next(const Head& head, std::size_t begin) {
  bool row = false;
  const std::size_t word = pass_round_word(head, begin, row);
  const Word* next = word == begin ? nullptr : phrase_at(head, pass_blanks(head, word), head.next);
  if (next == nullptr) return {};
  Reached reached{{}, begin, next->end};
  if (row) reached.label.kind = RoundKind::row;
  reached.label.word = true;
  reached.label.relative = true;
  reached.label.to = 1;
  if (!close(head, reached, reached.end, closing_marks)) return {};
  return {reached.label};
}

/// "Next 3 rounds:", "Next rnd:", "Last row:".
std::vector<Label> relative_label(const Head& head, std::size_t begin) {
  const Word* next = phrase_at(head, begin, head.next);
  if (next == nullptr) next = phrase_at(head, begin, head.last);
  if (next == nullptr) return round_then_next(head, begin);
  Reached reached;
  reached.begin = begin;
  const std::size_t behind = pass_blanks(head, next->end);
  const LabelNumber number = label_number_at(head, behind, NumberForm::any);
  const std::size_t word = number.end == 0 ? behind : pass_blanks(head, number.end);
  bool row = false;
  reached.end = pass_round_word(head, word, row);
  if (reached.end == word) return {};
  if (row) reached.label.kind = RoundKind::row;
  reached.label.word = true;
  reached.label.relative = true;
  reached.label.to = number.end == 0 ? 1 : number.value;
  close(head, reached, reached.end, closing_marks);
  return {reached.label};
}

/// "Rnd 3:", "R6-10", "Round #4", "Round one =".
std::vector<Label> word_before_number(const Head& head, std::size_t begin) {
  std::vector<Label> labels;
  const NumberLead lead = number_lead_at(head, begin);
  if (!lead.word) return labels;
  Label label;
  label.word = true;
  if (lead.row) label.kind = RoundKind::row;
  add_numbers(head, begin, lead.end, label, labels);
  return labels;
}

} // namespace

std::vector<Label> number_alone(const Head& head, std::size_t begin) {
  std::vector<Label> labels;
  const bool sharp = begin < head.line.text.size() && mark_at(head, begin) == '#';
  const std::size_t place = sharp ? begin + 1 : begin;
  const LabelNumber number = label_number_at(head, place, NumberForm::digits);
  if (number.end == 0 || number.ordinal) return labels;
  add_numbers(head, begin, place, {}, labels);
  doubt_decimal_point(head, labels, number.end);
  return labels;
}

std::vector<Label> labels_with_word(const Head& head, std::size_t begin) {
  std::vector<Label> labels = word_before_number(head, begin);
  if (labels.empty()) labels = number_before_word(head, begin);
  if (labels.empty()) labels = relative_label(head, begin);
  return labels;
}

} // namespace whorl::pattern
