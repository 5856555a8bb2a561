#include "pattern/times_ahead.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

/// Whether more than one step stands in [begin, end): a mark or "and" between, and no brackets or stars.
bool is_list(const Sentence& sentence, std::uint32_t begin, std::uint32_t end) {
  bool parted = false;
  for (std::uint32_t at = begin; at < end; ++at) {
    const char mark = sentence.text()[at];
    if (sentence.brackets.at[at] != no_bracket || mark == '*') return false;
    parted = parted || mark == ',' || mark == '+' || mark == '/' ||
             word_meaning(sentence, at, sentence.conjunction) != nullptr;
  }
  return parted;
}

/// Where the count begins, by the signs that lead to one.
std::uint32_t before_count(const Sentence& sentence) {
  return static_cast<std::uint32_t>(std::min(sentence.text().find_first_of("=([:"), sentence.text().size()));
}

/// "6 times | 2 sc, inc", "in turn | 2 sc and inc": the words ahead of a list that say how often; nullptr if
/// it begins otherwise.
const words::Word* times_ahead(const Sentence& sentence) {
  const std::uint32_t begin = skip_blanks(sentence.text(), 0);
  const auto named = [&](const char* name) { return words::find_concept(sentence.vocabulary, name); };
  if (word_meaning(sentence, begin, named("repeat")) != nullptr)
    if (const words::Word* in_turn = word_meaning(sentence, begin, named("around"))) return in_turn;
  const words::Word* number = number_at(sentence, begin);
  return number == nullptr
             ? nullptr
             : word_meaning(sentence, skip_blanks(sentence.text(), number->end), sentence.times);
}

} // namespace

std::optional<std::string> mark_times_ahead(const Sentence& sentence, std::string_view text) {
  const words::Word* times = times_ahead(sentence);
  if (times == nullptr || times->end >= sentence.size() || sentence.text()[times->end] != ' ')
    return std::nullopt;
  if (!is_list(sentence, times->end, before_count(sentence))) return std::nullopt;
  const std::size_t at = text.size() - (sentence.folded.from.back() - sentence.folded.from[times->end]);
  if (at >= text.size() || text[at] != ' ') return std::nullopt;
  std::string marked(text);
  marked[at] = ':';
  return marked;
}

std::optional<std::string> without_dash_before_times(const Sentence& sentence, std::string_view text) {
  const auto typed = [&](std::uint32_t at) { // where a folded byte stands in the text
    return text.size() - (sentence.folded.from.back() - sentence.folded.from[at]);
  };
  for (std::uint32_t dash = 2; dash + 2 < sentence.size(); ++dash) {
    const std::string_view around = sentence.text().substr(dash - 2, 4);
    if (around != ". - ") continue;
    const words::Word* number = number_at(sentence, dash + 2);
    if (number == nullptr ||
        word_meaning(sentence, skip_blanks(sentence.text(), number->end), sentence.times) == nullptr)
      continue;
    std::string retold(text);
    std::fill(retold.begin() + static_cast<std::ptrdiff_t>(typed(dash)),
              retold.begin() + static_cast<std::ptrdiff_t>(typed(dash + 1)), ' ');
    return retold;
  }
  return std::nullopt;
}

} // namespace whorl::pattern
