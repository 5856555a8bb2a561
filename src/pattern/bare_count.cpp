#include "pattern/bare_count.hpp"

#include "pattern/aside.hpp"
#include "pattern/costs.hpp"
#include "pattern/figures.hpp"
#include "words/ascii.hpp"

#include <algorithm>

namespace whorl::pattern {

using words::ConceptClass;
using words::Word;
using words::WordKind;

namespace {

std::uint32_t trim_blanks(std::string_view text, std::uint32_t end) {
  while (end > 0 && text[end - 1] == ' ') --end;
  return end;
}

/// An increase or decrease, or what repeats the words before it: no number behind it counts its places.
bool closes_before_count(const Sentence& sentence, const Word& word) {
  if (word.kind != WordKind::phrase) return false;
  const std::string_view name = sentence.vocabulary.concepts[word.means].name;
  return word.means == sentence.times || name == "around" || name == "even" || name == "repeat" ||
         name == "all" || name == "every other" ||
         (is_work(sentence, word) && sort_of(sentence, word) != ConceptClass::stitch);
}

constexpr std::uint32_t longest_word = 40; ///< bytes

/// Where a word of that sort begins that ends at `end`; `end` where there is none.
template <typename Sort>
std::uint32_t begin_of_word(const Sentence& sentence, std::uint32_t end, const Sort& is_sort) {
  for (std::uint32_t at = end > longest_word ? end - longest_word : 0; at < end; ++at)
    for (const Word& word : words_at(sentence, at))
      if (word.end == end && is_sort(word)) return at;
  return end;
}

std::uint32_t before_digits(const Sentence& sentence, std::uint32_t end) {
  while (end > 0 && words::is_digit(sentence.text()[end - 1])) --end;
  return trim_separators(sentence.text(), 0, end);
}

/// "inc in every 3rd | 24", "1 aug. sur 3 | 24": the number that ends there, and perhaps the sign of an
/// ordinal, stands behind the word for every.
bool is_behind_every(const Sentence& sentence, std::uint32_t end) {
  const words::Concept every = words::find_concept(sentence.vocabulary, "every");
  const words::Concept ordinal = words::find_concept(sentence.vocabulary, "ordinal");
  const auto is = [](words::Concept wanted) {
    return [wanted](const Word& word) { return word.kind == WordKind::phrase && word.means == wanted; };
  };
  const auto is_number = [](const Word& word) { return word.kind == WordKind::number; };
  const auto is_place = [&sentence](const Word& word) {
    const ConceptClass sort = sort_of(sentence, word);
    return sort == ConceptClass::place || sort == ConceptClass::stitch;
  };
  const std::uint32_t place = trim_separators(sentence.text(), 0, begin_of_word(sentence, end, is_place));
  const std::uint32_t behind =
      trim_separators(sentence.text(), 0, begin_of_word(sentence, place, is(ordinal)));
  const std::uint32_t number = begin_of_word(sentence, behind, is_number);
  if (number == behind) return false;
  const std::uint32_t before = trim_separators(sentence.text(), 0, number);
  return begin_of_word(sentence, before, is(every)) != before;
}

/// "inc x 6 |", "inc in each st |": work that is told to its end, by a number of times or its places.
bool is_told_to_end(const Sentence& sentence, std::uint32_t end) {
  const auto is_end = [&sentence](const Word& word) { return closes_before_count(sentence, word); };
  if (begin_of_word(sentence, end, is_end) != end || is_behind_every(sentence, end)) return true;
  const auto is_times = [&sentence](const Word& word) {
    return word.kind == WordKind::phrase && word.means == sentence.times;
  };
  const std::uint32_t times = before_digits(sentence, end);
  if (times != end && begin_of_word(sentence, times, is_times) != times) return true;
  const auto is_place = [&sentence](const Word& word) {
    return sort_of(sentence, word) == ConceptClass::place;
  };
  const std::uint32_t place = begin_of_word(sentence, end, is_place);
  const words::Concept each = words::find_concept(sentence.vocabulary, "each");
  const std::uint32_t before = trim_separators(sentence.text(), 0, place);
  const auto is_each = [each](const Word& word) {
    return word.kind == WordKind::phrase && word.means == each;
  };
  return begin_of_word(sentence, before, is_each) != before;
}

/// "6 sc | 6 sts": a stitch ends there that has its own number, so that one behind it counts the round.
bool is_counted_stitch(const Sentence& sentence, std::uint32_t end) {
  const auto is_stitch = [&sentence](const Word& word) {
    return is_work(sentence, word) && sort_of(sentence, word) == ConceptClass::stitch;
  };
  const std::uint32_t stitch = begin_of_word(sentence, end, is_stitch);
  const std::uint32_t number = trim_blanks(sentence.text(), stitch);
  return stitch != end && number > 0 && words::is_digit(sentence.text()[number - 1]);
}

/// "6 sc in MR | 6 sts": what the stitches go into ends there.
bool ends_in_ring(const Sentence& sentence, std::uint32_t end) {
  const auto is_ring = [&sentence](const Word& word) {
    return sort_of(sentence, word) == ConceptClass::start;
  };
  return begin_of_word(sentence, end, is_ring) != end;
}

/// Before "sts" at the end of a line whose work before the number is told to its end: "dec, dec 2 sts".
/// `told`: a word for counts behind it says so.
std::uint32_t before_unit(const Sentence& sentence, std::uint32_t end, bool told) {
  for (std::uint32_t at = end > longest_word ? end - longest_word : 0; at < end; ++at)
    for (const Word& word : words_at(sentence, at)) {
      if (word.end != end || sort_of(sentence, word) != ConceptClass::place || at == 0) continue;
      const std::uint32_t number = trim_separators(sentence.text(), 0, at);
      if (!sentence.vocabulary.blanks_between_words || told) return number;
      const std::uint32_t work = before_digits(sentence, number);
      if (is_told_to_end(sentence, work) || is_counted_stitch(sentence, work) || ends_in_ring(sentence, work))
        return number;
    }
  return end;
}

} // namespace

StatedCount last_sentence_count(const Sentence& sentence, const std::vector<stitch::StitchKind>& kinds) {
  const Search search{sentence, kinds, concepts_of(sentence.vocabulary)};
  const std::string_view text = sentence.text();
  const std::uint32_t last = trim_separators(text, 0, sentence.size());
  for (std::uint32_t at = last; at-- > 2;) {
    if (number_at(sentence, at) == nullptr || text[at - 1] != ' ') continue;
    const std::uint32_t before = trim_blanks(text, at);
    StatedCount count{{}, at, sentence.size()};
    const std::uint32_t end = read_figures(search, at, count.stated);
    const bool whole = before > 0 && text[before - 1] == '.' && end >= last;
    if (whole && count.stated.size() == 1 && count.stated.front().unit != Unit::any) return count;
    return {};
  }
  return {};
}

namespace {

/// Before the "total" of "sc, inc total 18"; `begin` where no such word stands before a number.
std::uint32_t before_count_word(const Sentence& sentence, std::uint32_t begin) {
  const words::Concept total = words::find_concept(sentence.vocabulary, "total");
  const words::Concept count = words::find_concept(sentence.vocabulary, "count word");
  const std::uint32_t end = trim_blanks(sentence.text(), begin);
  for (std::uint32_t at = end > longest_word ? end - longest_word : 0; at < end; ++at) {
    bool other = false; // "そのまま" is no "のまま"
    for (const Word& word : words_at(sentence, at)) {
      if (word.kind != WordKind::phrase || word.end != end) continue;
      if (word.means == total || word.means == count) return at;
      other = other || sort_of(sentence, word) != ConceptClass::filler;
    }
    if (other && !sentence.vocabulary.blanks_between_words) return begin;
  }
  return begin;
}

/// Before the words that only end the piece, "6 dec 6 | and close": `end` where none stand there.
std::uint32_t before_endings(const Sentence& sentence, std::uint32_t end) {
  const words::Concept join = words::find_concept(sentence.vocabulary, "join");
  const words::Concept count = words::find_concept(sentence.vocabulary, "count word");
  bool ends = false;
  const auto closes = [&](const Word& word) {
    if (const Word* tells = word_meaning(sentence, word.begin, count); tells && tells->end == word.end)
      return false;
    const ConceptClass sort = sort_of(sentence, word);
    const bool phrase = word.kind == WordKind::phrase;
    const bool ending = phrase && (sort == ConceptClass::ending || word.means == join);
    ends = ends || ending;
    return ending || sort == ConceptClass::filler || word.means == sentence.conjunction ||
           (ends && phrase && sentence.vocabulary.concepts[word.means].name == "sl st");
  };
  std::uint32_t last = end;
  for (std::uint32_t begin = end;; last = begin) {
    const std::uint32_t behind = trim_separators(sentence.text(), 0, last);
    begin = begin_of_word(sentence, behind, closes);
    if (begin == behind) return ends ? behind : end;
  }
}

/// "increase in each, twelve": a number in words that a comma sets off at the end.
StatedCount count_in_words(const Sentence& sentence, std::uint32_t last) {
  constexpr std::uint32_t least = 5; // "twice", "two in one"
  for (const Word& word : sentence.lattice.words) {
    if (word.kind != WordKind::number || word.end != last || word.number < least || word.begin == 0) continue;
    const std::string_view text = sentence.text();
    const std::uint32_t mark = trim_blanks(text, word.begin);
    if (words::is_digit(text[word.begin]) || mark == 0 || (text[mark - 1] != ',' && text[mark - 1] != ';'))
      continue;
    Stated stated;
    stated.count = word.number;
    stated.span = sentence.span(word.begin, word.end);
    return {{stated}, word.begin, sentence.size(), false};
  }
  return {};
}

} // namespace

StatedCount bare_count(const Sentence& sentence) {
  const std::uint32_t size = trim_separators(sentence.text(), 0, sentence.size());
  const std::uint32_t last = before_endings(sentence, size);
  if (StatedCount told = count_in_words(sentence, last); !told.stated.empty()) return told;
  const std::uint32_t told = before_count_word(sentence, last); // "6 inc 12 in total"
  const std::uint32_t end = before_unit(sentence, trim_blanks(sentence.text(), told), told != last);
  std::uint32_t begin = end;
  while (begin > 0 && words::is_digit(sentence.text()[begin - 1])) --begin;
  const Word* number = begin == end ? nullptr : number_at(sentence, begin);
  const bool glued =
      sentence.vocabulary.blanks_between_words && begin > 0 && sentence.text()[begin - 1] != ' ';
  if (number == nullptr || begin == 0 || glued) return {};
  Stated stated;
  stated.count = number->number;
  stated.span = sentence.span(begin, end);
  const std::uint32_t first = before_count_word(sentence, begin);
  return {{stated}, first, last == size ? sentence.size() : last, first != begin || told != last};
}

namespace {

/// "inc x 6 | 12 sts": how often stands before the count.
bool is_behind_times(const Sentence& sentence, std::uint32_t end) {
  std::uint32_t number = end;
  while (number > 0 && words::is_digit(sentence.text()[number - 1])) --number;
  if (number == end) return false;
  const std::uint32_t times = trim_separators(sentence.text(), 0, number);
  for (std::uint32_t at = times > 20 ? times - 20 : 0; at < times; ++at)
    if (const Word* word = word_meaning(sentence, at, sentence.times); word != nullptr && word->end == times)
      return true;
  return false;
}

} // namespace

bool counts_unnumbered_list(const Sentence& sentence, std::uint32_t number) {
  constexpr int least = 4;
  int steps = 0;
  for (std::uint32_t at = 0; at < number;) {
    const WordsAt words = words_at(sentence, at);
    if (words.empty()) {
      ++at;
      continue;
    }
    if (words.first->kind == WordKind::number) return false;
    steps += is_work(sentence, *words.first);
    at = std::max(words.first->end, at + 1);
  }
  return steps >= least;
}

bool may_hide_count(const Sentence& sentence, std::uint32_t number) {
  const std::uint32_t end = trim_separators(sentence.text(), 0, number);
  if (end == 0) return false;
  const char last = sentence.text()[end - 1];
  if (counts_unnumbered_list(sentence, number)) return true;
  const Word* figure = number_at(sentence, number);
  const std::uint32_t unit = figure == nullptr ? number : skip_blanks(sentence.text(), figure->end);
  const WordsAt units = words_at(sentence, unit);
  const bool of_places = std::any_of(units.begin(), units.end(), [&](const Word& word) {
    return sort_of(sentence, word) == ConceptClass::place;
  });
  if (of_places && is_counted_stitch(sentence, end)) return true;
  if (last == ')' || last == ']' || last == '*' || is_behind_times(sentence, end) ||
      is_behind_every(sentence, end))
    return true;
  const auto hides = [&](const Word& word) {
    if (word.kind == words::WordKind::number)
      return !words::is_digit(sentence.text()[word.begin]); // "every third"
    if (word.kind != words::WordKind::phrase) return false;
    const std::string_view name = sentence.vocabulary.concepts[word.means].name;
    return sort_of(sentence, word) == ConceptClass::start || name == "every other" ||
           sort_of(sentence, word) == ConceptClass::place || word.means == sentence.times ||
           name == "repeat" || name == "around" || name == "even" || name == "all" || name == "each" ||
           name == "sl st" || name == "turn" || name == "join" || name == "double" || name == "together" ||
           name == "ordinal" || name == "next" ||
           (is_work(sentence, word) && sort_of(sentence, word) != ConceptClass::stitch);
  };
  const words::Concept each = words::find_concept(sentence.vocabulary, "each");
  std::uint32_t behind_each = end; // "2 sc in each sc 12"
  for (std::uint32_t at = 0; at < end; ++at) {
    if (const Word* word = word_meaning(sentence, at, each); word != nullptr)
      behind_each = skip_blanks(sentence.text(), word->end);
    for (const Word& word : words_at(sentence, at))
      if (word.end == end && (hides(word) || at == behind_each)) return true;
  }
  return false;
}

} // namespace whorl::pattern
