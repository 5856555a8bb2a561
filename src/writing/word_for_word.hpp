#pragma once

#include "writing/tongue.hpp"

#include <string>
#include <string_view>

namespace whorl::writing {

/// A text in the words of another language, and whether all of its words are.
struct WordForWord {
  std::string text;
  bool whole = true; ///< false: some word was not known, and stays as it is
};

/// A text with each word that `from` knows in the words of another language; numbers and marks stay. The rows
/// in which words are put together are the same for all languages, so this is read, although nobody writes so
/// in every one. Between dialects of one language only the words that differ are changed.
WordForWord word_for_word(std::string_view text, const words::Vocabulary& from, const Tongue& tongue);

} // namespace whorl::writing
