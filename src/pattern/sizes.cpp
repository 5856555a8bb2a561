#include "pattern/sizes.hpp"

#include "words/ascii.hpp"

#include <string_view>

namespace whorl::pattern {

namespace {

constexpr std::size_t most_digits = 4;

/// A number, in brackets or not, and where it ends; an end of 0: there is none.
struct Size {
  int value = 0;
  std::size_t end = 0;
};

Size number_at(std::string_view text, std::size_t at) {
  Size size;
  std::size_t end = at;
  while (end < text.size() && words::is_digit(text[end]) && end - at < most_digits)
    size.value = size.value * 10 + (text[end++] - '0');
  if (end > at) size.end = end;
  return size;
}

std::size_t behind_blanks(std::string_view text, std::size_t at) {
  while (at < text.size() && text[at] == ' ') ++at;
  return at;
}

Size bracketed_at(std::string_view text, std::size_t at) {
  if (at >= text.size() || text[at] != '(') return {};
  const Size size = number_at(text, at + 1);
  return size.end != 0 && size.end < text.size() && text[size.end] == ')' ? Size{size.value, size.end + 1}
                                                                          : Size{};
}

/// Where a row of bracketed numbers ends that do not get smaller, and how many they are.
struct Row {
  std::size_t end = 0;
  int sizes = 0;
};

Row row_behind(std::string_view text, std::size_t at, int least) {
  Row row{at, 0};
  for (Size size = bracketed_at(text, behind_blanks(text, at)); size.end != 0 && size.value >= least;
       size = bracketed_at(text, behind_blanks(text, row.end)))
    row = {size.end, row.sizes + 1}, least = size.value;
  return row;
}

/// "x 6 (12)": the number says how often.
bool is_times(std::string_view text, std::size_t at) {
  while (at > 0 && text[at - 1] == ' ') --at;
  if (at == 0) return false;
  const char c = text[at - 1];
  return c == '*' || static_cast<unsigned char>(c) >= 0x80 ||
         ((c == 'x' || c == 'X') && (at == 1 || !words::is_small(words::small(text[at - 2]))));
}

} // namespace

void blank_sizes(std::string& text) {
  bool any = false;
  for (std::size_t at = 0; at < text.size();) {
    const bool bracket = text[at] == '(';
    const Size first = bracket ? bracketed_at(text, at) : number_at(text, at);
    if (first.end == 0 || (!bracket && at > 0 && words::is_digit(text[at - 1]))) {
      ++at;
      continue;
    }
    const Row row = row_behind(text, first.end, first.value);
    const bool sizes = row.sizes > (bracket && any ? 0 : 1) && (bracket || !is_times(text, at));
    if (sizes) text.replace(first.end, row.end - first.end, row.end - first.end, ' ');
    any = any || sizes;
    at = sizes ? row.end : first.end;
  }
}

} // namespace whorl::pattern
