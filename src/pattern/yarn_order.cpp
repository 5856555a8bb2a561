#include "pattern/yarn_order.hpp"

#include "pattern/colour.hpp"
#include "pattern/text_words.hpp"
#include "words/ascii.hpp"

#include <algorithm>
#include <string_view>

namespace whorl::pattern {

namespace {

bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }

std::size_t end_of(std::string_view text, std::size_t at, bool (*is_it)(char)) {
  while (at < text.size() && is_it(text[at])) ++at;
  return at;
}

/// Capitals that stand for a yarn, or the name of a colour.
bool is_yarn(std::string_view word, const words::Vocabulary& vocabulary) {
  if (word.size() == 1 && word[0] >= 'A' && word[0] <= 'H') return true;
  if (word == "MC" || word == "CC") return true;
  std::string small(word);
  std::transform(small.begin(), small.end(), small.begin(), words::small);
  return is_colour(small, vocabulary);
}

/// Whether an item of a list may begin at `at`, or a stitch stands before it.
bool may_stand(std::string_view text, std::size_t at, const words::Vocabulary& vocabulary) {
  while (at > 0 && text[at - 1] == ' ') --at;
  std::size_t word = at;
  while (word > 0 && is_letter(text[word - 1])) --word;
  if (is_text_word(vocabulary, text.substr(word, at - word), TextWord::yarn_lead)) return false;
  return at == 0 || is_letter(text[at - 1]) ||
         std::string_view(",;([*:.").find(text[at - 1]) != std::string_view::npos;
}

/// Whether an item ends at `at`: the number before it counts no word that follows.
bool ends_item(std::string_view text, std::size_t at) {
  while (at < text.size() && text[at] == ' ') ++at;
  return at == text.size() || std::string_view(",;)](*=.").find(text[at]) != std::string_view::npos;
}

} // namespace

bool put_yarns_behind(std::string& text, const words::Vocabulary& vocabulary) {
  bool moved = false;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = end_of(text, at, is_letter);
    if (end == at) {
      ++at;
      continue;
    }
    const std::size_t number = end + 1;
    const bool blank = end < text.size() && text[end] == ' ';
    const std::size_t behind = blank ? end_of(text, number, words::is_digit) : end;
    if (blank && behind > number && is_yarn(std::string_view(text).substr(at, end - at), vocabulary) &&
        may_stand(text, at, vocabulary) && ends_item(text, behind)) {
      const std::string name = text.substr(at, end - at), count = text.substr(number, behind - number);
      text.replace(at, behind - at, count + " " + name);
      moved = true;
    }
    at = std::max(end, behind);
  }
  return moved;
}

} // namespace whorl::pattern
