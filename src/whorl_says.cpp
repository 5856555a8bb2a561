#include "whorl_content.hpp"

#include "words/ascii.hpp"
#include "words/fold.hpp"

#include <algorithm>
#include <optional>

namespace whorl {
namespace {

/// What stands between marks: "a|b", from `from` on; `from` goes behind it.
std::string_view next(std::string_view all, std::string_view mark, std::size_t& from) {
  const std::size_t end = std::min(all.find(mark, from), all.size());
  const std::string_view part = all.substr(from, end - from);
  from = end + mark.size();
  return part;
}

/// Where words stand in a folded text, as words of their own, from `at` on.
std::size_t find_words(std::string_view text, std::string_view words, std::size_t at) {
  for (; (at = text.find(words, at)) != std::string_view::npos; ++at) {
    const bool begins = at == 0 || !words::is_folded_letter(text[at - 1]);
    const std::size_t end = at + words.size();
    if (begins && (end == text.size() || !words::is_folded_letter(text[end]))) return at;
  }
  return at;
}

constexpr std::string_view others = " \u2026 ";

/// What stands between the words of "from … up" in a sentence that has them in this order; all of it where
/// there is one part.
std::optional<std::string> between(std::string_view sentence, std::string_view words) {
  std::size_t at = 0, begin = 0, end = 0;
  for (std::size_t from = 0; from < words.size();) {
    const std::string_view some = next(words, others, from);
    const std::size_t found = find_words(sentence, some, at);
    if (found == std::string_view::npos) return {};
    begin = at;
    end = found;
    at = found + some.size();
  }
  return std::string(sentence.substr(begin, end - begin));
}

/// For every sentence of a text and every one of the phrases under an id: what stands between, if it says it.
std::vector<std::string> all_between(const std::string& text, const drawing::Wording& wording,
                                     std::string_view id) {
  std::vector<std::string> said;
  const auto found = wording.find(id);
  if (found == wording.end()) return said;
  const std::string folded = words::fold(text).text;
  const std::string_view all = found->second;
  for (std::size_t from = 0; from < folded.size();) {
    const std::string_view sentence = next(folded, ". ", from);
    for (std::size_t at = 0; at < all.size();)
      if (auto some = between(sentence, next(all, "|", at))) said.push_back(std::move(*some));
  }
  return said;
}

/// Some words and nothing else: no comma, no figure.
bool is_plain(std::string_view text) {
  return std::all_of(text.begin(), text.end(), [](char c) { return c == ' ' || words::is_folded_letter(c); });
}

} // namespace

bool says(const std::string& text, const drawing::Wording& wording, std::string_view id) {
  return !all_between(text, wording, id).empty();
}

std::string said_between(const std::string& text, const drawing::Wording& wording, std::string_view id) {
  constexpr std::size_t longest = 24;
  std::string shortest;
  for (const std::string& some : all_between(text, wording, id)) {
    const std::size_t begin = some.find_first_not_of(' ');
    if (begin == std::string::npos || !is_plain(some)) continue;
    const std::string words = some.substr(begin, some.find_last_not_of(' ') + 1 - begin);
    if (words.size() <= longest && (shortest.empty() || words.size() < shortest.size())) shortest = words;
  }
  return shortest;
}

} // namespace whorl
