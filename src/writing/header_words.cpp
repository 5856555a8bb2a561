#include "writing/header_words.hpp"

#include "words/fold.hpp"
#include "words/lattice.hpp"
#include "words/letters.hpp"

#include <algorithm>
#include <vector>

namespace whorl::writing {
namespace {

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && (text.front() == ' ' || text.front() == '\t')) text.remove_prefix(1);
  while (!text.empty() && std::string_view(" \t.").find(text.back()) != std::string_view::npos)
    text.remove_suffix(1);
  return text;
}

bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// The items of a list; a comma in brackets, or within a number, parts none.
std::vector<std::string_view> items_of(std::string_view text) {
  std::vector<std::string_view> items;
  std::size_t begin = 0;
  int depth = 0;
  for (std::size_t at = 0; at < text.size(); ++at) {
    depth += text[at] == '(' ? 1 : text[at] == ')' ? -1 : 0;
    std::size_t mark = text[at] == ',' || text[at] == ';' ? 1 : 0;
    for (const std::string_view wide : {"、", "，"})
      if (text.substr(at, wide.size()) == wide) mark = wide.size();
    const bool decimal =
        text[at] == ',' && at > 0 && is_digit(text[at - 1]) && at + 1 < text.size() && is_digit(text[at + 1]);
    if (mark == 0 || depth > 0 || decimal) continue;
    items.push_back(trimmed(text.substr(begin, at - begin)));
    begin = at + mark;
  }
  items.push_back(trimmed(text.substr(begin)));
  return items;
}

class Header {
public:
  Header(const Phrasebook& book, const Tongue& tongue, const Measuring& from, const Measuring& to)
      : book_(book), tongue_(tongue), from_(from), to_(to) {}

  HeaderWords list(std::string_view value) const {
    HeaderWords all;
    for (const std::string_view item : items_of(value)) {
      const std::string own = measured(item, from_, to_);
      const auto words = item_in_words(own);
      all.whole = all.whole && words.has_value();
      if (!all.text.empty()) all.text += tongue_.comma();
      all.text += words ? *words : tongue_.named(own);
    }
    return all;
  }

private:
  /// "two 8 mm safety eyes": a number, a size and what it is; "moss (30 g)" with what stands in brackets.
  std::optional<std::string> item_in_words(std::string_view item) const {
    if (auto whole = known(item)) return whole;
    if (auto gauge = equals_in_words(item)) return gauge;
    for (const auto& [before, behind] : book_.parted(item)) {
      const auto first = item_in_words(before), second = first ? item_in_words(behind) : std::nullopt;
      if (first && second) return tongue_.sentence("caption-and", {*first, *second});
    }
    if (item.size() > 1 && item.back() == ')')
      if (const std::size_t open = item.rfind('('); open != item.npos && open > 0) {
        const auto before = item_in_words(trimmed(item.substr(0, open)));
        const std::string_view inner = item.substr(open + 1, item.size() - open - 2);
        const auto within = is_measure(inner) ? std::optional(std::string(inner)) : known(inner);
        return before && within ? std::optional(*before + " (" + *within + ")") : std::nullopt;
      }
    const auto [number, rest] = number_of(item);
    const auto [size, thing] = size_of(rest);
    const auto what = known(thing);
    if (!what || (number.empty() && size.empty())) return std::nullopt;
    const auto counted = number.empty() ? what : tongue_.sentence("say-counted", {number, *what});
    if (!counted || size.empty()) return counted;
    return *counted + " (" + size + ")";
  }

  /// "5 sts = 2,5 cm", "10 sc x 11 rows = 5 x 5 cm".
  std::optional<std::string> equals_in_words(std::string_view item) const {
    const std::size_t sign = item.find('=');
    if (sign == item.npos) return std::nullopt;
    const auto one = counts_in_words(trimmed(item.substr(0, sign))),
               other = counts_in_words(trimmed(item.substr(sign + 1)));
    return one && other ? std::optional(*one + " = " + *other) : std::nullopt;
  }

