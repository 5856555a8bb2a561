#pragma once

#include "pattern/sentence.hpp"

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

/// Whether a word is one for a loop: "lp", "free loop".
inline bool is_loop_word(const Sentence& sentence, const words::Word& word) {
  const std::string_view text = sentence.text().substr(word.begin, word.end - word.begin);
  return text.find("loop") != std::string_view::npos || text.substr(0, 2) == "lp";
}

} // namespace whorl::pattern
