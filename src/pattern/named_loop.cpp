#include "pattern/named_loop.hpp"

#include "pattern/word_names.hpp"

namespace whorl::pattern {
namespace {

using words::ConceptClass;
using words::Word;

bool is_loop(const Sentence& sentence, const Word& word) {
  const ConceptClass sort = sort_of(sentence, word);
  return sort == ConceptClass::loops || (sort == ConceptClass::place && is_loop_word(sentence, word));
}

/// Where a word for a loop ends from `at` on, "free" before it; 0: none stands there.
std::uint32_t end_of_loop(const Sentence& sentence, std::uint32_t at) {
  for (int small = 0; small < 3; ++small) {
    const WordsAt words = words_at(sentence, at);
    if (words.empty()) return 0;
    for (const Word& word : words)
      if (is_loop(sentence, word)) return word.end;
    const std::string_view name = name_of(sentence, *words.first);
    if (name != "unused" && name != "filler" && name != "with") return 0;
    at = behind(sentence, *words.first);
  }
  return 0;
}

/// Where what stands behind an ordinal begins: "5th", or a number that has its ending; 0: it is none.
std::uint32_t behind_ordinal(const Sentence& sentence, const Word& number) {
  const std::uint32_t at = behind(sentence, number);
  if (is_named(sentence, at, {"ordinal"})) return behind(sentence, *words_at(sentence, at).first);
  const auto is_digit = [&](std::uint32_t byte) {
    return sentence.text()[byte] >= '0' && sentence.text()[byte] <= '9';
  };
  return is_digit(number.begin) != is_digit(number.end - 1) ? at : 0; // a word, "three", is a number of them
}

/// "5th | free front loop".
bool is_ordinal_of_loop(const Sentence& sentence, const Word& number) {
  const std::uint32_t at = behind_ordinal(sentence, number);
  return at != 0 && end_of_loop(sentence, at) != 0;
}

/// "5th | st", "no. 5 | st" at a place: the number; 0 if that does not stand there.
std::uint32_t counted_stitch(const Sentence& sentence, std::uint32_t at) {
  const bool before = number_at(sentence, at) == nullptr && is_named(sentence, at, {"ordinal"});
  if (before) at = behind(sentence, *words_at(sentence, at).first);
  const Word* const number = number_at(sentence, at);
  if (number == nullptr) return 0;
  std::uint32_t next = behind_ordinal(sentence, *number);
  if (next == 0 && before) next = behind(sentence, *number);
  if (next != 0 && is_named(sentence, next, {"with"}) && !is_named(sentence, next, {"st"}))
    next = behind(sentence, *words_at(sentence, next).first);
  return next != 0 && is_named(sentence, next, {"st"}) ? number->number : 0;
}

/// The same, or "st | 5".
std::uint32_t numbered_stitch(const Sentence& sentence, std::uint32_t at) {
  if (const std::uint32_t counted = counted_stitch(sentence, at); counted != 0) return counted;
  if (number_at(sentence, at) != nullptr || !is_named(sentence, at, {"st"})) return 0;
  const Word* number = number_at(sentence, behind(sentence, *words_at(sentence, at).first));
  return number == nullptr ? 0 : number->number;
}

/// "… loop | of st 5", "… loop | of the 5th st": the number; 0 if none stands there.
std::uint32_t stitch_behind(const Sentence& sentence, std::uint32_t loop_end) {
  std::uint32_t at = skip_blanks(sentence.text(), loop_end);
  for (int small = 0; small < 4; ++small) {
    if (const std::uint32_t number = numbered_stitch(sentence, at); number != 0) return number;
    if (!is_named(sentence, at, {"with", "filler", "in", "from"})) return 0;
    at = behind(sentence, *words_at(sentence, at).first);
  }
  return 0;
}

/// "… loops | 5th": where an ordinal stands behind what it counts; 0 if none does.
std::uint32_t ordinal_behind(const Sentence& sentence, std::uint32_t loop_end) {
  std::uint32_t at = skip_blanks(sentence.text(), loop_end);
  for (int small = 0; small < 2 && is_named(sentence, at, {"with", "filler", "in", "unused"}); ++small)
    at = behind(sentence, *words_at(sentence, at).first);
  const bool before = is_named(sentence, at, {"ordinal"}) && number_at(sentence, at) == nullptr;
  if (before) at = behind(sentence, *words_at(sentence, at).first);
  const Word* const number = number_at(sentence, at);
  if (number == nullptr) return 0;
  if (before) return number->number;
  const std::uint32_t end = behind_ordinal(sentence, *number);
  return end != 0 && !is_named(sentence, end, {"round", "row", "around"}) ? number->number : 0;
}

/// "loop | 5": the number behind a word for one loop; 0 if none stands there.
std::uint32_t number_of_loop(const Sentence& sentence, std::uint32_t at) {
  for (const Word& word : words_at(sentence, at)) {
    if (!is_loop(sentence, word) || !is_loop_word(sentence, word) || sentence.text()[word.end - 1] == 's')
      continue;
    const Word* number = number_at(sentence, behind(sentence, word));
    if (number != nullptr) return number->number;
  }
  return 0;
}

} // namespace

bool names_one_loop(const Sentence& sentence, std::uint32_t begin, std::uint32_t end) {
  int here = 0, all = 0;
  for (std::uint32_t at = 0; at < sentence.size(); ++at) {
    const Word* number = number_at(sentence, at);
    const bool ordinal = number != nullptr && is_ordinal_of_loop(sentence, *number);
    const bool loop = ordinal || number_of_loop(sentence, at) != 0;
    all += loop ? 1 : 0;
    here += loop && begin <= at && at < end ? 1 : 0;
  }
  return here == 1 && all == 1;
}

std::uint16_t loop_named(std::string_view text, const words::Vocabulary& vocabulary) {
  constexpr std::uint32_t most = 0xFFFF;
  const Sentence sentence = look_up(text, 0, vocabulary);
  for (std::uint32_t at = 0; at < sentence.size(); ++at) {
    const Word* number = number_at(sentence, at);
    if (number != nullptr && number->number <= most && is_ordinal_of_loop(sentence, *number))
      return static_cast<std::uint16_t>(number->number);
    if (const std::uint32_t one = number_of_loop(sentence, at); one != 0 && one <= most)
      return static_cast<std::uint16_t>(one);
    const std::uint32_t loop = end_of_loop(sentence, at);
    const std::uint32_t stitch = loop != 0 ? stitch_behind(sentence, loop) : 0;
    if (stitch != 0 && stitch <= most) return static_cast<std::uint16_t>(stitch);
    const std::uint32_t behind_it = loop != 0 && stitch == 0 ? ordinal_behind(sentence, loop) : 0;
    if (behind_it != 0 && behind_it <= most) return static_cast<std::uint16_t>(behind_it);
  }
  return 0;
}

NumberedLoops loops_numbered(const Sentence& sentence, std::uint32_t loop_end) {
  constexpr std::uint32_t most = 0xFFFF;
  const Word* first = number_at(sentence, skip_blanks(sentence.text(), loop_end));
  if (first == nullptr || first->number == 0) return {};
  std::uint32_t at = behind(sentence, *first);
  const bool dash = at < sentence.size() && sentence.text()[at] == '-';
  if (!dash && !is_named(sentence, at, {"to", "through"})) return {};
  at = dash ? skip_blanks(sentence.text(), at + 1) : behind(sentence, *words_at(sentence, at).first);
  const Word* last = number_at(sentence, at);
  if (last == nullptr || last->number <= first->number || last->number > most) return {};
  return {static_cast<std::uint16_t>(first->number), static_cast<std::uint16_t>(last->number), last->end};
}

NumberedLoops loops_named(std::string_view text, const words::Vocabulary& vocabulary) {
  const Sentence sentence = look_up(text, 0, vocabulary);
  for (std::uint32_t at = 0; at < sentence.size(); ++at)
    for (const Word& word : words_at(sentence, at))
      if (is_loop(sentence, word))
        if (const NumberedLoops loops = loops_numbered(sentence, word.end); loops.first != 0) return loops;
  return {};
}

std::uint16_t stitch_named(std::string_view text, const words::Vocabulary& vocabulary) {
  constexpr std::uint32_t most = 0xFFFF;
  const Sentence sentence = look_up(text, 0, vocabulary);
  for (std::uint32_t at = 0; at < sentence.size(); ++at)
    if (const std::uint32_t number = numbered_stitch(sentence, at); number != 0 && number <= most)
      return static_cast<std::uint16_t>(number);
  return 0;
}

} // namespace whorl::pattern
