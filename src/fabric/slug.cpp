#include "fabric/slug.hpp"

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

std::string unique_slug(std::string_view name, std::map<std::string, int>& taken) {
  const std::string plain = slug(name);
  if (taken.emplace(plain, 1).second) return plain;
  for (int& n = taken[plain];;) {
    const std::string unique = plain + "-" + std::to_string(++n);
    if (taken.emplace(unique, 1).second) return unique;
  }
}

} // namespace whorl::fabric
