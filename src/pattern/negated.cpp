#include "pattern/negated.hpp"

#include "words/ascii.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

/// Whether a text ends with a phrase that begins a word.
bool ends_with(std::string_view text, std::string_view phrase, bool blanks) {
  if (text.size() < phrase.size() || text.substr(text.size() - phrase.size()) != phrase) return false;
  return !blanks || text.size() == phrase.size() ||
         !words::is_folded_letter(text[text.size() - phrase.size() - 1]);
}

/// Whether a phrase stands in a text as words of their own.
bool stands_in(std::string_view text, std::string_view phrase, bool blanks) {
  for (std::size_t at = text.find(phrase); at != text.npos; at = text.find(phrase, at + 1)) {
    const std::size_t end = at + phrase.size();
    const bool begins = at == 0 || !words::is_folded_letter(text[at - 1]);
    if (!blanks || (begins && (end == text.size() || !words::is_folded_letter(text[end])))) return true;
  }
  return false;
}

} // namespace

bool is_negated(const Sentence& sentence, std::uint32_t begin, std::uint32_t end) {
  const words::Vocabulary* const all = words::find_vocabulary_of(sentence.vocabulary.language, "techniques");
  if (all == nullptr) return false;
  const words::Concept no = words::find_concept(*all, "technique not");
  const bool blanks = sentence.vocabulary.blanks_between_words;
  std::string_view before = std::string_view(sentence.text()).substr(0, begin);
  while (!before.empty() && before.back() == ' ') before.remove_suffix(1);
  const std::string_view behind =
      std::string_view(sentence.text()).substr(std::min<std::size_t>(end, sentence.size()));
  const std::string_view own =
      std::string_view(sentence.text()).substr(begin, std::min<std::size_t>(end, sentence.size()) - begin);
  return std::any_of(all->phrases.begin(), all->phrases.end(), [&](const words::PhraseEntry& entry) {
    if (entry.means != no || entry.write) return false;
    return ends_with(before, entry.phrase, blanks) || stands_in(own, entry.phrase, blanks) ||
           (!blanks && behind.substr(0, entry.phrase.size()) == entry.phrase);
  });
}

} // namespace whorl::pattern
