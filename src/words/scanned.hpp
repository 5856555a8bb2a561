#pragma once

#include "words/ascii.hpp"

#include <cstddef>
#include <string_view>

namespace whorl::words {

/// A figure, or a letter that scanning makes of one.
struct ScannedDigit {
  int value = -1; ///< -1: neither stands there
  std::size_t length = 1;
};

/// The figure at a byte of folded text: `l` is a 1, `o` a nought, and so are their Cyrillic likes; `з` is
/// a 3.
inline ScannedDigit scanned_digit(std::string_view text, std::size_t at) {
  if (is_digit(text[at])) return {text[at] - '0'};
  if (text[at] == 'l') return {1};
  if (text[at] == 'o') return {0};
  const std::string_view letter = text.substr(at, 2);
  if (letter == "\xD0\xBE") return {0, 2}; // о
  if (letter == "\xD0\xB7") return {3, 2}; // з
  return {};
}

} // namespace whorl::words
