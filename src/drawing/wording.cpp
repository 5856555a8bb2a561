#include "drawing/wording.hpp"

#include "words/number_class.hpp"

#include <algorithm>
#include <optional>

namespace whorl::drawing {

namespace {

/// `{1}`, or `{1:stitch|stitches}`, the form of a word beside the number that fills gap 1.
struct Gap {
  std::size_t number = 0; ///< which value fills it, from 0
  std::string_view forms;
  std::size_t end = 0; ///< behind it in the text
};

std::optional<Gap> gap_at(std::string_view words, std::size_t at) {
  if (words[at] != '{' || at + 2 >= words.size() || words[at + 1] < '1' || words[at + 1] > '9')
    return std::nullopt;
  const auto number = static_cast<std::size_t>(words[at + 1] - '1');
  if (words[at + 2] == '}') return Gap{number, {}, at + 3};
  const std::size_t close = words.find('}', at);
  if (words[at + 2] != ':' || close == std::string_view::npos) return std::nullopt;
  return Gap{number, words.substr(at + 3, close - at - 3), close + 1};
}

/// The whole number that a value begins with; 0 if it begins with none.
std::uint64_t number_in(std::string_view value) {
  std::uint64_t number = 0;
  for (const char c : value.substr(0, 9)) {
    if (c < '0' || c > '9') break;
    number = number * 10 + static_cast<std::uint64_t>(c - '0');
  }
  return number;
}

std::string_view form(std::string_view forms, std::size_t wanted) {
  for (; wanted > 0; --wanted) {
    const std::size_t bar = forms.find('|');
    if (bar == std::string_view::npos) return forms;
    forms.remove_prefix(bar + 1);
  }
  return forms.substr(0, forms.find('|'));
}

words::NumberClasses classes_of(const Wording& wording) {
  const auto named = wording.find("number-classes");
  return named == wording.end() ? words::NumberClasses::one_other
                                : words::number_classes_named(named->second);
}

std::string_view filled(const Gap& gap, const Wording& wording, const std::string& value) {
  if (gap.forms.empty()) return value;
  return form(gap.forms, words::number_class(classes_of(wording), number_in(value)));
}

} // namespace

std::string say(const Wording& wording, std::string_view id, const std::vector<std::string>& with) {
  const auto found = wording.find(id);
  if (found == wording.end()) return std::string(id);
  const std::string& words = found->second;
  std::string out;
  for (std::size_t at = 0; at < words.size();) {
    const std::optional<Gap> gap = gap_at(words, at);
    if (!gap || gap->number >= with.size()) {
      out += words[at++];
      continue;
    }
    out += filled(*gap, wording, with[gap->number]);
    at = gap->end;
  }
  return out;
}

} // namespace whorl::drawing
