#pragma once

#include "pattern/finding.hpp"
#include "pattern/source.hpp"
#include "words/vocabulary.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace whorl::pattern {

/// The language a text is written in, and from what that is known.
struct Language {
  enum class From : std::uint8_t {
    call,    ///< it was named with the text
    stated,  ///< the text says so: "Sprache: Deutsch"
    words,   ///< its words are of that language
    nothing, ///< nothing tells: English
  };
  const words::Vocabulary* vocabulary = nullptr;
  From from = From::nothing;
  Span stated;                    ///< where the text says so
  std::vector<std::string> words; ///< those that told, up to three
  std::string_view other;         ///< another language that is as likely, or ""
};

/// Finds out the language of a text. `named`: the tag that was given with it, "" if none was.
Language find_language(const Source& source, std::string_view named);

/// What is said of it: a note where the words told, a warning where two languages are as likely; nothing of
/// English, whose terms are told by `tell_terms`.
std::optional<Finding> tell_language(const Language& language);

} // namespace whorl::pattern