  /// Numbers of stitches and measures, with "x" or "and" between them.
  std::optional<std::string> counts_in_words(std::string_view text) const {
    if (is_measure(text)) return std::string(text);
    if (const std::size_t by = text.find(" x "); by != text.npos) {
      const auto one = counts_in_words(trimmed(text.substr(0, by))),
                 other = counts_in_words(trimmed(text.substr(by + 3)));
      return one && other ? std::optional(*one + " x " + *other) : std::nullopt;
    }
    for (const auto& [before, behind] : book_.parted(text)) {
      const auto one = counts_in_words(trimmed(before)), other = counts_in_words(trimmed(behind));
      if (one && other) return tongue_.sentence("caption-and", {*one, *other});
    }
    const std::size_t end = std::min(text.find_first_not_of("0123456789"), text.size());
    return end == 0 ? std::nullopt : book_.counted(std::string(text.substr(0, end)), text.substr(end));
  }

  std::optional<std::string> known(std::string_view text) const {
    if (auto name = book_.name(text)) return name;
    return book_.piece(text);
  }

  /// A number at the head, in figures or as a word, and what stands behind it.
  std::pair<std::string, std::string_view> number_of(std::string_view item) const {
    const std::size_t end = std::min(item.find(' '), item.size());
    const std::string_view first = item.substr(0, end);
    const std::string_view rest = trimmed(item.substr(end));
    if (!first.empty() && first.find_first_not_of("0123456789") == first.npos && !is_unit_ahead(rest))
      return {std::string(first), rest};
    if (is_unit_ahead(rest)) return {"", item};
    if (const auto number = book_.number(first)) return {std::to_string(*number), rest};
    return {"", item};
  }

  static bool is_unit_ahead(std::string_view rest) {
    return length_unit(rest) > 0 || rest.substr(0, 2) == "g ";
  }

  /// How long the unit of a length is that stands at the head.
  static std::size_t length_unit(std::string_view text) {
    for (const std::string_view unit : {"mm", "cm", "мм", "см"})
      if (text.substr(0, unit.size()) == unit) return unit.size();
    return 0;
  }

  /// "8 mm" before a thing, or behind it after "of", "à": the size without the thing, and the thing.
  std::pair<std::string, std::string_view> size_of(std::string_view item) const {
    const std::size_t begin = item.find_first_of("0123456789");
    if (begin == item.npos) return {"", item};
    std::size_t end = begin;
    while (end < item.size() && (is_digit(item[end]) || item[end] == '.' || item[end] == ',')) ++end;
    std::size_t unit = end;
    while (unit < item.size() && item[unit] == ' ') ++unit;
    const std::size_t length = length_unit(item.substr(unit));
    if (length == 0) return {"", item};
    const std::string size =
        std::string(item.substr(begin, end - begin)) + " " + std::string(item.substr(unit, length));
    const std::string_view before = trimmed(item.substr(0, begin)),
                           behind = trimmed(item.substr(unit + length));
    if (before.empty()) return {size, behind};
    if (!behind.empty()) return {"", item};
    // A small word leads to the size: "eyes of 6 mm".
    const std::size_t blank = before.rfind(' ');
    const bool small = blank != before.npos && before.size() - blank <= 4 && !known(before);
    return {size, small ? trimmed(before.substr(0, blank)) : before};
  }

  const Phrasebook& book_;
  const Tongue& tongue_;
  const Measuring &from_, &to_;
};

} // namespace

HeaderWords header_in_words(std::string_view value, bool hook, const Phrasebook& book, const Tongue& tongue,
                            const Measuring& from, const Measuring& to) {
  const std::string_view own = trimmed(value);
  if (hook)
    if (const auto size = hook_size(own, from, to)) return {*size, true};
  return Header(book, tongue, from, to).list(own);
}

} // namespace whorl::writing
