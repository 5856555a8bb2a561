#include "pattern/label_brackets.hpp"
#include "pattern/label_number.hpp"
#include "pattern/text_words.hpp"

#include "words/ascii.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

using words::Word;

/// "(12) R2: inc x 6": the count stands in front of the label.
std::vector<Label> behind_count(const Head& head, std::size_t begin) {
  const std::size_t end = pass_brackets(head, begin);
  if (end == begin || !holds_count(head, begin, end)) return {};
  std::vector<Label> labels = labels_with_word(head, pass_blanks(head, end));
  const auto is_open = [](const Label& label) { return !label.closed || label.relative; };
  labels.erase(std::remove_if(labels.begin(), labels.end(), is_open), labels.end());
  for (Label& label : labels)
    if (label.count.empty()) label.count = head.line.span(begin, end);
  return labels;
}

/// "For Rounds 10 to 12:", "The 3rd round:": behind a word or two that lead in, where a colon closes it.
std::vector<Label> behind_lead(const Head& head, std::size_t begin) {
  const std::string_view text = head.line.text;
  std::size_t place = begin;
  bool told = false;
  for (;;) {
    const std::size_t lead = end_of_text_word(head.vocabulary, text, place, TextWord::label_lead);
    const std::size_t behind = end_of_text_word(head.vocabulary, text, place, TextWord::told_lead);
    if (lead == place && behind == place) break;
    told = behind != place;
    place = pass_blanks(head, std::max(lead, behind));
  }
  if (place == begin) return {};
  std::vector<Label> labels = labels_with_word(head, place);
  const auto is_open = [&](const Label& label) {
    const bool range = label.to > label.from && !label.relative;           // "Dal giro 3 al 14) …"
    if ((told || range) && label.ordinal && !label.relative) return false; // "In der dritten Runde wird …"
    if (told && label.word && !label.relative) return false;               // "På varv 3 virkas …"
    if (label.loose) return !told && !range;
    const std::size_t at = pass_blanks(head, place_of(head, label.span.end));
    return !label.closed || at >= text.size() || (text[at] != ':' && !range);
  };
  labels.erase(std::remove_if(labels.begin(), labels.end(), is_open), labels.end());
  return labels;
}

/// "4. Round 3: …", "Step 4 - Round 3: …": the first number is that of a list and says nothing.
std::vector<Label> behind_list_number(const Head& head, std::size_t begin) {
  const Word* step = phrase_at(head, begin, head.step);
  const std::size_t place = step == nullptr ? begin : pass_blanks(head, step->end);
  const LabelNumber number = label_number_at(head, place, NumberForm::digits);
  const std::size_t behind = number.end == 0 ? 0 : pass_closing(head, number.end, closing_marks_of_numbers);
  if (number.end == 0 || behind == number.end) return {};
  std::vector<Label> labels = labels_with_word(head, pass_blanks(head, behind));
  for (Label& label : labels) label.listed = number.value;
  return labels;
}

/// The numbers alone that stand in brackets: "4", "4-6".
std::vector<Label> numbers_in_brackets(const Head& head, std::size_t place) {
  const LabelNumbers numbers = label_numbers_at(head, place, NumberForm::digits);
  if (numbers.end == 0 || numbers.ordinal || numbers.comma) return {};
  Label label;
  label.from = numbers.from;
  label.to = numbers.to;
  label.span = head.line.span(place, numbers.end);
  return {label};
}

/// "[Rnd 1] …", "(2) …", "{R3} …", "*Rnd 1* …" as phones set bold: the label, which the bracket closes and
/// work follows; else none.
std::vector<Label> label_in_brackets(const Head& head, std::size_t place) {
  constexpr std::string_view opening = "([{*_", closing = ")]}*_";
  const std::string_view text = head.line.text;
  const std::size_t bracket = place < text.size() ? opening.find(text[place]) : opening.npos;
  if (bracket == opening.npos) return {};
  const std::size_t inner = pass_blanks(head, place + 1);
  std::vector<Label> labels = labels_with_word(head, inner);
  if (labels.empty() && bracket < 3) labels = numbers_in_brackets(head, inner);
  const auto is_other = [&](Label& label) {
    const std::uint32_t last = label.aside.empty() ? label.span.end : label.aside.end;
    std::size_t at = pass_blanks(head, place_of(head, last));
    const bool bold = text[place] == '*' || text[place] == '_';
    if (bold && at < text.size() && text[at] == ':') ++at; // "*Rnd 1:* …"
    if (at >= text.size() || text[at] != closing[bracket] || label.relative) return true;
    const std::size_t behind = pass_closing(head, at + 1, closing_marks);
    label.closed = true;
    label.work = head.line.from[pass_blanks(head, behind)];
    return is_end(head, behind) || (!bold && behind == at + 1 && is_repeated(head, at + 1));
  };
  labels.erase(std::remove_if(labels.begin(), labels.end(), is_other), labels.end());
  return labels;
}

/// "S n a i l   s h e l l": a title whose letters stand apart, four or more of them, not all such as a
/// scanner takes figures for, or small words.
bool is_spaced_out(std::string_view folded) {
  constexpr std::size_t fewest = 4, fewest_others = 2;
  std::size_t letters = 0, others = 0;
  for (std::size_t at = folded.find_first_not_of(' '); at < folded.size() && words::is_small(folded[at]);
       at = folded.find_first_not_of(' ', at + 1)) {
    if (at + 1 < folded.size() && folded[at + 1] != ' ') break;
    ++letters;
    others += std::string_view("losaeiy").find(folded[at]) == std::string_view::npos ? 1 : 0;
  }
  return letters >= fewest && others >= fewest_others;
}

/// Takes out the loose labels, or all others.
void keep(std::vector<Label>& labels, bool loose) {
  labels.erase(std::remove_if(labels.begin(), labels.end(),
                              [loose](const Label& label) { return label.loose != loose; }),
               labels.end());
}

} // namespace

std::vector<Label> read_labels(std::string_view text, std::uint32_t begin,
                               const words::Vocabulary& vocabulary) {
  const Head head = head_of(text, begin, vocabulary);
  if (is_spaced_out(head.line.text)) return {};
  const std::size_t place = pass_blanks(head, 0);
  std::vector<Label> labels = labels_with_word(head, place);
  keep(labels, false);
  for (const auto way : {behind_count, label_in_brackets, behind_list_number, behind_lead, number_alone}) {
    if (!labels.empty()) break;
    labels = way(head, place);
    keep(labels, false);
  }
  std::stable_sort(labels.begin(), labels.end(),
                   [](const Label& a, const Label& b) { return a.cost < b.cost; });
  return labels;
}

std::vector<Label> read_loose_labels(std::string_view text, std::uint32_t begin,
                                     const words::Vocabulary& vocabulary) {
  const Head head = head_of(text, begin, vocabulary);
  const std::size_t place = pass_blanks(head, 0);
  std::vector<Label> labels = labels_with_word(head, place);
  if (labels.empty()) labels = behind_lead(head, place);
  keep(labels, true);
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
