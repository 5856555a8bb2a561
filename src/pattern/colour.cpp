#include "pattern/colour.hpp"

#include "pattern/text_words.hpp"
#include "words/ascii.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

using words::ConceptClass;
using words::Word;
using words::WordKind;

using words::is_digit;
using words::is_folded_letter;

std::string_view letters_at(const Sentence& sentence, std::uint32_t at) {
  return sentence.text().substr(std::min<std::size_t>(at, sentence.size()),
                                end_of_letters(sentence, at) - at);
}

/// Where the next word begins: behind blanks or a hyphen.
std::uint32_t next_word(const Sentence& sentence, std::uint32_t at) {
  if (at < sentence.size() && sentence.text()[at] == '-') return at + 1;
  return skip_blanks(sentence.text(), at);
}

/// "A" to "H", "MC", "CC" in capitals: letters that stand for yarns.
bool is_yarn_letter(const Sentence& sentence, std::uint32_t at, std::string_view word) {
  if (word.empty() || !sentence.folded.capital[at]) return false;
  return (word.size() == 1 && word[0] >= 'a' && word[0] <= 'h') || word == "mc" || word == "cc";
}

/// Behind the digit of "C1", "C2": colours that are numbered.
std::uint32_t behind_digit(const Sentence& sentence, std::uint32_t end, std::string_view letters) {
  const std::string_view text = sentence.text();
  const bool digit = letters == "c" && end < text.size() && is_digit(text[end]);
  const bool more = end + 1 < text.size() && (is_digit(text[end + 1]) || is_folded_letter(text[end + 1]));
  return digit && !more ? end + 1 : end;
}

/// "yarn A", "colour 2" behind its first word.
std::uint32_t end_of_numbered(const Sentence& sentence, std::uint32_t at) {
  const std::uint32_t next = next_word(sentence, at);
  const std::string_view word = letters_at(sentence, next);
  if (is_yarn_letter(sentence, next, word)) return next + static_cast<std::uint32_t>(word.size());
  std::uint32_t end = next;
  while (end < sentence.size() && is_digit(sentence.text()[end])) ++end;
  return end == next || end > next + 1 ? at : end;
}

constexpr std::uint64_t colour_bit = std::uint64_t{1} << static_cast<unsigned>(TextWord::colour);
constexpr std::uint64_t shade_bit = std::uint64_t{1} << static_cast<unsigned>(TextWord::shade);
constexpr std::uint64_t yarn_bit = std::uint64_t{1} << static_cast<unsigned>(TextWord::yarn);

/// "dark brown", "vert foncé" from `at`; `at` if no colour stands there.
std::uint32_t end_of_colour(const Sentence& sentence, std::uint32_t at) {
  std::uint32_t end = at;
  for (std::uint32_t next = at;;) {
    const std::string_view word = letters_at(sentence, next);
    const std::uint64_t kinds = text_words(sentence.vocabulary, word);
    if ((kinds & (colour_bit | shade_bit)) == 0) return end;
    next += static_cast<std::uint32_t>(word.size());
    if ((kinds & colour_bit) != 0 || end != at) end = next;
    const std::uint32_t behind = next_word(sentence, next);
    if (behind == next) return end;
    next = behind;
  }
}

/// Behind "yarn", "wool" that follows a name.
std::uint32_t behind_yarn_word(const Sentence& sentence, std::uint32_t end) {
  const std::uint32_t next = next_word(sentence, end);
  const std::string_view word = letters_at(sentence, next);
  return is_text_word(sentence.vocabulary, word, TextWord::yarn)
             ? next + static_cast<std::uint32_t>(word.size())
             : end;
}

/// What stands behind the words of a mark.
struct Next {
  bool ends = false; ///< nothing, or a mark that ends a clause
  bool colon = false;
  bool works = false;    ///< a number, a stitch, a passage or loops
  bool stitches = false; ///< "16 sc", "sc 16"
};

