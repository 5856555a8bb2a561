#include "pattern/text_words.hpp"

#include "words/ascii.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

using words::PhraseEntry;

/// The kind of a phrase, as a bit; 0 if it is of none.
std::uint64_t bit_of(const words::Vocabulary& text, const PhraseEntry& entry) {
  const words::Concept first = text.first_text_concept;
  return entry.means >= first && entry.means < first + 64 ? std::uint64_t{1} << (entry.means - first) : 0;
}

std::uint64_t bit_of(TextWord kind) { return std::uint64_t{1} << static_cast<unsigned>(kind); }

} // namespace

std::uint64_t text_words(const words::Vocabulary& vocabulary, std::string_view phrase) {
  if (vocabulary.text == nullptr || phrase.empty()) return 0;
  const auto& phrases = vocabulary.text->phrases;
  auto at =
      std::lower_bound(phrases.begin(), phrases.end(), phrase,
                       [](const PhraseEntry& entry, std::string_view key) { return entry.phrase < key; });
  std::uint64_t kinds = 0;
  for (; at != phrases.end() && at->phrase == phrase; ++at) kinds |= bit_of(*vocabulary.text, *at);
  return kinds;
}

bool is_text_word(const words::Vocabulary& vocabulary, std::string_view phrase, TextWord kind) {
  return (text_words(vocabulary, phrase) & bit_of(kind)) != 0;
}

std::size_t end_of_text_word(const words::Vocabulary& vocabulary, std::string_view text, std::size_t place,
                             TextWord kind) {
  if (vocabulary.text == nullptr || place >= text.size()) return place;
  std::size_t longest = 0;
  const auto byte = static_cast<unsigned char>(text[place]);
  const words::Vocabulary& all = *vocabulary.text;
  for (std::uint32_t i = all.by_byte[byte]; i < all.by_byte[byte + 1U]; ++i) {
    const PhraseEntry& entry = all.phrases[i];
    const std::string_view phrase = entry.phrase;
    if (phrase.size() <= longest || bit_of(*vocabulary.text, entry) != bit_of(kind) ||
        text.substr(place, phrase.size()) != phrase)
      continue;
    const std::size_t end = place + phrase.size();
    const bool runs_on = vocabulary.blanks_between_words && end < text.size() &&
                         words::is_folded_letter(text[end]) && words::is_folded_letter(phrase.back());
    if (!runs_on) longest = phrase.size();
  }
  return place + longest;
}

std::vector<std::string_view> text_phrases(const words::Vocabulary& vocabulary, TextWord kind) {
  std::vector<std::string_view> all;
  if (vocabulary.text == nullptr) return all;
  for (const PhraseEntry& entry : vocabulary.text->phrases)
    if (!entry.write && bit_of(*vocabulary.text, entry) == bit_of(kind)) all.emplace_back(entry.phrase);
  return all;
}

bool has_text_word(const words::Vocabulary& vocabulary, std::string_view text, TextWord kind) {
  if (vocabulary.text == nullptr) return false;
  const auto& phrases = vocabulary.text->phrases;
  return std::any_of(phrases.begin(), phrases.end(), [&](const PhraseEntry& entry) {
    return bit_of(*vocabulary.text, entry) == bit_of(kind) && text.find(entry.phrase) != text.npos;
  });
}

} // namespace whorl::pattern
