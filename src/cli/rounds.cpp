#include "cli/rounds.hpp"

namespace whorl::cli {
namespace {

/// A number of a round at the front of a text, taken off it; 0: there is none.
int take_number(std::string_view& text) {
  int number = 0;
  while (!text.empty() && text.front() >= '0' && text.front() <= '9' && number < 100'000) {
    number = 10 * number + (text.front() - '0');
    text.remove_prefix(1);
  }
  return number;
}

bool take(std::string_view& text, std::string_view what) {
  const bool there = text.substr(0, what.size()) == what;
  if (there) text.remove_prefix(what.size());
  return there;
}

} // namespace

bool read_rounds(std::string_view text, int& first, int& last) {
  if (text.empty()) return false;
  first = last = take_number(text);
  if (take(text, "-") || take(text, "–")) last = take_number(text);
  return text.empty() && first + last > 0 && (last == 0 || first <= last);
}

std::string unclear_rounds(const std::string& text) {
  return "which rounds is not clear from " + text + ": write 7, or 5-12, or 5- for all from 5 on";
}

} // namespace whorl::cli
