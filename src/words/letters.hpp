#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

namespace whorl::words {

/// One character of UTF-8 text. Bytes that are none are one character each, not valid.
struct Letter {
  char32_t code = 0;
  std::uint32_t length = 1;
  bool valid = false;
};
Letter letter_at(std::string_view text, std::size_t at);

void append_utf8(std::string& text, char32_t c);

/// The small letter of a capital (Latin, Greek, Cyrillic); else the same.
char32_t lower(char32_t c);

/// The capital of a small letter (Latin, Greek, Cyrillic); else the same.
char32_t upper(char32_t c);

/// True for letters and whatever is written like them: everything that is no blank, digit or mark.
bool is_letter(char32_t c);

/// The Latin letter that a Greek or Cyrillic small letter looks like, or the letter itself.
char32_t look_alike(char32_t c);

} // namespace whorl::words
