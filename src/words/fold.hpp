#pragma once
/// Room `words`: a line of text comes in, the words it may be made of go out. Vocabularies are data
/// (`symbols/words`). Nothing here knows what a sentence means, what was counted, or where a round ends.

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace whorl::words {

/// A stretch of the pattern text, in bytes of the file: [begin, end).
struct Span {
  std::uint32_t begin = 0;
  std::uint32_t end = 0;
  bool operator==(const Span&) const = default;
  bool empty() const { return begin == end; }
  std::uint32_t length() const { return end - begin; }
};

/// The smallest span that covers both; an empty span adds nothing.
Span cover(Span a, Span b);

/// Text brought to one form for reading: full width to half width; dashes, arrows, quotes, times signs and
/// blanks each to one; lower case; list and bold marks dropped. No letter changes its alphabet.
struct Folded {
  std::string text;
  std::vector<std::uint32_t> from; ///< byte of the file that folded byte i came from; one more at the end
  std::vector<bool> capital;       ///< folded byte i was a capital letter in the file

  /// The file's span of the folded bytes [begin, end).
  Span span(std::size_t begin, std::size_t end) const { return {from[begin], from[end]}; }
};

/// Folds `text`, whose first byte is byte `begin` of the file. Bytes that are not UTF-8 become a blank.
Folded fold(std::string_view text, std::uint32_t begin = 0);

} // namespace whorl::words
