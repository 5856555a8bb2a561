#include "pattern/rounds_told.hpp"

#include "pattern/limits.hpp"
#include "pattern/sentence.hpp"

namespace whorl::pattern {

namespace {

constexpr std::uint32_t least = 1, most = 99; ///< rounds that a line may be worked for

/// The word for round or row behind a number, and "more" before it; nullptr if it does not stand there.
const words::Word* round_word_behind(const Sentence& sentence, std::uint32_t at, bool& row) {
  at = skip_blanks(sentence.text(), at);
  const words::Concept more = words::find_concept(sentence.vocabulary, "more");
  if (const words::Word* word = word_meaning(sentence, at, more))
    at = skip_blanks(sentence.text(), word->end);
  const words::Word* rows = word_meaning(sentence, at, words::find_concept(sentence.vocabulary, "row"));
  row = rows != nullptr;
  return row ? rows : word_meaning(sentence, at, words::find_concept(sentence.vocabulary, "round"));
}

} // namespace

std::optional<Label> rounds_told(std::string_view text, std::uint32_t begin,
                                 const words::Vocabulary& vocabulary) {
  const Sentence sentence = look_up(text, begin, vocabulary);
  for (std::uint32_t at = 0; at < sentence.size(); ++at) {
    const words::Word* number = number_at(sentence, at);
    const bool inside = at > 0 && sentence.text()[at - 1] >= '0' && sentence.text()[at - 1] <= '9';
    if (number == nullptr || inside || number->number < least || number->number > most) continue;
    bool row = false;
    const words::Word* word = round_word_behind(sentence, number->end, row);
    if (word == nullptr) continue;
    Label label;
    label.to = static_cast<int>(number->number);
    label.relative = label.word = label.closed = true;
    label.kind = row ? RoundKind::row : RoundKind::round;
    label.span = sentence.span(at, word->end);
    label.work = begin;
    return label;
  }
  return std::nullopt;
}

} // namespace whorl::pattern
