#pragma once

#include "pattern/sentence.hpp"
#include "pattern/text_words.hpp"
#include "words/ascii.hpp"

#include <algorithm>
#include <initializer_list>
#include <string_view>

namespace whorl::pattern {

/// What a word means, by its name in the vocabulary; "": it is no phrase of it.
inline std::string_view name_of(const Sentence& sentence, const words::Word& word) {
  return word.kind == words::WordKind::phrase
             ? std::string_view(sentence.vocabulary.concepts[word.means].name)
             : std::string_view{};
}

/// Whether a word at a place means one of these.
inline bool is_named(const Sentence& sentence, std::uint32_t at,
                     std::initializer_list<std::string_view> names) {
  const WordsAt words = words_at(sentence, at);
  return std::any_of(words.begin(), words.end(), [&](const words::Word& word) {
    const std::string_view name = name_of(sentence, word);
    return !name.empty() && std::find(names.begin(), names.end(), name) != names.end();
  });
}

/// Where the next word may begin.
inline std::uint32_t behind(const Sentence& sentence, const words::Word& word) {
  return skip_blanks(sentence.text(), word.end);
}

/// Where the longest phrase of a kind that stands at a place ends; `at` if none does.
inline std::uint32_t end_of_text(const Sentence& sentence, std::uint32_t at, TextWord kind) {
  return static_cast<std::uint32_t>(end_of_text_word(sentence.vocabulary, sentence.text(), at, kind));
}

/// Whether letters that begin at a place are no end of a word.
inline bool begins_word(const Sentence& sentence, std::uint32_t at) {
  return at == 0 || !sentence.vocabulary.blanks_between_words ||
         !words::is_folded_letter(sentence.text()[at - 1]) || words::is_digit(sentence.text()[at]);
}

/// Whether a word is one for a loop: "lp", "free loop".
inline bool is_loop_word(const Sentence& sentence, const words::Word& word) {
  const std::string_view text = sentence.text().substr(word.begin, word.end - word.begin);
  return text.find("loop") != std::string_view::npos || text.substr(0, 2) == "lp";
}

} // namespace whorl::pattern
