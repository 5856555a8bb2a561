#include "pattern/edging.hpp"

#include "pattern/label_head.hpp"

namespace whorl::pattern {

std::optional<Label> edging_label(std::string_view text, std::uint32_t begin,
                                  const words::Vocabulary& vocabulary) {
  const Head head = head_of(text, begin, vocabulary);
  const std::size_t place = pass_blanks(head, 0);
  if (place >= head.line.text.size()) return std::nullopt;
  const words::Word* name = phrase_at(head, place, words::find_concept(vocabulary, "edging"));
  if (name == nullptr) return std::nullopt;
  const std::size_t behind = pass_closing(head, name->end, ":-");
  if (behind == name->end || is_end(head, behind)) return std::nullopt;
  Label label;
  label.word = label.closed = label.relative = true;
  label.to = 1;
  label.span = head.line.span(place, name->end);
  label.work = head.line.from[pass_blanks(head, behind)];
  return label;
}

std::optional<Label> unmarked_label(std::string_view text, std::uint32_t begin, int number,
                                    const words::Vocabulary& vocabulary) {
  const Head head = head_of(text, begin, vocabulary);
  const std::size_t place = pass_blanks(head, 0);
  LabelNumbers typed = label_numbers_at(head, place, NumberForm::digits);
  const bool range = typed.ranges() && !typed.comma && (typed.word || !typed.spaced); // "6 to 12", "6-12"
  if (const LabelNumber only = label_number_at(head, place, NumberForm::digits); !range)
    typed = {only.value, only.value, only.end, only.ordinal};
  if (typed.end == 0 || typed.ordinal || typed.from != number) return std::nullopt;
  const std::size_t behind = pass_blanks(head, typed.end);
  if (behind == typed.end || is_end(head, behind)) return std::nullopt;
  Label label;
  label.from = number;
  label.to = typed.to;
  label.unmarked = true;
  label.span = head.line.span(place, typed.end);
  label.work = head.line.from[behind];
  return label;
}

} // namespace whorl::pattern
