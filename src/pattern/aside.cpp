#include "pattern/aside.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

using words::ConceptClass;
using words::Word;
using words::WordKind;

std::uint32_t behind_word(const Sentence& sentence, std::uint32_t at) {
  const WordsAt words = words_at(sentence, at);
  return skip_blanks(sentence.text(), words.empty() ? at + 1 : std::max(words.first->end, at + 1));
}

/// "(…) 6", "(…) 6 times", but not "(red) 6 sc".
bool is_repeat_number(const Sentence& sentence, const Word& number) {
  const std::uint32_t next = skip_blanks(sentence.text(), number.end);
  if (next >= sentence.size() || is_separator(sentence.text()[next])) return true;
  const WordsAt words = words_at(sentence, next);
  return std::any_of(words.begin(), words.end(), [&](const Word& word) {
    if (word.kind != WordKind::phrase) return word.kind == WordKind::mark;
    const std::string_view name = sentence.vocabulary.concepts[word.means].name;
    return word.means == sentence.times || name == "more" || name == "total";
  });
}

/// Whether something behind a bracket repeats it or says where it goes.
bool is_used(const Sentence& sentence, std::uint32_t end) {
  std::uint32_t at = skip_blanks(sentence.text(), end);
  if (at < sentence.size() && is_separator(sentence.text()[at])) {
    const WordsAt words = words_at(sentence, skip_blanks(sentence.text(), at + 1));
    return std::any_of(words.begin(), words.end(), [&](const Word& word) {
      return word.kind == WordKind::phrase && sentence.vocabulary.concepts[word.means].name == "repeat";
    });
  }
  const WordsAt words = words_at(sentence, at);
  return std::any_of(words.begin(), words.end(), [&](const Word& word) {
    if (word.kind == WordKind::number) return is_repeat_number(sentence, word);
    if (word.mark == '*') return sentence.brackets.stars[at] == StarRole::times;
    if (word.kind != WordKind::phrase) return false;
    const std::string_view name = sentence.vocabulary.concepts[word.means].name;
    return word.means == sentence.times || name == "around" || name == "repeat" || name == "in" ||
           name == "more";
  });
}

/// What a bracket holds, by its words.
struct Content {
  bool counted = false;
  bool unknown = false;
  bool works = false;     ///< names a stitch
  bool instructs = false; ///< names a stitch, a ring or loops
};

Content content_of(const Sentence& sentence, const Bracket& bracket) {
  Content content;
  for (std::uint32_t at = bracket.inner_begin; at < bracket.inner_end; at = behind_word(sentence, at))
    for (const Word& word : words_at(sentence, at)) {
      content.counted =
          content.counted || (word.kind == WordKind::phrase &&
                              (word.means == sentence.counted || word.means == sentence.not_counted));
      content.unknown = content.unknown || word.kind == WordKind::unknown;
      content.works = content.works || is_work(sentence, word);
      const ConceptClass sort = sort_of(sentence, word);
      content.instructs = content.instructs || is_work(sentence, word) || word.kind == WordKind::number ||
                          sort == ConceptClass::start || sort == ConceptClass::loops;
    }
  return content;
}

/// "(6 petals)": a number of what is no stitch.
bool counts_others(const Sentence& sentence, const Bracket& bracket, const Content& content) {
  const Word* number = number_at(sentence, bracket.inner_begin);
  if (number == nullptr || content.works) return false;
  const std::uint32_t next = skip_blanks(sentence.text(), number->end);
  const WordsAt words = words_at(sentence, next);
  return next > number->end && !words.empty() && words.first->kind == WordKind::unknown;
}

/// "(6 bobbles)" beside the count of the whole.
bool counts_special(const Sentence& sentence, const Bracket& bracket) {
  const Word* number = number_at(sentence, bracket.inner_begin);
  if (number == nullptr) return false;
  for (const Word& word : words_at(sentence, skip_blanks(sentence.text(), number->end))) {
    if (word.kind != WordKind::phrase || word.end != bracket.inner_end) continue;
    const std::string_view name = sentence.vocabulary.concepts[word.means].name;
    if (name == "bo" || name == "puff" || name == "pc" || name == "picot") return true;
  }
  return false;
}

/// "(l8)": a count whose figures were scanned badly.
bool is_scanned_count(const Sentence& sentence, const Bracket& bracket) {
  const std::string_view text =
      sentence.text().substr(bracket.inner_begin, bracket.inner_end - bracket.inner_begin);
  return text.find(' ') == std::string_view::npos &&
         text.find_first_of("0123456789") != std::string_view::npos;
}

bool begins_with_work(const Sentence& sentence, const Bracket& bracket) {
  const WordsAt words = words_at(sentence, bracket.inner_begin);
  return std::any_of(words.begin(), words.end(), [&](const Word& word) {
    const ConceptClass sort = sort_of(sentence, word);
    return is_work(sentence, word) || word.kind == WordKind::number || sort == ConceptClass::start ||
           sort == ConceptClass::loops;
  });
}

/// "(bobble: 5 dc in the same st)": what a stitch is.
bool defines(const Sentence& sentence, const Bracket& bracket) {
  const std::uint32_t next = behind_word(sentence, bracket.inner_begin);
  return next < bracket.inner_end && (sentence.text()[next] == ':' || sentence.text()[next] == '=');
}

} // namespace

bool is_aside(const Sentence& sentence, const Bracket& bracket) {
  if (bracket.kind != Passage::round && bracket.kind != Passage::square) return false;
  if (bracket.inner_begin >= bracket.inner_end) return false;
  if (defines(sentence, bracket)) return true;
  if (is_used(sentence, bracket.end)) return false;
  const Content content = content_of(sentence, bracket);
  if (content.counted) return true;
  if (counts_others(sentence, bracket, content) || counts_special(sentence, bracket)) return true;
  if (begins_with_work(sentence, bracket)) return false;
  return !is_scanned_count(sentence, bracket) && (content.unknown || !content.instructs);
}

} // namespace whorl::pattern
