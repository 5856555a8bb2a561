#pragma once

namespace whorl::words {

/// What a byte of UTF-8 text is, without asking a locale.
constexpr bool is_digit(char c) { return c >= '0' && c <= '9'; }
constexpr bool is_small(char c) { return c >= 'a' && c <= 'z'; }
constexpr bool is_capital(char c) { return c >= 'A' && c <= 'Z'; }
/// A capital as its small letter, everything else as it is.
constexpr char small(char c) { return is_capital(c) ? static_cast<char>(c + ('a' - 'A')) : c; }
/// Of a letter in folded text; one that takes several bytes counts.
constexpr bool is_folded_letter(char c) { return is_small(c) || static_cast<unsigned char>(c) >= 0x80; }

} // namespace whorl::words
