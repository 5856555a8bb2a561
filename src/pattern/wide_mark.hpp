#pragma once

#include <string_view>

namespace whorl::pattern {

/// A mark of Japanese or Chinese text, and the narrow one that it is as good as.
struct WideMark {
  std::string_view typed;
  char mark;
};
inline constexpr WideMark wide_marks[] = {
    {"\xE3\x80\x82", '.'}, {"\xE3\x80\x81", ','}, {"\xEF\xBC\x8C", ','}, {"\xEF\xBC\x9B", ';'},
    {"\xEF\xBC\x9A", ':'}, {"\xEF\xBC\x8E", '.'}, {"\xEF\xBC\x9F", '?'}, {"\xEF\xBC\x81", '!'},
};

/// The wide mark that ends at a place, as a narrow one; '\0' if none does.
inline char wide_mark_before(std::string_view text, std::size_t place) {
  for (const WideMark& wide : wide_marks)
    if (place >= wide.typed.size() && text.substr(place - wide.typed.size(), wide.typed.size()) == wide.typed)
      return wide.mark;
  return '\0';
}

} // namespace whorl::pattern
