#include "pattern/first_stitch_told.hpp"

#include "pattern/aside.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

constexpr std::uint32_t furthest = 60; ///< bytes from the head of the line

bool is_mark(char c) { return c == ',' || c == ';' || c == '.'; }

/// Where what is told begins: at the word for counting, which no mark but a comma and no stitch but chains
/// stand before; the sentence's size where there is none.
std::uint32_t begin_of_told(const Sentence& sentence) {
  const words::Concept chain = words::find_concept(sentence.vocabulary, "ch");
  bool chains = false;
  for (std::uint32_t at = 0; at < sentence.size() && at < furthest; ++at) {
    if (sentence.brackets.at[at] != no_bracket) return sentence.size();
    for (const words::Word& word : words_at(sentence, at)) {
      if (word.kind != words::WordKind::phrase) continue;
      chains = chains || word.means == chain;
      if (word.means == sentence.counted && chains) return at;
      if (word.means != chain && is_work(sentence, word) && word.cost == 0) return sentence.size();
    }
  }
  return sentence.size();
}

/// Whether [begin, end) tells of one stitch: a single one is named, and no number but one.
bool tells_of_one(const Sentence& sentence, std::uint32_t begin, std::uint32_t end) {
  bool stitch = false;
  for (std::uint32_t at = begin; at < end; ++at)
    for (const words::Word& word : words_at(sentence, at)) {
      if (word.kind == words::WordKind::number && word.number > 1) return false;
      stitch = stitch || (word.kind == words::WordKind::phrase && is_work(sentence, word));
    }
  return stitch;
}

} // namespace

std::optional<std::string> without_first_stitch_told(const Sentence& sentence, std::string_view text) {
  const std::uint32_t begin = begin_of_told(sentence);
  if (begin >= sentence.size()) return std::nullopt;
  std::uint32_t end = begin;
  while (end < sentence.size() && !(is_mark(sentence.text()[end]) && end > begin)) ++end;
  if (end >= sentence.size() || sentence.text()[end] != ',' || !tells_of_one(sentence, begin, end))
    return std::nullopt;
  const auto typed = [&](std::uint32_t at) { // where a folded byte stands in the text
    return text.size() - (sentence.folded.from.back() - sentence.folded.from[at]);
  };
  std::string blanked(text);
  std::fill(blanked.begin() + static_cast<std::ptrdiff_t>(typed(begin)),
            blanked.begin() + static_cast<std::ptrdiff_t>(typed(end)), ' ');
  return blanked;
}

} // namespace whorl::pattern
