#pragma once

#include <string>
#include <string_view>

namespace whorl::drawing {

/// What stands for bytes that are no character.
inline constexpr char32_t no_character = 0xFFFD;

/// Takes the first character off a text that is not empty; a byte that begins none is `no_character`.
char32_t take_character(std::string_view& text);

/// Writes a character as UTF-8.
void append_character(std::string& out, char32_t character);

} // namespace whorl::drawing
