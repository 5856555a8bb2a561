#include "pattern/lettered.hpp"

#include "words/ascii.hpp"

namespace whorl::pattern {

std::optional<Label> letter_label(std::string_view text, std::uint32_t begin, int number) {
  constexpr int letters = 26;
  const std::size_t open = !text.empty() && text.front() == '(' ? 1 : 0;
  if (number < 1 || number > letters || text.size() < open + 4) return std::nullopt;
  const bool letter = words::small(text[open]) == 'a' + number - 1;
  const char mark = text[open + 1];
  const bool closed = mark == ')' || (open == 0 && (mark == '.' || mark == ':'));
  if (!letter || !closed || text[open + 2] != ' ') return std::nullopt;
  Label label;
  label.from = label.to = number;
  label.closed = true;
  label.span = {begin, begin + static_cast<std::uint32_t>(open) + 2};
  label.work = label.span.end + 1;
  return label;
}

} // namespace whorl::pattern
