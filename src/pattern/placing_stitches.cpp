#include "pattern/placing_stitches.hpp"

#include "pattern/placing_rounds.hpp"
#include "pattern/reading.hpp"
#include "pattern/text_words.hpp"
#include "words/ascii.hpp"

#include <algorithm>
#include <optional>

namespace whorl::pattern {

namespace {

using words::ConceptClass;
using words::Word;

constexpr int most_small = 4; ///< small words between a number and what is said of it

bool begins_word(const Sentence& sentence, std::uint32_t at) {
  return at == 0 || !sentence.vocabulary.blanks_between_words ||
         !words::is_folded_letter(sentence.text()[at - 1]) || words::is_digit(sentence.text()[at]);
}

std::uint32_t end_of_text(const Sentence& sentence, std::uint32_t at, TextWord kind) {
  return static_cast<std::uint32_t>(end_of_text_word(sentence.vocabulary, sentence.text(), at, kind));
}

bool is_text(const Sentence& sentence, std::uint32_t at, TextWord kind) {
  return at < sentence.size() && end_of_text(sentence, at, kind) > at;
}

/// Behind "visible", "about" and blanks.
std::uint32_t behind_counted_so(const Sentence& sentence, std::uint32_t at) {
  for (int i = 0; i < most_small && at < sentence.size(); ++i) {
    const std::uint32_t behind = end_of_text(sentence, at, TextWord::counted_so);
    if (behind == at) break;
    at = skip_blanks(sentence.text(), behind);
  }
  return at;
}

/// Behind words that change nothing: "6 stitches should be between".
std::uint32_t behind_fillers(const Sentence& sentence, std::uint32_t at) {
  for (int i = 0; i < most_small && !words_at(sentence, at).empty(); ++i) {
    const Word& word = *words_at(sentence, at).first;
    if (sort_of(sentence, word) != ConceptClass::filler) break;
    at = skip_blanks(sentence.text(), word.end);
  }
  return at;
}

/// Where the word for what is counted may end: a stitch, what stands for any of them, a hole.
struct Unit {
  std::uint32_t end = 0;
  bool hole = false;
};

std::vector<Unit> units_at(const Sentence& sentence, std::uint32_t at) {
  std::vector<Unit> units;
  if (at >= sentence.size()) return units;
  for (const Word& word : words_at(sentence, at))
    if (sort_of(sentence, word) == ConceptClass::place || sort_of(sentence, word) == ConceptClass::stitch)
      units.push_back({word.end, false});
  if (const std::uint32_t hole = end_of_text(sentence, at, TextWord::hole); hole > at)
    units.push_back({hole, true});
  return units;
}

/// What stands behind a number of stitches: nothing of a distance, "apart" or "between".
enum class Gap : std::uint8_t { none, apart, between };

Gap gap_at(const Sentence& sentence, std::uint32_t at, std::uint32_t end) {
  if (at >= end) return Gap::none;
  if (means(sentence, at, "between")) return Gap::between;
  return means(sentence, at, "apart") || is_text(sentence, at, TextWord::gap_behind) ? Gap::apart : Gap::none;
}

/// So many holes between leave one stitch more.
std::uint32_t apart_of(std::uint32_t number, bool holes, Gap gap) {
  return number + (holes && gap == Gap::between ? 1 : 0);
}

/// "on round 8 between …": a number of the rounds that are named, no comma before it, counts no stitches.
bool is_round_number(const Sentence& sentence, const Word& number, const Placing& placing) {
  const auto value = static_cast<std::uint32_t>(number.number);
  const bool named =
      value == static_cast<std::uint32_t>(placing.from) || value == static_cast<std::uint32_t>(placing.to);
  std::uint32_t before = number.begin;
  while (before > 0 && sentence.text()[before - 1] == ' ') --before;
  return named && before > 0 && sentence.text()[before - 1] != ',' && sentence.text()[before - 1] != '(';
}

/// "8 sts apart", "8 visible stitches in between", "8 apart", "8-stitch gap".
std::optional<std::uint32_t> gap_behind(const Sentence& sentence, const Word& number, std::uint32_t end,
                                        const Placing& placing) {
  const std::uint32_t next = skip_blanks(sentence.text(), number.end);
  const std::uint32_t counted =
      behind_counted_so(sentence, next + (next < end && sentence.text()[next] == '-'));
  for (const Unit& unit : units_at(sentence, counted)) {
    const std::uint32_t behind = skip_blanks(sentence.text(), unit.end);
    for (const std::uint32_t at :
         {behind, behind_counted_so(sentence, behind), behind_fillers(sentence, behind)})
      if (const Gap gap = gap_at(sentence, at, end); gap != Gap::none)
        return apart_of(number.number, unit.hole, gap);
  }
  // "mit einem Abstand von 6": an article is no number.
  const bool counts = number.number > 1 || words::is_digit(sentence.text()[number.begin]);
  const bool bare =
      counts && next < end && (means(sentence, next, "apart") || means(sentence, next, "between"));
  return bare && !is_round_number(sentence, number, placing) ? std::optional(number.number) : std::nullopt;
}

/// "a gap of 8 sts"; where things are put into holes, "leaving 8 sts" too.
std::optional<std::uint32_t> gap_ahead(const Sentence& sentence, std::uint32_t at, std::uint32_t end,
                                       bool posts) {
  std::uint32_t behind = end_of_text(sentence, at, TextWord::gap);
  if (behind == at && posts) behind = end_of_text(sentence, at, TextWord::keep);
  if (behind == at) return std::nullopt;
  const std::uint32_t counted = behind_counted_so(sentence, skip_blanks(sentence.text(), behind));
  const Word* number = counted < end ? number_at(sentence, counted) : nullptr;
  if (number == nullptr || number->end > end) return std::nullopt;
  const std::uint32_t next = behind_counted_so(sentence, skip_blanks(sentence.text(), number->end));
  return units_at(sentence, next).empty() ? std::nullopt : std::optional(number->number);
}

void read_apart(const Sentence& sentence, std::uint32_t begin, std::uint32_t end, Placing& placing) {
  const bool posts = placing.what != What::sew && placing.what != What::cut && placing.what != What::note;
  for (std::uint32_t at = begin; at < end; ++at) {
    if (!begins_word(sentence, at)) continue;
    const Word* number = number_at(sentence, at);
    const auto apart = number != nullptr             ? gap_behind(sentence, *number, end, placing)
                       : posts || placing.apart == 0 ? gap_ahead(sentence, at, end, posts)
                                                     : std::nullopt;
    if (apart) placing.apart = *apart;
  }
}

/// Whether "over" stands right before a number, but for small words: "over the middle 4 sts".
bool stands_over(const Sentence& sentence, std::uint32_t begin, std::uint32_t number) {
  constexpr int most_between = 3;
  const words::Concept over = words::find_concept(sentence.vocabulary, "over");
  for (std::uint32_t at = begin; at < number; ++at) {
    const Word* word = word_meaning(sentence, at, over);
    if (word == nullptr) continue;
    std::uint32_t next = skip_blanks(sentence.text(), word->end);
    for (int i = 0; i < most_between && next < number; ++i)
      next = skip_blanks(sentence.text(), end_of_letters(sentence, next));
    if (next == number) return true;
  }
  return false;
}

/// "over 4 sts", "4 sts wide": how far a line of embroidery reaches.
void read_across(const Sentence& sentence, std::uint32_t begin, std::uint32_t end, Placing& placing) {
  for (std::uint32_t at = begin; at < end; ++at) {
    const Word* number = number_at(sentence, at);
    if (number == nullptr) continue;
    const std::uint32_t next = skip_blanks(sentence.text(), number->end);
    const WordsAt unit = words_at(sentence, next);
    if (unit.empty() || sort_of(sentence, *unit.first) != ConceptClass::place) continue;
    const std::uint32_t behind = skip_blanks(sentence.text(), unit.first->end);
    if (!stands_over(sentence, begin, at) && !means(sentence, behind, "wide")) continue;
    placing.apart = number->number;
    placing.across = true;
  }
}

// The stitches themselves.

/// Numbers of stitches that stand together, and where they end; none: `end` is where they were looked for.
struct Named {
  std::vector<std::uint32_t> numbers;
  std::uint32_t end = 0;
};

bool is_place(const Sentence& sentence, std::uint32_t at) {
  const WordsAt words = words_at(sentence, at);
  return std::any_of(words.begin(), words.end(),
                     [&](const Word& word) { return sort_of(sentence, word) == ConceptClass::place; });
}

/// The longest word for a stitch at a place, its end; `at` if none stands there.
std::uint32_t behind_place(const Sentence& sentence, std::uint32_t at) {
  for (const Word& word : words_at(sentence, at))
    if (sort_of(sentence, word) == ConceptClass::place) return word.end;
  return at;
}

std::uint32_t behind_articles(const Sentence& sentence, std::uint32_t at) {
  at = skip_blanks(sentence.text(), at);
  for (int i = 0; i < most_small && at < sentence.size(); ++i) {
    const std::uint32_t small =
        std::max(end_of_text(sentence, at, TextWord::article), end_of_text(sentence, at, TextWord::number));
    const std::uint32_t behind = sentence.text()[at] == '#' ? at + 1 : small;
    if (behind == at) break;
    at = skip_blanks(sentence.text(), behind);
  }
  return at;
}

/// Behind "and", "&", "-" between two numbers; `at` if they are not linked there.
std::uint32_t behind_link_of(const Sentence& sentence, std::uint32_t at) {
  if (at >= sentence.size()) return at;
  std::uint32_t next = at;
  for (const char c : {',', '-', '/', '&', '+'})
    if (sentence.text()[next] == c) {
      next = skip_blanks(sentence.text(), next + 1);
      break;
    }
  if (next < sentence.size() && (means(sentence, next, "and") || means(sentence, next, "to")))
    next = skip_blanks(sentence.text(), words_at(sentence, next).first->end);
  return next == at ? at : behind_articles(sentence, next);
}

/// "stitches 12 and 19", "st 12 & 13 and st 18"; `unit`: whether the word for a stitch must lead.
Named named_behind_unit(const Sentence& sentence, std::uint32_t at, std::uint32_t end, bool unit) {
  Named named{{}, at};
  for (std::uint32_t next = at; next < end;) {
    const std::uint32_t behind = behind_place(sentence, next);
    if (named.numbers.empty() && unit && behind == next) break;
    const std::uint32_t digits = behind_articles(sentence, behind);
    const Word* number = digits < end ? number_at(sentence, digits) : nullptr;
    if (number == nullptr || number->end > end || !words::is_digit(sentence.text()[digits])) break;
    const std::uint32_t after = skip_blanks(sentence.text(), number->end);
    const bool another = ordinal_mark_at(sentence, number->end) != nullptr ||
                         is_round_word(sentence, after) || is_place(sentence, after);
    if (another) break; // "stitch 12 and the 8th round", "and 6 sts apart"
    named.numbers.push_back(number->number);
    named.end = number->end;
    next = behind_link_of(sentence, after);
    if (next == after) break;
  }
  return named;
}

/// "12th and 19th stitches", "the 12th stitch".
Named named_before_unit(const Sentence& sentence, std::uint32_t at, std::uint32_t end) {
  Named named{{}, at};
  bool ordinal = false;
  for (std::uint32_t next = behind_articles(sentence, at); next < end;) {
    const Word* number = number_at(sentence, next);
    if (number == nullptr) break;
    const Word* mark = ordinal_mark_at(sentence, number->end);
    ordinal = ordinal || mark != nullptr;
    named.numbers.push_back(number->number);
    std::uint32_t behind = skip_blanks(sentence.text(), mark != nullptr ? mark->end : number->end);
    if (const std::uint32_t place = behind_place(sentence, behind); place > behind && ordinal) {
      named.end = place;
      behind = skip_blanks(sentence.text(), place);
    }
    next = behind_link_of(sentence, behind);
    if (next == behind) break;
  }
  return named.end == at ? Named{{}, at} : named;
}

/// How numbers of stitches are led to.
enum class Beside : std::uint8_t { nothing, after, before, between, in };

struct Lead {
  Beside beside = Beside::nothing;
  std::uint32_t end = 0;
};

Lead lead_at(const Sentence& sentence, std::uint32_t at) {
  if (const auto end = end_of_text(sentence, at, TextWord::after_stitch); end > at)
    return {Beside::after, end};
  if (const auto end = end_of_text(sentence, at, TextWord::before_stitch); end > at)
    return {Beside::before, end};
  for (const auto& [name, beside] : {std::pair{"between", Beside::between}, std::pair{"in", Beside::in}})
    if (const Word* word = word_meaning(sentence, at, words::find_concept(sentence.vocabulary, name)))
      return {beside, word->end};
  return {Beside::nothing, at};
}

/// The holes that are meant: between stitches, each pair of neighbours one.
void add_holes(const Named& named, Beside beside, std::vector<std::uint16_t>& holes) {
  const std::vector<std::uint32_t>& numbers = named.numbers;
  const auto add = [&holes](std::uint32_t hole) {
    if (hole < 10'000) holes.push_back(static_cast<std::uint16_t>(hole));
  };
  if (beside == Beside::between) {
    if (numbers.size() % 2 != 0) return;
    for (std::size_t i = 0; i < numbers.size(); i += 2)
      if (numbers[i + 1] != numbers[i] + 1) return;
    for (std::size_t i = 0; i < numbers.size(); i += 2) add(numbers[i]);
    return;
  }
  for (const std::uint32_t number : numbers)
    if (number > 0) add(beside == Beside::before ? number - 1 : number);
}

void read_after(const Sentence& sentence, std::uint32_t begin, std::uint32_t end, Placing& placing) {
  bool unit = false; // a word for a stitch has been read: "after stitch 12 and after 19"
  for (std::uint32_t at = begin; at < end; ++at) {
    const bool digit_before = at > 0 && words::is_digit(sentence.text()[at - 1]);
    if (!begins_word(sentence, at) || digit_before) continue;
    const Lead lead = lead_at(sentence, at);
    const std::uint32_t first = behind_articles(sentence, lead.end);
    Named named = named_behind_unit(sentence, first, end, !(unit && lead.beside > Beside::nothing));
    if (named.numbers.empty()) named = named_before_unit(sentence, first, end);
    if (named.numbers.empty()) continue;
    unit = true;
    add_holes(named, lead.beside, placing.after);
    at = std::max(at, named.end - 1);
  }
  std::sort(placing.after.begin(), placing.after.end());
  placing.after.erase(std::unique(placing.after.begin(), placing.after.end()), placing.after.end());
}

bool has_text(const Sentence& sentence, std::uint32_t begin, std::uint32_t end, TextWord kind) {
  for (std::uint32_t at = begin; at < end; ++at)
    if (begins_word(sentence, at) && is_text(sentence, at, kind)) return true;
  return false;
}

} // namespace

bool is_post(What what) {
  return what == What::eye || what == What::bead || what == What::marker || what == What::embroider;
}

void read_stitches(const Sentence& sentence, std::uint32_t begin, std::uint32_t end, Placing& placing) {
  read_apart(sentence, begin, end, placing);
  if (placing.what == What::embroider && placing.apart == 0) read_across(sentence, begin, end, placing);
  const bool may_tell = is_post(placing.what) || placing.what == What::sew || placing.what == What::note;
  if (may_tell && placing.apart == 0 && placing.from > 0) read_after(sentence, begin, end, placing);
  const bool unsaid = placing.apart == 0 && placing.after.empty();
  const bool may_be_bead = placing.what == What::bead || placing.what == What::sew;
  placing.centred = may_be_bead && unsaid && has_text(sentence, begin, end, TextWord::in_middle);
  placing.spread = placing.what == What::sew && has_text(sentence, begin, end, TextWord::opposite);
}

} // namespace whorl::pattern
