#include "pattern/placing_rounds.hpp"

#include <algorithm>

namespace whorl::pattern {

using words::ConceptClass;
using words::Word;

bool means(const Sentence& sentence, std::uint32_t at, std::string_view name) {
  return word_meaning(sentence, at, words::find_concept(sentence.vocabulary, name)) != nullptr;
}

const Word* ordinal_mark_at(const Sentence& sentence, std::uint32_t at) {
  return word_meaning(sentence, at, words::find_concept(sentence.vocabulary, "ordinal"));
}

bool is_round_word(const Sentence& sentence, std::uint32_t at) {
  return means(sentence, at, "round") || means(sentence, at, "row");
}

namespace {

/// Whether "between" stands right before a place, but for small words.
bool names_between(const Sentence& sentence, std::uint32_t begin, std::uint32_t place) {
  for (std::uint32_t at = begin; at < place; ++at) {
    const Word* word = word_meaning(sentence, at, words::find_concept(sentence.vocabulary, "between"));
    if (word == nullptr) continue;
    std::uint32_t next = skip_blanks(sentence.text(), word->end);
    while (next < place && !words_at(sentence, next).empty() &&
           sort_of(sentence, *words_at(sentence, next).first) == ConceptClass::filler)
      next = skip_blanks(sentence.text(), words_at(sentence, next).first->end);
    if (next == place) return true;
  }
  return false;
}

/// "and 6 stitches apart": no number of a round.
bool counts_places(const Sentence& sentence, const Word& number) {
  const WordsAt behind = words_at(sentence, skip_blanks(sentence.text(), number.end));
  return ordinal_mark_at(sentence, number.end) == nullptr && !behind.empty() &&
         std::any_of(behind.begin(), behind.end(),
                     [&](const Word& word) { return sort_of(sentence, word) == ConceptClass::place; });
}

/// Rounds that are named: the first and the last, and where their numbers begin.
struct NamedRounds {
  int from = 0, to = 0; ///< 0: none
  std::uint32_t begin = 0;
  std::uint32_t end = 0; ///< behind the word for round
};

int number_of(const Word& word) { return static_cast<int>(std::min(word.number, 1'000'000U)); }

/// Behind a number, the mark of its ordinal and blanks.
std::uint32_t behind_ordinal(const Sentence& sentence, const Word& number) {
  const Word* mark = ordinal_mark_at(sentence, number.end);
  return skip_blanks(sentence.text(), mark != nullptr ? mark->end : number.end);
}

/// Behind what links two numbers, small words passed over; `at` if nothing links there.
std::uint32_t behind_number_link(const Sentence& sentence, std::uint32_t at) {
  if (at >= sentence.size()) return at;
  const bool linked = sentence.text()[at] == '-' || sentence.text()[at] == '&' ||
                      means(sentence, at, "and") || means(sentence, at, "to");
  if (!linked) return at;
  std::uint32_t next = skip_blanks(sentence.text(), words_at(sentence, at).first->end);
  while (!words_at(sentence, next).empty() && number_at(sentence, next) == nullptr &&
         sort_of(sentence, *words_at(sentence, next).first) == ConceptClass::filler)
    next = skip_blanks(sentence.text(), words_at(sentence, next).first->end);
  return next;
}

/// "11. und 12. Runde", "6 et 7e tours": the numbers that begin at `at`, the word for round behind the last.
NamedRounds rounds_before_word(const Sentence& sentence, std::uint32_t at) {
  const Word* number = number_at(sentence, at);
  if (number == nullptr || (at > 0 && sentence.text()[at - 1] >= '0' && sentence.text()[at - 1] <= '9'))
    return {};
  NamedRounds named{number_of(*number), number_of(*number), at, at};
  std::uint32_t next = behind_ordinal(sentence, *number);
  if (is_round_word(sentence, next)) next = skip_blanks(sentence.text(), words_at(sentence, next).first->end);
  const std::uint32_t behind = behind_number_link(sentence, next);
  if (const Word* last = behind == next ? nullptr : number_at(sentence, behind)) {
    named.to = std::max(named.to, number_of(*last));
    next = behind_ordinal(sentence, *last);
  } else {
    next = behind_ordinal(sentence, *number);
  }
  if (!is_round_word(sentence, next)) return {};
  named.end = words_at(sentence, next).first->end;
  return named;
}

/// "between" behind the rounds, as many languages have it: "4段目と5段目の間に".
bool between_follows(const Sentence& sentence, const NamedRounds& named) {
  std::uint32_t next = skip_blanks(sentence.text(), named.end);
  while (named.from != named.to && !words_at(sentence, next).empty()) {
    if (means(sentence, next, "between")) return true;
    if (sort_of(sentence, *words_at(sentence, next).first) != ConceptClass::filler) return false;
    next = skip_blanks(sentence.text(), words_at(sentence, next).first->end);
  }
  return false;
}

/// "2. sıraya | 4 ilmek arayla": the number of the round stands before its word.
bool has_number_before(const Sentence& sentence, std::uint32_t begin, std::uint32_t word) {
  for (std::uint32_t at = begin; at < word; ++at)
    if (const Word* number = number_at(sentence, at);
        number != nullptr && behind_ordinal(sentence, *number) == word)
      return true;
  return false;
}

/// The numbers in front of the word for round, where no number stands behind it.
void read_rounds_before_word(const Sentence& sentence, std::uint32_t begin, std::uint32_t end,
                             Placing& placing) {
  for (std::uint32_t at = begin; at < end; ++at) {
    const NamedRounds named = rounds_before_word(sentence, at);
    if (named.from == 0) continue;
    placing.between = names_between(sentence, begin, named.begin) || between_follows(sentence, named);
    placing.from = named.from;
    placing.to = named.to;
    return;
  }
}

} // namespace

void read_rounds(const Sentence& sentence, std::uint32_t begin, std::uint32_t end, Placing& placing) {
  for (std::uint32_t at = begin; at < end; ++at) {
    if (!means(sentence, at, "round") && !means(sentence, at, "row")) continue;
    std::uint32_t next = skip_blanks(sentence.text(), words_at(sentence, at).first->end);
    const Word* first = number_at(sentence, next);
    if (first == nullptr || first->end > end) continue;
    if (counts_places(sentence, *first) && has_number_before(sentence, begin, at)) continue;
    const int number = static_cast<int>(std::min(first->number, 1'000'000U));
    if (placing.from == 0) placing.between = names_between(sentence, begin, at);
    if (placing.from == 0) placing.from = placing.to = number;
    placing.to = std::max(placing.to, number);
    next = skip_blanks(sentence.text(), first->end);
    const bool linked = next < end && (sentence.text()[next] == '-' || sentence.text()[next] == '&' ||
                                       sentence.text()[next] == '/' || means(sentence, next, "and") ||
                                       means(sentence, next, "to"));
    if (!linked) continue;
    next = skip_blanks(sentence.text(), words_at(sentence, next).first->end);
    const Word* last = number_at(sentence, next);
    if (last != nullptr && last->end <= end && !counts_places(sentence, *last))
      placing.to = std::max(placing.to, static_cast<int>(std::min(last->number, 1'000'000U)));
  }
  if (placing.from == 0) read_rounds_before_word(sentence, begin, end, placing);
}

} // namespace whorl::pattern
