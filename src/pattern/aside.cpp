#include "pattern/aside.hpp"

#include "pattern/own_group.hpp"
#include "pattern/text_words.hpp"
#include "words/ascii.hpp"

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

/// Whether a number or a stitch stands in [begin, end).
bool has_figure(const Sentence& sentence, std::uint32_t begin, std::uint32_t end) {
  for (std::uint32_t at = begin; at < end; ++at)
    for (const Word& word : words_at(sentence, at))
      if (word.kind == WordKind::number || is_work(sentence, word)) return true;
  return false;
}

/// "(6 bobbles)", "(2 bobbles each side)" beside the count of the whole.
bool counts_special(const Sentence& sentence, const Bracket& bracket) {
  const Word* number = number_at(sentence, bracket.inner_begin);
  if (number == nullptr) return false;
  for (const Word& word : words_at(sentence, skip_blanks(sentence.text(), number->end))) {
    if (word.kind != WordKind::phrase || has_figure(sentence, word.end, bracket.inner_end)) continue;
    const std::string_view name = sentence.vocabulary.concepts[word.means].name;
    if (name == "bo" || name == "puff" || name == "pc" || name == "picot") return true;
    if (names_group(sentence.vocabulary, word.means)) return true; // "(6 V-sts)"
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

/// Whether a word ends a bracket, or a note that works nothing stands behind it: "(reverse dc, from left to
/// right)".
bool closes_gloss(const Sentence& sentence, std::uint32_t at, std::uint32_t end) {
  const std::uint32_t rest = trim_separators(sentence.text(), at, end);
  if (rest <= at) return true;
  bool unknown = false;
  for (std::uint32_t place = at; place < end; ++place)
    for (const Word& word : words_at(sentence, place)) unknown = unknown || word.kind == WordKind::unknown;
  return unknown && !has_figure(sentence, at, end);
}

/// "KA (amigurumi ring)", "inc (2 sc in one st)"…: the bracket says the word before it once more.
bool glosses(const Sentence& sentence, const Bracket& bracket) {
  std::uint32_t inner = bracket.inner_begin;
  const WordsAt first = words_at(sentence, inner);
  if (!first.empty() && sort_of(sentence, *first.first) == ConceptClass::filler)
    inner = behind_word(sentence, inner);
  std::uint32_t before = bracket.begin;
  while (before > 0 && sentence.text()[before - 1] == ' ') --before;
  for (const Word& word : words_at(sentence, inner)) {
    if (word.kind != WordKind::phrase || !closes_gloss(sentence, word.end, bracket.inner_end)) continue;
    for (std::uint32_t at = before; at-- > 0 && before - at < 30;)
      for (const Word& other : words_at(sentence, at))
        if (other.kind == WordKind::phrase && other.end == before && other.means == word.means) return true;
  }
  return false;
}

/// "bobble (4 dc closed together in one st)": the bracket tells how the gathered stitch before it is made.
bool explains_gathered(const Sentence& sentence, const Bracket& bracket) {
  std::uint32_t before = bracket.begin;
  while (before > 0 && sentence.text()[before - 1] == ' ') --before;
  bool gathered = false;
  for (std::uint32_t at = before > 30 ? before - 30 : 0; at < before; ++at)
    for (const Word& word : words_at(sentence, at)) {
      if (word.kind != WordKind::phrase || word.end != before) continue;
      const std::string_view name = sentence.vocabulary.concepts[word.means].name;
      gathered = gathered || name == "bo" || name == "puff" || name == "pc" || name == "cl";
    }
  if (!gathered) return false;
  for (std::uint32_t at = bracket.inner_begin; at < bracket.inner_end; ++at)
    for (const Word& word : words_at(sentence, at)) {
      if (word.kind != WordKind::phrase) continue;
      const std::string_view name = sentence.vocabulary.concepts[word.means].name;
      if (name == "together" || name == "closed together" || name == "unfinished" || name == "same")
        return true;
    }
  return false;
}

/// "(same ch as the first hdc)": which place was meant.
bool begins_with_same(const Sentence& sentence, const Bracket& bracket) {
  std::uint32_t at = bracket.inner_begin;
  const WordsAt first = words_at(sentence, at);
  if (!first.empty() && sort_of(sentence, *first.first) == ConceptClass::filler)
    at = behind_word(sentence, at);
  const Word* same = word_meaning(sentence, at, words::find_concept(sentence.vocabulary, "same"));
  return same != nullptr && number_at(sentence, at) == nullptr; // "(one …)" is no place
}

/// "(the one your first sc is in)", "(where you began)": which place was meant, in words.
bool describes_place(const Sentence& sentence, const Bracket& bracket) {
  const std::size_t end =
      end_of_text_word(sentence.vocabulary, sentence.text(), bracket.inner_begin, TextWord::place_told);
  return end != bracket.inner_begin && end < bracket.inner_end;
}

/// "(picot); rep from *": one word that is no work, and more work behind a mark.
bool tells_a_word(const Sentence& sentence, const Bracket& bracket) {
  const std::uint32_t next = skip_blanks(sentence.text(), bracket.end);
  const WordsAt words = words_at(sentence, bracket.inner_begin);
  const bool separated = next < sentence.size() && is_separator(sentence.text()[next]);
  return separated && !words.empty() && words.first->kind != WordKind::number &&
         !is_work(sentence, *words.first) && words.first->end >= bracket.inner_end;
}

/// "(7, 8)", "[14, 16, 18]": two numbers or more, and nothing else.
bool is_sizes(const Sentence& sentence, const Bracket& bracket) {
  const std::string_view text = sentence.text();
  if (text[bracket.begin] != '(' && text[bracket.begin] != '[') return false;
  int numbers = 0;
  for (std::uint32_t at = bracket.inner_begin; at < bracket.inner_end; ++numbers) {
    const Word* number = number_at(sentence, at);
    if (number == nullptr) return false;
    at = skip_blanks(text, number->end);
    if (at < bracket.inner_end && text[at] != ',' && text[at] != '/' && text[at] != ':') return false;
    at = skip_blanks(text, at + 1);
  }
  return numbers > 1;
}

bool is_named(const Sentence& sentence, std::uint32_t at, std::string_view name) {
  return word_meaning(sentence, at, words::find_concept(sentence.vocabulary, name)) != nullptr;
}

/// "Sc in next 8 (12) sts": whether the number that begins at `begin` is one of places.
bool counts_places(const Sentence& sentence, std::uint32_t begin, std::uint32_t behind) {
  const std::string_view before = sentence.text().substr(0, begin);
  const auto led = [&](std::string_view word) {
    return before.size() >= word.size() && before.substr(before.size() - word.size()) == word;
  };
  return (led("next") || led("first") || led("last") || led("each of")) && is_named(sentence, behind, "st");
}

/// "Ch 31 (41).", "30 (40) sc": the number of a larger size behind that of the first, which is worked.
bool is_other_size(const Sentence& sentence, std::uint32_t at, const Bracket& bracket) {
  const std::string_view text = sentence.text();
  const Word* other = number_at(sentence, bracket.inner_begin);
  std::uint32_t begin = at;
  while (begin > 0 && text[begin - 1] >= '0' && text[begin - 1] <= '9') --begin;
  const Word* first = number_at(sentence, begin);
  if (other == nullptr || first == nullptr || first->end != at || other->number <= first->number)
    return false;
  if (skip_blanks(text, other->end) < bracket.inner_end) return false;
  while (begin > 0 && text[begin - 1] == ' ') --begin;
  const std::uint32_t behind = skip_blanks(text, bracket.end);
  const auto ends = [&](std::uint32_t place) {
    place = skip_blanks(text, place);
    return place >= sentence.size() || std::string_view(".,;)]").find(text[place]) != std::string_view::npos;
  };
  for (const std::string_view chain : {"ch", "chain"})
    if (begin >= chain.size() && text.substr(begin - chain.size(), chain.size()) == chain)
      return !has_figure(sentence, 0, begin - static_cast<std::uint32_t>(chain.size())) && ends(behind);
  if (counts_places(sentence, begin, behind)) return true;
  const bool inside = begin > 0 && (text[begin - 1] == '(' || text[begin - 1] == '[');
  if (inside && ends(behind)) return true;
  if (begin > 0 && !inside && !is_separator(text[begin - 1])) return false;
  const WordsAt units = words_at(sentence, behind);
  return std::any_of(units.begin(), units.end(), [&](const Word& unit) {
    const ConceptClass sort = sort_of(sentence, unit);
    return (sort == ConceptClass::stitch || sort == ConceptClass::place) && ends(unit.end);
  });
}

/// Behind the number one and its unit: "長編み | 1目"; `at` if that does not stand there.
std::uint32_t behind_one(const Sentence& sentence, std::uint32_t at) {
  const Word* one = number_at(sentence, at);
  if (one == nullptr || one->number != 1) return at;
  for (const Word& unit : words_at(sentence, one->end))
    if (sort_of(sentence, unit) == ConceptClass::place) return unit.end;
  return one->end;
}

/// "(missed 3ch = 1tr)", "(= 1tr)": chains that are as good as one stitch.
bool equals_stitch(const Sentence& sentence, const Bracket& bracket) {
  std::uint32_t at = bracket.inner_begin;
  for (; at < bracket.inner_end && sentence.text()[at] != '='; ++at)
    for (const Word& word : words_at(sentence, at))
      if (word.kind == WordKind::unknown || (is_work(sentence, word) && !is_named(sentence, at, "ch")))
        return false;
  if (at >= bracket.inner_end) return false;
  at = skip_blanks(sentence.text(), at + 1);
  if (const Word* number = number_at(sentence, at)) {
    if (number->number != 1) return false;
    at = skip_blanks(sentence.text(), number->end);
  }
  const WordsAt stitch = words_at(sentence, at);
  return std::any_of(stitch.begin(), stitch.end(), [&](const Word& word) {
    const std::uint32_t end = behind_one(sentence, skip_blanks(sentence.text(), word.end));
    return is_work(sentence, word) && skip_blanks(sentence.text(), end) >= bracket.inner_end;
  });
}

/// Behind articles, and behind words that say what chains stand for, "= ", "for the", "as"; `led`: such a
/// word or sign was among them.
std::uint32_t behind_stands_for(const Sentence& sentence, std::uint32_t at, std::uint32_t end, bool& led) {
  const auto behind = [&](TextWord kind) {
    return static_cast<std::uint32_t>(end_of_text_word(sentence.vocabulary, sentence.text(), at, kind));
  };
  while (at < end) {
    const std::uint32_t lead = sentence.text()[at] == '=' ? at + 1 : behind(TextWord::stands_for);
    const Word* number = number_at(sentence, at);
    const bool first = is_named(sentence, at, "first");
    led = led || lead != at || first;
    const bool one = number != nullptr && number->number == 1;
    const std::uint32_t next = std::max(
        {lead, behind(TextWord::article), first ? behind_word(sentence, at) : at, one ? number->end : at});
    if (next == at) return at;
    at = next;
    if (const Word* ordinal = word_meaning(sentence, at, words::find_concept(sentence.vocabulary, "ordinal"));
        ordinal != nullptr && one)
      at = ordinal->end; // "1. Stb"
    at = skip_blanks(sentence.text(), at);
  }
  return at;
}

/// Whether a bracket stands right behind a number of chains.
bool stands_behind_chains(const Sentence& sentence, const Bracket& bracket) {
  constexpr std::uint32_t longest = 60; // bytes of the words for a chain
  std::uint32_t before = bracket.begin;
  while (before > 0 && sentence.text()[before - 1] == ' ') --before;
  for (std::uint32_t at = before; at-- > 0 && before - at < longest;)
    for (const Word& word : words_at(sentence, at)) {
      if (!is_named(sentence, at, "ch") || sentence.vocabulary.concepts.size() <= word.means) continue;
      const Word* number = number_at(sentence, skip_blanks(sentence.text(), word.end));
      std::uint32_t end = number != nullptr ? number->end : word.end;
      for (const Word& unit : words_at(sentence, skip_blanks(sentence.text(), end)))
        if (sort_of(sentence, unit) == ConceptClass::place) end = std::max(end, unit.end);
      if (word.end == before || end == before) return true;
    }
  return false;
}

/// "4 ch (1 dc and 1 ch)": what chains are as good as stands right behind them, one stitch and chains.
bool equals_height(const Sentence& sentence, const Bracket& bracket) {
  if (!stands_behind_chains(sentence, bracket)) return false;
  std::uint32_t at = bracket.inner_begin;
  const Word* one = number_at(sentence, at);
  if (one == nullptr || one->number != 1) return false;
  at = skip_blanks(sentence.text(), one->end);
  for (const Word& stitch : words_at(sentence, at)) {
    if (sort_of(sentence, stitch) != ConceptClass::stitch || is_named(sentence, at, "ch")) continue;
    std::uint32_t next = skip_blanks(sentence.text(), stitch.end);
    if (next >= bracket.inner_end) return true;
    const Word* link = word_meaning(sentence, next, sentence.conjunction);
    if (link == nullptr && sentence.text()[next] != '+' && sentence.text()[next] != ',') continue;
    next = skip_blanks(sentence.text(), link != nullptr ? link->end : next + 1);
    const Word* chains = number_at(sentence, next);
    if (chains == nullptr) continue;
    next = skip_blanks(sentence.text(), chains->end);
    for (const Word& word : words_at(sentence, next)) {
      const std::string_view name = word.kind == WordKind::phrase
                                        ? std::string_view(sentence.vocabulary.concepts[word.means].name)
                                        : "";
      const bool chain = name == "ch" || name == "chain" || name == "st"; // "1 słupek i 1 oczko"
      if (chain && skip_blanks(sentence.text(), word.end) >= bracket.inner_end) return true;
    }
  }
  return false;
}

/// "(for the first dc)", "(is a dc)", "(= dc and ch 1)".
bool stands_for_stitch(const Sentence& sentence, const Bracket& bracket) {
  bool led = false;
  const std::uint32_t at = behind_stands_for(sentence, bracket.inner_begin, bracket.inner_end, led);
  if (!led || at >= bracket.inner_end) return false;
  const WordsAt stitch = words_at(sentence, at);
  return std::any_of(stitch.begin(), stitch.end(), [&](const Word& word) {
    const std::uint32_t rest = trim_separators(sentence.text(), word.end, bracket.inner_end);
    bool chains = false;
    for (std::uint32_t place = word.end; place < bracket.inner_end; ++place)
      chains = chains || is_named(sentence, place, "ch");
    return is_work(sentence, word) && !is_named(sentence, at, "ch") && (rest <= word.end || chains);
  });
}

} // namespace

bool says_first_stitch(const Sentence& sentence, const Bracket& bracket) {
  if (equals_stitch(sentence, bracket) || stands_for_stitch(sentence, bracket) ||
      equals_height(sentence, bracket))
    return true;
  bool begins = true;
  for (std::uint32_t at = bracket.inner_begin; at < bracket.inner_end;) {
    const WordsAt words = words_at(sentence, at);
    const std::uint32_t next = behind_word(sentence, at);
    if (begins && is_named(sentence, at, "first")) {
      const WordsAt stitch = words_at(sentence, next);
      return std::any_of(stitch.begin(), stitch.end(), [&](const Word& word) {
        return is_work(sentence, word) && skip_blanks(sentence.text(), word.end) >= bracket.inner_end;
      });
    }
    const bool filler = !words.empty() && sort_of(sentence, *words.first) == ConceptClass::filler;
    begins = sentence.text()[at] == '=' || (begins && filler);
    at = next;
  }
  return false;
}

namespace {

/// Behind the numbers in "6 | /7/8", each larger than the one before; `at` if there are none.
std::uint32_t behind_slashes(const Sentence& sentence, std::uint32_t at) {
  const std::string_view text = sentence.text();
  std::uint32_t first = at;
  while (first > 0 && words::is_digit(text[first - 1])) --first;
  const Word* last = number_at(sentence, first);
  std::uint32_t end = at;
  while (last != nullptr && last->end == end && end + 1 < sentence.size() && text[end] == '/') {
    const Word* next = number_at(sentence, end + 1);
    if (next == nullptr || next->number <= last->number) break;
    last = next;
    end = next->end;
  }
  return end;
}

} // namespace

std::uint32_t behind_sizes(const Sentence& sentence, std::uint32_t at) {
  const std::string_view text = sentence.text();
  if (at == 0 || text[at - 1] < '0' || text[at - 1] > '9') return at;
  if (const std::uint32_t end = behind_slashes(sentence, at); end != at) return end;
  const std::uint32_t next = skip_blanks(text, at);
  const std::int32_t index = next < sentence.size() ? sentence.brackets.at[next] : no_bracket;
  if (index == no_bracket) return at;
  const Bracket& bracket = sentence.brackets.all[static_cast<std::size_t>(index)];
  return is_sizes(sentence, bracket) || is_other_size(sentence, at, bracket) ? bracket.end : at;
}

std::uint32_t behind_gloss(const Sentence& sentence, std::uint32_t at) {
  const std::uint32_t next = skip_blanks(sentence.text(), at);
  const std::int32_t index = next < sentence.size() ? sentence.brackets.at[next] : no_bracket;
  if (index == no_bracket) return at;
  const Bracket& bracket = sentence.brackets.all[static_cast<std::size_t>(index)];
  const bool round = bracket.kind == Passage::round || bracket.kind == Passage::square;
  if (!round || bracket.inner_begin >= bracket.inner_end || !glosses(sentence, bracket)) return at;
  return is_named(sentence, skip_blanks(sentence.text(), bracket.end), "in") ? bracket.end : at;
}

std::uint32_t end_of_other_count(const Sentence& sentence, std::uint32_t at) {
  const Word* number = number_at(sentence, at);
  if (number == nullptr) return at;
  std::uint32_t next = skip_blanks(sentence.text(), number->end);
  bool unknown = false;
  for (int words = 0; words < 2 && next < sentence.size(); ++words) {
    const WordsAt there = words_at(sentence, next);
    if (there.empty() || there.first->kind != WordKind::unknown || next == number->end) break;
    unknown = true;
    next = skip_blanks(sentence.text(), there.first->end);
  }
  const bool ends = next >= sentence.size() || sentence.text()[next] == '.' || sentence.text()[next] == '!';
  return unknown && ends ? next : at;
}

std::uint32_t end_of_definition(const Sentence& sentence, std::uint32_t at) {
  std::uint32_t name = at;
  const WordsAt first = words_at(sentence, at);
  const bool article = !first.empty() && !is_work(sentence, *first.first) &&
                       sort_of(sentence, *first.first) == ConceptClass::filler;
  if (article) name = behind_word(sentence, at);
  for (const Word& word : words_at(sentence, name)) {
    if (!is_work(sentence, word)) continue;
    const std::uint32_t next = skip_blanks(sentence.text(), word.end);
    const std::string_view rest = sentence.text().substr(std::min(next, sentence.size()));
    const bool defined = rest.substr(0, 1) == "=" || rest.substr(0, 1) == ":" || rest.substr(0, 3) == "is " ||
                         rest.substr(0, 6) == "means ";
    if (!defined) continue;
    std::uint32_t end = next;
    while (end < sentence.size() && sentence.text()[end] != '.') ++end;
    return end;
  }
  return at;
}

bool is_aside(const Sentence& sentence, const Bracket& bracket) {
  if (bracket.kind != Passage::round && bracket.kind != Passage::square) return false;
  if (bracket.inner_begin >= bracket.inner_end) return false;
  const std::uint32_t before = trim_separators(sentence.text(), 0, bracket.begin);
  if (behind_sizes(sentence, before) == bracket.end) return true;
  if (defines(sentence, bracket)) return true;
  if (glosses(sentence, bracket) || says_first_stitch(sentence, bracket)) return true;
  if (content_of(sentence, bracket).counted && stands_behind_chains(sentence, bracket)) return true;
  if (begins_with_same(sentence, bracket)) return !is_used(sentence, bracket.end);
  if (explains_gathered(sentence, bracket)) return true;
  if (is_used(sentence, bracket.end) && !tells_a_word(sentence, bracket)) return false;
  if (describes_place(sentence, bracket)) return true;
  const Content content = content_of(sentence, bracket);
  if (content.counted) return true;
  if (counts_others(sentence, bracket, content) || counts_special(sentence, bracket)) return true;
  if (begins_with_work(sentence, bracket)) return false;
  return !is_scanned_count(sentence, bracket) && (content.unknown || !content.instructs);
}

} // namespace whorl::pattern
