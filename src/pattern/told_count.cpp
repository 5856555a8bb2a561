#include "pattern/told_count.hpp"

#include <algorithm>

namespace whorl::pattern {

using words::ConceptClass;
using words::Word;
using words::WordKind;

bool begins_sentence(const Search& search, std::uint32_t at) {
  const auto& capital = search.sentence.folded.capital;
  return at + 1 < search.sentence.size() && capital[at] && !capital[at + 1];
}

bool is_behind_point(const Search& search, std::uint32_t at) {
  return at > 0 && search.sentence.text()[at - 1] == '.' && begins_sentence(search, next_word(search, at));
}

bool ends_sentence(const Search& search, std::uint32_t at) {
  const std::uint32_t next = next_word(search, at);
  return next >= search.sentence.size() || search.sentence.text()[next] == '.' ||
         search.sentence.text()[next] == '!' || is_behind_point(search, at);
}

bool counts_stitches(const StatedCount& count) {
  return std::any_of(count.stated.begin(), count.stated.end(),
                     [](const Stated& s) { return s.unit == Unit::stitches; });
}

bool only_closes(const Search& search, std::uint32_t at) {
  const Concepts& c = search.concepts;
  bool closes = false;
  for (at = next_word(search, at); at < search.sentence.size(); at = next_word(search, at)) {
    if (is_separator(search.sentence.text()[at])) {
      ++at;
      continue;
    }
    const WordsAt words = words_at(search.sentence, at);
    const auto* word = std::find_if(words.begin(), words.end(), [&](const Word& w) {
      const bool ends = w.kind == WordKind::phrase && (w.means == c.join || w.means == c.slip ||
                                                       sort_of(search.sentence, w) == ConceptClass::ending);
      closes = closes || ends;
      return ends || w.means == c.conjunction || sort_of(search.sentence, w) == ConceptClass::filler;
    });
    if (word == words.end()) return false;
    at = word->end;
  }
  return closes;
}

namespace {

/// Whether a word may stand in a sentence that only tells how many stitches there are: "men heeft nu 12 v.".
bool may_tell_count(const Search& search, const Word& word) {
  if (word.kind == WordKind::unknown) return true;
  if (word.kind != WordKind::phrase) return word.mark == '\'';
  if (sort_of(search.sentence, word) == ConceptClass::filler) return true;
  const std::string_view name = search.sentence.vocabulary.concepts[word.means].name;
  return name == "remain" || name == "count word" || name == "total" || name == "and" || name == "with";
}

/// Behind the words that may lead to a count, at least one of them no word of the craft; `at` if others stand
/// there.
std::uint32_t behind_telling(const Search& search, std::uint32_t at) {
  constexpr int most = 6;
  bool told = false;
  std::uint32_t place = at;
  for (int words = 0; words < most && number_at(search.sentence, place) == nullptr; ++words) {
    const WordsAt there = words_at(search.sentence, place);
    const auto* word =
        std::find_if(there.begin(), there.end(), [&](const Word& w) { return may_tell_count(search, w); });
    if (word == there.end()) return at;
    told = told || word->kind == WordKind::unknown;
    place = next_word(search, word->end);
  }
  return told && number_at(search.sentence, place) != nullptr ? place : at;
}

} // namespace

StatedCount told_in_words(const Search& search, std::uint32_t at) {
  StatedCount count{{}, at, at};
  const std::uint32_t figures = behind_telling(search, at);
  if (figures == at) return count;
  count.end = read_figures(search, figures, count.stated);
  std::uint32_t rest = next_word(search, count.end);
  for (int words = 0; words < 2 && rest < search.sentence.size(); ++words) { // "er blijven 12 v. | over"
    const WordsAt there = words_at(search.sentence, rest);
    if (there.empty() || !may_tell_count(search, *there.first)) break;
    rest = next_word(search, there.first->end);
  }
  if (!ends_sentence(search, rest) || count.stated.size() != 1) count.stated.clear();
  count.end = rest;
  return count;
}

StatedCount said_behind(const Search& search, std::uint32_t at) {
  StatedCount count{{}, at, at};
  const std::string_view text = search.sentence.text();
  const bool inside = at > 0 && text[at - 1] >= '0' && text[at - 1] <= '9';
  if (inside || number_at(search.sentence, at) == nullptr) return count;
  count.end = read_figures(search, at, count.stated);
  std::uint32_t before = at;
  while (before > 0 && text[before - 1] == ' ') --before;
  constexpr std::uint32_t least = 5; // "two together" is no count
  const bool set_off = before > 0 && number_at(search.sentence, at)->number >= least &&
                       std::string_view(",;-.").find(text[before - 1]) != std::string_view::npos;
  if (search.sentence.vocabulary.blanks_between_words && !counts_stitches(count) && !set_off)
    count.stated.clear();
  if (count.stated.empty()) return count;
  const words::Concept word = words::find_concept(search.sentence.vocabulary, "count word");
  const Word* said = word_meaning(search.sentence, next_word(search, count.end), word);
  for (std::uint32_t inner = at; said == nullptr && inner < count.end; ++inner)
    said = word_meaning(search.sentence, inner, word);
  const std::uint32_t rest = said == nullptr ? 0 : next_word(search, said->end);
  const bool ends = said != nullptr && (rest >= text.size() || is_separator(text[rest]));
  if (ends) count.end = std::max(count.end, said->end);
  if (!ends || !is_one_count(count.stated)) count.stated.clear();
  return count;
}

bool tells_together(const Search& search, const StatedCount& count) {
  constexpr std::uint32_t most = 3;
  if (count.stated.empty() || count.stated.back().count > most) return false;
  const words::Concept together = words::find_concept(search.sentence.vocabulary, "together");
  bool number = false;
  for (std::uint32_t at = count.begin; at < count.end; ++at) {
    if (number && means(search, at, together)) return true;
    number = number || number_at(search.sentence, at) != nullptr;
  }
  return false;
}

} // namespace whorl::pattern