bool is_stitch_at(const Sentence& sentence, std::uint32_t at) {
  const WordsAt words = words_at(sentence, at);
  return std::any_of(words.begin(), words.end(), [&](const Word& word) { return is_work(sentence, word); });
}

Next next_of(const Sentence& sentence, std::uint32_t end, std::uint32_t stop) {
  Next next;
  const std::uint32_t at = skip_blanks(sentence.text(), end);
  if (at >= stop) return next.ends = true, next;
  const char mark = sentence.text()[at];
  next.colon = mark == ':';
  next.works = sentence.brackets.at[at] != no_bracket;
  next.ends = !next.works && (is_separator(mark) || mark == ')' || mark == ']' || mark == '*' || mark == '!');
  for (const Word& word : words_at(sentence, at)) {
    const ConceptClass sort = sort_of(sentence, word);
    next.works = next.works || word.kind == WordKind::number || is_work(sentence, word) ||
                 sort == ConceptClass::loops || sort == ConceptClass::start || sort == ConceptClass::filler ||
                 sort == ConceptClass::ending;
    next.ends = next.ends || word.means == sentence.conjunction;
    next.stitches =
        next.stitches || is_work(sentence, word) ||
        (word.kind == WordKind::number && is_stitch_at(sentence, skip_blanks(sentence.text(), word.end)));
  }
  return next;
}

bool is_in(const Sentence& sentence, std::uint32_t at) {
  return word_meaning(sentence, at, sentence.in) != nullptr;
}

std::optional<YarnMark> made(const YarnName& name, std::uint32_t end, const Next& next, bool clause,
                             bool loose) {
  if (loose && next.ends && !next.colon) return YarnMark{name, end, true};
  if (!clause || !(next.works || next.ends)) return std::nullopt;
  return YarnMark{name, end, false};
}

/// "(white)", "[A]": nothing else in the bracket.
std::optional<YarnMark> in_brackets(const Sentence& sentence, const Bracket& bracket, bool loose,
                                    std::uint32_t stop) {
  if (bracket.kind == Passage::list || bracket.kind == Passage::slashes) return std::nullopt;
  std::uint32_t at = bracket.inner_begin;
  if (leads_to_yarn(sentence, at)) at = skip_blanks(sentence.text(), end_of_letters(sentence, at));
  const auto name = yarn_name_at(sentence, at, true);
  if (!name ||
      trim_separators(sentence.text(), at, bracket.inner_end) > behind_yarn_word(sentence, name->end))
    return std::nullopt;
  const Next next = next_of(sentence, bracket.end, stop);
  if (loose && next.ends) return YarnMark{*name, bracket.end, true};
  return next.works || next.ends ? std::optional(YarnMark{*name, bracket.end, false}) : std::nullopt;
}

/// "with A", "in dark brown".
std::optional<YarnMark> behind_lead(const Sentence& sentence, std::uint32_t at, bool clause, bool loose,
                                    std::uint32_t stop) {
  std::uint32_t next = skip_blanks(sentence.text(), end_of_letters(sentence, at));
  auto name = yarn_name_at(sentence, next, true);
  const std::size_t article = end_of_text_word(sentence.vocabulary, sentence.text(), next, TextWord::article);
  if (!name && article != next)
    name = yarn_name_at(sentence, skip_blanks(sentence.text(), static_cast<std::uint32_t>(article)), true);
  if (!name) return std::nullopt;
  const std::string_view word = sentence.text().substr(name->begin, name->end - name->begin);
  if (word == "mc" && is_in(sentence, at)) return std::nullopt; // a magic circle
  const std::uint32_t end = behind_yarn_word(sentence, name->end);
  return made(*name, end, next_of(sentence, end, stop), clause, loose);
}

