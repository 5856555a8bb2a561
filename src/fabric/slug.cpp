#include "fabric/slug.hpp"

#include <algorithm>

namespace whorl::fabric {
namespace {

constexpr std::size_t longest = 40;

bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// The letter in lower case, a digit as it is, 0 for all else.
char slug_letter(char c) {
  if (c >= 'A' && c <= 'Z') return static_cast<char>(c - 'A' + 'a');
  return (c >= 'a' && c <= 'z') || is_digit(c) ? c : '\0';
}

} // namespace

std::string slug(std::string_view name) {
  std::string slug;
  for (char c : name) {
    const char letter = slug_letter(c);
    if (letter != '\0')
      slug += letter;
    else if (!slug.empty() && slug.back() != '-')
      slug += '-';
    if (slug.size() == longest) break;
  }
  if (!slug.empty() && slug.back() == '-') slug.pop_back();
  if (slug.empty()) return "part";
  return is_digit(slug.front()) ? "part-" + slug : slug;
}

std::string unique_slug(std::string_view name, const std::vector<std::string>& taken) {
  const std::string plain = slug(name);
  std::string unique = plain;
  for (int n = 2; std::find(taken.begin(), taken.end(), unique) != taken.end(); ++n)
    unique = plain + "-" + std::to_string(n);
  return unique;
}

} // namespace whorl::fabric
