#include "pattern/part_yarn.hpp"

#include "pattern/colour.hpp"
#include "pattern/sentence.hpp"
#include "pattern/text_words.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

constexpr std::string_view ends_of_clauses = ",;.:()[]!";

/// Behind the blanks, and the word for yarn, that follow a name.
std::uint32_t behind(const Sentence& sentence, std::uint32_t end) {
  const auto skip = [&](std::uint32_t at) {
    while (at < sentence.size() && sentence.text()[at] == ' ') ++at;
    return at;
  };
  const std::uint32_t next = skip(end), word = end_of_letters(sentence, next);
  const bool yarn = word > next && is_text_word(sentence.vocabulary,
                                                sentence.text().substr(next, word - next), TextWord::yarn);
  return yarn ? skip(word) : next;
}

bool ends_clause(const Sentence& sentence, std::uint32_t at) {
  return at >= sentence.size() || ends_of_clauses.find(sentence.text()[at]) != std::string_view::npos;
}

/// The yarn that a clause which begins at `at` is nothing but; `led`: behind a word that leads to it.
std::string yarn_of_clause(const Sentence& sentence, std::uint32_t at, bool led) {
  const auto name = yarn_name_at(sentence, at, led);
  return name && ends_clause(sentence, behind(sentence, name->end)) ? written_name(sentence, *name)
                                                                    : std::string();
}

std::string yarn_led_to(const Sentence& sentence, std::uint32_t at) {
  return leads_to_yarn(sentence, at)
             ? yarn_of_clause(sentence, behind(sentence, end_of_letters(sentence, at)), true)
             : std::string();
}

/// The letter of a listed yarn that a clause is nothing but: "A" of "(make 2, A)".
std::string listed_letter(const Sentence& sentence, std::uint32_t at, const std::vector<ListedYarn>& listed) {
  const std::string yarn = yarn_of_clause(sentence, at, true);
  const bool known = std::any_of(listed.begin(), listed.end(),
                                 [&yarn](const ListedYarn& other) { return other.letter == yarn; });
  return known ? yarn : std::string();
}

} // namespace

std::string yarn_of_heading(std::string_view note, const std::vector<ListedYarn>& listed,
                            const words::Vocabulary& vocabulary) {
  const Sentence sentence = look_up(note, 0, vocabulary);
  bool first = true;
  for (std::uint32_t at = 0; at < sentence.size(); at = std::max(end_of_letters(sentence, at), at + 1)) {
    const char c = sentence.text()[at];
    const bool letters = end_of_letters(sentence, at) > at;
    std::string yarn = !letters ? "" : yarn_led_to(sentence, at);
    if (yarn.empty() && letters && first) yarn = yarn_of_clause(sentence, at, false);
    if (yarn.empty() && letters && first) yarn = listed_letter(sentence, at, listed);
    if (!yarn.empty()) return yarn;
    first = ends_of_clauses.find(c) != std::string_view::npos || (c == ' ' && first);
  }
  return {};
}

std::string yarn_begun_in(std::string_view text, const words::Vocabulary& vocabulary) {
  const Sentence sentence = look_up(text, 0, vocabulary);
  for (std::uint32_t at = 0; at < sentence.size(); at = std::max(end_of_letters(sentence, at), at + 1))
    if (const std::string yarn = yarn_led_to(sentence, at); !yarn.empty()) return yarn;
  return {};
}

} // namespace whorl::pattern