/// "white:", "white 3 sc", "B 3 sc", "3 sc white".
std::optional<YarnMark> alone(const Sentence& sentence, std::uint32_t at, bool clause, bool loose,
                              std::uint32_t stop) {
  const auto name = yarn_name_at(sentence, at, true);
  if (!name) return std::nullopt;
  const std::uint32_t end = behind_yarn_word(sentence, name->end);
  const Next next = next_of(sentence, end, stop);
  const bool letter = !yarn_name_at(sentence, at, false);
  const bool begins = clause && (next.colon || next.stitches);
  if (letter && !begins && !(loose && next.ends)) return std::nullopt;
  const bool heads = at == skip_blanks(sentence.text(), 0) && sentence.text().substr(end, 1) == ",";
  if (!loose && next.ends && !next.colon && !heads) return std::nullopt;
  return made(*name, end, next, clause, loose);
}

} // namespace

std::optional<YarnName> yarn_name_at(const Sentence& sentence, std::uint32_t at, bool led) {
  const std::string_view word = letters_at(sentence, at);
  if (word.empty() || (at > 0 && is_folded_letter(sentence.text()[at - 1]))) return std::nullopt;
  const auto behind = at + static_cast<std::uint32_t>(word.size());
  if (is_text_word(sentence.vocabulary, word, TextWord::yarn)) {
    const std::uint32_t end = end_of_numbered(sentence, behind);
    if (end == behind) return std::nullopt;
    const bool letter = !is_digit(sentence.text()[end - 1]);
    return YarnName{letter ? next_word(sentence, behind) : at, end};
  }
  if (const std::uint32_t end = end_of_colour(sentence, at); end != at) return YarnName{at, end};
  if (led && is_yarn_letter(sentence, at, word)) return YarnName{at, behind_digit(sentence, behind, word)};
  return std::nullopt;
}

std::optional<YarnName> find_yarn_name(const Sentence& sentence, std::uint32_t begin, std::uint32_t end,
                                       bool letter_first) {
  for (std::uint32_t at = begin; at < end; at = std::max(end_of_letters(sentence, at), at + 1))
    if (const auto name = yarn_name_at(sentence, at, letter_first || at > 0)) return name;
  return std::nullopt;
}

std::string written_name(const Sentence& sentence, const YarnName& name) {
  std::string text(sentence.text().substr(name.begin, name.end - name.begin));
  if (text.size() <= 2)
    for (char& c : text) c = static_cast<char>(c >= 'a' && c <= 'z' ? c - ('a' - 'A') : c);
  return text;
}

bool leads_to_yarn(const Sentence& sentence, std::uint32_t at) {
  return word_meaning(sentence, at, sentence.with) != nullptr || is_in(sentence, at) ||
         is_text_word(sentence.vocabulary, letters_at(sentence, at), TextWord::yarn_lead);
}

std::optional<YarnMark> yarn_mark_at(const Sentence& sentence, std::uint32_t at, bool clause, bool loose,
                                     std::uint32_t stop) {
  if (const std::int32_t index = sentence.brackets.at[at]; index != no_bracket)
    return in_brackets(sentence, sentence.brackets.all[static_cast<std::size_t>(index)], loose, stop);
  if (!is_folded_letter(sentence.text()[at])) return std::nullopt;
  if (leads_to_yarn(sentence, at)) return behind_lead(sentence, at, clause, loose, stop);
  return alone(sentence, at, clause, loose, stop);
}

bool is_colour(std::string_view text, const words::Vocabulary& vocabulary) {
  std::uint64_t kinds = 0, any = 0;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = std::min(text.find_first_of(" -", at), text.size());
    kinds = text_words(vocabulary, text.substr(at, end - at));
    if ((kinds & (colour_bit | shade_bit)) == 0) return false;
    any |= kinds;
    at = end + 1;
  }
  return (any & colour_bit) != 0;
}

bool may_name_yarn(const Sentence& sentence) {
  for (std::uint32_t at = 0; at < sentence.size();) {
    const std::string_view word = letters_at(sentence, at);
    if ((text_words(sentence.vocabulary, word) & (colour_bit | yarn_bit)) != 0 ||
        is_yarn_letter(sentence, at, word))
      return true;
    at += word.empty() ? 1 : static_cast<std::uint32_t>(word.size());
  }
  return false;
}

} // namespace whorl::pattern
