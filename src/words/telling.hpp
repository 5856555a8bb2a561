#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace whorl::words {

/// How much of a text a language knows.
struct LanguageWeight {
  std::string_view language;     ///< its tag
  double weight = 0;             ///< words that few languages know weigh more
  double known = 0;              ///< the same, however many languages know a word
  std::vector<std::string> only; ///< up to three of the words that told most, folded
};

/// The languages by how well they know the words of the lines of a text that have figures in them, the
/// likeliest first; dialects are not among them. `lines` are folded.
std::vector<LanguageWeight> weigh_languages(const std::vector<std::string>& lines);

/// The language that a text may state by this name ("deutsch", "german", "de"), folded; "" if it names none.
std::string_view language_called(std::string_view name);

} // namespace whorl::words
