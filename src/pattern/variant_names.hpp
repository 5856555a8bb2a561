#pragma once
/// What the choice of variants looks at, letter by letter and line by line.

#include "words/ascii.hpp"

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

namespace whorl::pattern::variant {

inline constexpr std::size_t most_names = 8;
inline constexpr std::size_t none = std::string_view::npos;

inline bool is_letter(char c) {
  return (words::small(c) >= 'a' && words::small(c) <= 'z') || static_cast<unsigned char>(c) >= 0x80;
}
inline bool is_blank(char c) { return c == ' ' || c == '\t'; }

inline std::size_t behind_blanks(std::string_view text, std::size_t at) {
  while (at < text.size() && is_blank(text[at])) ++at;
  return at;
}

inline std::string_view trimmed(std::string_view text) {
  while (!text.empty() && (is_blank(text.front()) || text.front() == '\r')) text.remove_prefix(1);
  while (!text.empty() && (is_blank(text.back()) || text.back() == '\r' || text.back() == '.'))
    text.remove_suffix(1);
  return text;
}

inline bool same_letters(std::string_view a, std::string_view b) {
  return a.size() == b.size() && std::equal(a.begin(), a.end(), b.begin(), [](char x, char y) {
           return words::small(x) == words::small(y);
         });
}

/// A stretch of the text.
struct Part {
  std::size_t begin = 0, end = 0;
};

inline std::vector<Part> lines_of(std::string_view text) {
  std::vector<Part> lines;
  for (std::size_t at = 0; at <= text.size();) {
    const std::size_t end = std::min(text.find('\n', at), text.size());
    lines.push_back({at, end});
    at = end + 1;
  }
  return lines;
}

// The names that a text gives its variants; empty where a line is no such one.

/// "Sizes: small (medium, large)", "Variants: summer / winter".
std::vector<std::string> names_in_header(std::string_view line);
/// "Acorns S/M/L".
std::vector<std::string> sizes_in_title(std::string_view line);
/// "Puffball, small (large)".
std::vector<std::string> sizes_in_brackets(std::string_view line);
/// The names of options that lines of a text begin with, where there are several: "Option A: …".
std::vector<std::string> numbered_names(std::string_view text);

} // namespace whorl::pattern::variant
