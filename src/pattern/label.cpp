#include "pattern/label.hpp"

#include "pattern/limits.hpp"
#include "words/lattice.hpp"

#include <algorithm>
#include <optional>

namespace whorl::pattern {

namespace {

using words::Concept;
using words::Word;
using words::WordKind;

constexpr std::size_t longest_label = 64;   ///< bytes of a line's head that are looked at
constexpr std::uint32_t longest_ending = 6; ///< bytes of the letters of an ordinal: "nd", "th", "ème"
constexpr int doubtful = 2;
constexpr int decimal_point = 3;

std::string_view head_of(std::string_view text) {
  std::size_t end = std::min(text.size(), longest_label);
  while (end < text.size() && end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0) == 0x80) --end;
  return text.substr(0, end);
}

/// The head of a line, its words, and the concepts that labels are made of.
struct Head {
  words::Folded line;
  words::Lattice lattice;
  Concept round, row, to, through, conjunction, next, last;
};

Head head_of(std::string_view text, std::uint32_t begin, const words::Vocabulary& vocabulary) {
  const auto find = [&](const char* name) { return words::find_concept(vocabulary, name); };
  Head head{words::fold(head_of(text), begin),
            {},
            find("round"),
            find("row"),
            find("to"),
            find("in"),
            find("and"),
            find("next"),
            find("last")};
  head.lattice = words::lattice(head.line, vocabulary);
  return head;
}

std::size_t pass_blanks(const Head& head, std::size_t place) {
  while (place < head.line.text.size() && head.line.text[place] == ' ') ++place;
  return place;
}

/// The first word at `place` of which `is_it` is true.
template <typename Test> const Word* find_word(const Head& head, std::size_t place, Test is_it) {
  if (place + 1 >= head.lattice.at.size()) return nullptr;
  const auto* first = head.lattice.words.data() + head.lattice.at[place];
  const auto* last = head.lattice.words.data() + head.lattice.at[place + 1];
  const auto* found = std::find_if(first, last, is_it);
  return found == last ? nullptr : found;
}

const Word* phrase_at(const Head& head, std::size_t place, Concept means) {
  if (means == words::no_concept) return nullptr;
  return find_word(head, place,
                   [=](const Word& w) { return w.kind == WordKind::phrase && w.means == means; });
}

bool is_digit(char c) { return c >= '0' && c <= '9'; }

const Word* number_at(const Head& head, std::size_t place) {
  if (place >= head.line.text.size() || !is_digit(head.line.text[place])) return nullptr;
  return find_word(head, place, [&](const Word& w) {
    return w.kind == WordKind::number && is_digit(head.line.text[w.end - 1]) && w.number <= limit::number;
  });
}

char mark_at(const Head& head, std::size_t place) {
  const Word* mark = find_word(head, place, [](const Word& w) { return w.kind == WordKind::mark; });
  return mark == nullptr ? '\0' : mark->mark;
}

/// The label as far as it is read, and where reading goes on.
struct Reached {
  Label label;
  std::size_t begin = 0;
  std::size_t end = 0; ///< of the label as typed
};

bool is_end(const Head& head, std::size_t place) { return pass_blanks(head, place) >= head.line.text.size(); }

/// `R` of "R3": one letter that is no word of the language, with a number behind it.
std::size_t pass_round_letter(const Head& head, std::size_t place) {
  if (place + 1 >= head.line.text.size()) return place;
  const Word* letter = find_word(head, place, [](const Word&) { return true; });
  if (letter == nullptr || letter->kind != WordKind::unknown || letter->end != place + 1) return place;
  const std::size_t number = pass_blanks(head, letter->end);
  return head.line.capital[place] && number_at(head, number) != nullptr ? letter->end : place;
}

std::size_t pass_round_word(const Head& head, std::size_t place, Label& label) {
  const Word* round = phrase_at(head, place, head.round);
  const Word* row = phrase_at(head, place, head.row);
  const Word* word = round != nullptr ? round : row;
  const std::size_t behind = word != nullptr ? word->end : pass_round_letter(head, place);
  label.word = label.word || behind != place;
  if (word != nullptr && word == row) label.kind = RoundKind::row;
  return behind;
}

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

/// Passes the mark that closes a label; ":-" and ".)" are one.
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

constexpr std::string_view closing_marks = ":.)->=]";
constexpr std::string_view closing_marks_of_numbers = ":.)->]";

bool close(const Head& head, Reached& reached, std::size_t place, std::string_view marks) {
  const std::size_t behind = pass_closing(head, place, marks);
  reached.label.closed = behind != place || (reached.label.word && is_end(head, place));
  reached.label.span = head.line.span(reached.begin, reached.end);
  reached.label.work = head.line.from[pass_blanks(head, behind)];
  return reached.label.closed;
}

/// What stands between the two numbers of a range.
struct Between {
  std::size_t end = 0; ///< where the second number may begin; 0: nothing stands there
  bool dash = false;
  bool through = false; ///< a word that stands in work as well: only a mark behind the range makes it sure
  bool spaced = false;
};

Between between_numbers(const Head& head, std::size_t place) {
  const std::size_t at = pass_blanks(head, place);
  Between between;
  between.spaced = at != place;
  const char mark = at < head.line.text.size() ? mark_at(head, at) : '\0';
  between.dash = mark == '-';
  if (mark == '-' || mark == '&') between.end = at + 1;
  for (const Concept means : {head.to, head.through, head.conjunction})
    if (const Word* word = phrase_at(head, at, means)) between.end = word->end;
  between.through = phrase_at(head, at, head.to) == nullptr && phrase_at(head, at, head.through) != nullptr;
  between.end = between.end == 0 ? 0 : pass_blanks(head, between.end);
  return between;
}

/// The second number of a range, and whether the word for round stands before it again.
struct Second {
  const Word* number = nullptr;
  bool word = false;
};

Second second_number(const Head& head, std::size_t place) {
  Label ignored;
  const std::size_t behind = pass_round_word(head, place, ignored);
  return {number_at(head, pass_blanks(head, behind)), behind != place};
}

/// Whether a range cannot be anything else: "6 to 10", "R12 – R15", "6-10:".
bool is_surely_range(const Head& head, const Between& between, const Second& second, bool has_word) {
  const std::size_t behind = second.number->end;
  if (pass_closing(head, behind, ":.)") != behind || is_end(head, behind)) return true;
  return has_word && ((!between.dash && !between.through) || second.word);
}

/// Adds the readings of a number at `place`: alone, and as the first of a range.
void add_numbers(const Head& head, std::size_t begin, std::size_t place, const Label& so_far,
                 std::vector<Label>& labels) {
  const Word* first = number_at(head, place);
  if (first == nullptr) return;
  const std::string_view marks = so_far.word ? closing_marks : closing_marks_of_numbers;
  Reached alone{so_far, begin, first->end};
  alone.label.from = alone.label.to = static_cast<int>(first->number);
  alone.label.again = letter_behind(head, first->end);
  if (alone.label.again > 0) ++alone.end;
  const bool closed = close(head, alone, alone.end, marks);

  const Between between = between_numbers(head, first->end);
  const Second second = between.end == 0 ? Second{} : second_number(head, between.end);
  const bool ranges = second.number != nullptr && second.number->number > first->number;
  const bool surely = ranges && is_surely_range(head, between, second, so_far.word);
  if (!surely && (closed || so_far.word)) labels.push_back(alone.label);
  if (!ranges || (!between.dash && !surely)) return;
  Reached range{so_far, begin, second.number->end};
  range.label.from = static_cast<int>(first->number);
  range.label.to = static_cast<int>(second.number->number);
  close(head, range, range.end, marks);
  if (!surely && between.spaced) range.label.cost = doubtful;
  if (!surely && !between.spaced && !labels.empty()) labels.back().cost = doubtful;
  labels.push_back(range.label);
}

/// "3.5 mm hook" begins with no label, "11.40 sc" may.
void doubt_decimal_point(const Head& head, std::vector<Label>& labels, std::size_t number_end) {
  const std::string_view text = head.line.text;
  const bool decimal =
      number_end + 1 < text.size() && text[number_end] == '.' && is_digit(text[number_end + 1]);
  if (decimal)
    for (Label& label : labels) label.cost += decimal_point;
}

std::size_t letters_behind(const Head& head, std::size_t place) {
  std::size_t end = place;
  const auto is_letter = [](char c) {
    return (c >= 'a' && c <= 'z') || static_cast<unsigned char>(c) >= 0x80;
  };
  while (end < head.line.text.size() && is_letter(head.line.text[end])) ++end;
  return end - place <= longest_ending ? end : place;
}

/// "2nd Round -", "3rd rnd:", "12 row:", "5-8 rows:".
std::vector<Label> number_before_word(const Head& head, std::size_t begin) {
  const Word* number = number_at(head, begin);
  if (number == nullptr) return {};
  const Between between = between_numbers(head, number->end);
  const Word* last = between.dash ? number_at(head, between.end) : nullptr;
  const bool ranges = last != nullptr && last->number > number->number;
  const std::size_t ending = letters_behind(head, ranges ? last->end : number->end);
  Reached reached;
  reached.begin = begin;
  const std::size_t word = pass_blanks(head, ending);
  reached.end = pass_round_word(head, word, reached.label);
  if (reached.end == word) return {};
  reached.label.from = static_cast<int>(number->number);
  reached.label.to = static_cast<int>(ranges ? last->number : number->number);
  const bool closed = close(head, reached, reached.end, closing_marks);
  const bool ordinal = ending != (ranges ? last->end : number->end);
  return closed || ordinal ? std::vector<Label>{reached.label} : std::vector<Label>{};
}

/// "Next 3 rounds:", "Next rnd:", "Last row:".
std::vector<Label> relative_label(const Head& head, std::size_t begin) {
  const Word* next = phrase_at(head, begin, head.next);
  if (next == nullptr) next = phrase_at(head, begin, head.last);
  if (next == nullptr) return {};
  Reached reached;
  reached.begin = begin;
  const std::size_t behind = pass_blanks(head, next->end);
  const Word* number = number_at(head, behind);
  const std::size_t word = number == nullptr ? behind : pass_blanks(head, number->end);
  reached.end = pass_round_word(head, word, reached.label);
  if (reached.end == word) return {};
  reached.label.relative = true;
  reached.label.to = number == nullptr ? 1 : static_cast<int>(number->number);
  close(head, reached, reached.end, closing_marks);
  return {reached.label};
}

/// "Rnd 3:", "R6-10", "Round #4".
std::vector<Label> word_before_number(const Head& head, std::size_t begin) {
  std::vector<Label> labels;
  Label label;
  std::size_t place = pass_blanks(head, pass_round_word(head, begin, label));
  if (place < head.line.text.size() && label.word && mark_at(head, place) == '.')
    place = pass_blanks(head, place + 1);
  if (place < head.line.text.size() && mark_at(head, place) == '#') place = pass_blanks(head, place + 1);
  if (label.word) add_numbers(head, begin, place, label, labels);
  return labels;
}

/// "3.", "3)", "6-10:", "#4".
std::vector<Label> number_alone(const Head& head, std::size_t begin) {
  std::vector<Label> labels;
  const bool sharp = begin < head.line.text.size() && mark_at(head, begin) == '#';
  const std::size_t place = sharp ? begin + 1 : begin;
  const Word* number = number_at(head, place);
  if (number == nullptr) return labels;
  add_numbers(head, begin, place, {}, labels);
  doubt_decimal_point(head, labels, number->end);
  return labels;
}

std::vector<Label> labels_with_word(const Head& head, std::size_t begin) {
  std::vector<Label> labels = word_before_number(head, begin);
  if (labels.empty()) labels = number_before_word(head, begin);
  if (labels.empty()) labels = relative_label(head, begin);
  return labels;
}

/// "4. Round 3: …": the number is that of a list and says nothing.
std::vector<Label> behind_list_number(const Head& head, const std::vector<Label>& labels) {
  if (labels.empty() || !labels.front().closed) return {};
  const auto work = labels.front().work;
  const auto place =
      std::lower_bound(head.line.from.begin(), head.line.from.end(), work) - head.line.from.begin();
  return labels_with_word(head, static_cast<std::size_t>(place));
}

} // namespace

std::vector<Label> read_labels(std::string_view text, std::uint32_t begin,
                               const words::Vocabulary& vocabulary) {
  const Head head = head_of(text, begin, vocabulary);
  std::vector<Label> labels = labels_with_word(head, pass_blanks(head, 0));
  if (labels.empty()) {
    labels = number_alone(head, pass_blanks(head, 0));
    std::vector<Label> behind = behind_list_number(head, labels);
    if (!behind.empty()) labels = std::move(behind);
  }
  std::stable_sort(labels.begin(), labels.end(),
                   [](const Label& a, const Label& b) { return a.cost < b.cost; });
  return labels;
}

Label no_label(Span work) {
  Label label;
  label.relative = true;
  label.to = 1;
  label.span = {work.begin, work.begin};
  label.work = work.begin;
  return label;
}

} // namespace whorl::pattern
