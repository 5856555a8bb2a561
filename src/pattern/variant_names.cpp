#include "pattern/variant_names.hpp"

#include <array>

namespace whorl::pattern::variant {
namespace {

using words::is_digit;

constexpr std::size_t longest_name = 24; ///< bytes

bool is_unit(std::string_view word) {
  constexpr std::array<std::string_view, 8> units{"cm", "mm", "in", "inch", "inches", "tall", "high", "long"};
  return std::any_of(units.begin(), units.end(),
                     [word](std::string_view unit) { return same_letters(unit, word); });
}

/// "small (medium, large)", "summer / winter", "6 (8, 10) cm".
std::vector<std::string> names_listed(std::string_view list) {
  std::vector<std::string> names;
  for (std::size_t at = 0; at < list.size();) {
    const std::size_t end = std::min(list.find_first_of(",;/()[]|", at), list.size());
    const std::string_view name = trimmed(list.substr(at, end - at));
    at = end + 1;
    if (name.empty() || is_unit(name)) continue;
    if (name.size() > longest_name || std::count(name.begin(), name.end(), ' ') > 2) return {};
    names.emplace_back(name);
  }
  return names.size() > most_names ? std::vector<std::string>{} : names;
}

} // namespace

namespace {

/// "Cap (sizes: S, M, L)", "Comes in three sizes: small (medium, large)".
std::vector<std::string> sizes_told(std::string_view line, std::string_view before, std::size_t colon) {
  constexpr std::string_view word = "sizes";
  if (before.size() <= word.size()) return {};
  const std::size_t begin = before.size() - word.size();
  const bool bracket = before[begin - 1] == '(';
  if (!same_letters(before.substr(begin), word) || is_letter(before[begin - 1])) return {};
  const std::size_t end = bracket ? line.find(')', colon) : none;
  std::vector<std::string> names = names_listed(line.substr(colon + 1, end == none ? end : end - colon - 1));
  const bool measures = std::any_of(names.begin(), names.end(),
                                    [](const std::string& name) { return words::is_digit(name.front()); });
  return measures || names.size() < 2 ? std::vector<std::string>{} : names;
}

} // namespace

std::vector<std::string> names_in_header(std::string_view line) {
  const std::size_t colon = line.find(':');
  if (colon == none) return {};
  const std::string_view name = trimmed(line.substr(0, colon));
  for (const std::string_view header :
       {"sizes", "size", "variants", "variant", "versions", "version", "options", "option"})
    if (same_letters(name, header)) return names_listed(line.substr(colon + 1));
  return sizes_told(line, name, colon);
}

namespace {

/// "Option A" of "Option A: …", "VERSION 2 (taller)"; "" where a line begins otherwise.
std::string_view numbered_name(std::string_view line) {
  for (const std::string_view word : {"option ", "version ", "variant "}) {
    if (!same_letters(line.substr(0, word.size()), word)) continue;
    const std::size_t end = std::min(line.find_first_of(" :(-", word.size()), line.size());
    const std::size_t mark = behind_blanks(line, end);
    const bool closed = mark < line.size() && std::string_view(":(-").find(line[mark]) != none;
    return closed && end - word.size() == 1 ? line.substr(0, end) : std::string_view{};
  }
  return {};
}

} // namespace

std::vector<std::string> numbered_names(std::string_view text) {
  std::vector<std::string> names;
  for (const Part line : lines_of(text)) {
    const std::string_view name = numbered_name(text.substr(line.begin, line.end - line.begin));
    const auto same = [name](const std::string& one) { return same_letters(one, name); };
    if (!name.empty() && std::none_of(names.begin(), names.end(), same)) names.emplace_back(name);
  }
  return names.size() > most_names ? std::vector<std::string>{} : names;
}

namespace {

bool is_size_letter(std::string_view word) {
  constexpr std::array<std::string_view, 7> sizes{"XS", "S", "M", "L", "XL", "XXL", "2XL"};
  return std::find(sizes.begin(), sizes.end(), word) != sizes.end();
}

} // namespace

std::vector<std::string> sizes_in_title(std::string_view line) {
  const std::size_t slash = line.find('/');
  if (slash == none) return {};
  std::size_t begin = slash, end = slash;
  while (begin > 0 && !is_blank(line[begin - 1]) && line[begin - 1] != '(') --begin;
  while (end < line.size() && !is_blank(line[end]) && line[end] != ')' && line[end] != '\r') ++end;
  std::vector<std::string> names = names_listed(line.substr(begin, end - begin));
  return std::all_of(names.begin(), names.end(), is_size_letter) ? names : std::vector<std::string>{};
}

namespace {

bool is_size_word(std::string_view word) {
  constexpr std::array<std::string_view, 10> sizes{"mini",  "tiny", "small", "little", "medium",
                                                   "large", "big",  "giant", "adult",  "child"};
  return std::any_of(sizes.begin(), sizes.end(),
                     [word](std::string_view size) { return same_letters(size, word); });
}

} // namespace

std::vector<std::string> sizes_in_brackets(std::string_view line) {
  const std::size_t open = line.find('('), close = line.find(')', std::min(open, line.size()));
  if (open == none || close == none) return {};
  const std::string_view before = trimmed(line.substr(0, open));
  const std::size_t blank = before.find_last_of(" \t");
  const std::size_t begin = blank == none ? 0 : blank + 1;
  std::vector<std::string> names = names_listed(line.substr(begin, close - begin));
  const auto are_sizes = [&] {
    return names.size() > 1 && std::all_of(names.begin(), names.end(), is_size_word);
  };
  if (!are_sizes()) names = names_listed(line.substr(open, close - open)); // "Cub (small; large)"
  const bool sizes = names.size() > 1 && std::all_of(names.begin(), names.end(), is_size_word);
  return sizes ? names : std::vector<std::string>{};
}

} // namespace whorl::pattern::variant
