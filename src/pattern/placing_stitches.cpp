#include "pattern/placing_stitches.hpp"

#include "pattern/named_holes.hpp"
#include "pattern/placing_rounds.hpp"
#include "pattern/reading.hpp"
#include "pattern/text_words.hpp"
#include "pattern/word_names.hpp"
#include "words/ascii.hpp"

#include <optional>

namespace whorl::pattern {

namespace {

using words::ConceptClass;
using words::Word;

constexpr int most_small = 4; ///< small words between a number and what is said of it

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

bool has_text(const Sentence& sentence, std::uint32_t begin, std::uint32_t end, TextWord kind) {
  for (std::uint32_t at = begin; at < end; ++at)
    if (begins_word(sentence, at) && is_text(sentence, at, kind)) return true;
  return false;
}

} // namespace

void read_stitches(const Sentence& sentence, std::uint32_t begin, std::uint32_t end, Placing& placing) {
  const bool thread = placing.what == What::embroider; // from hole to hole, before all else
  const bool attached = placing.what == What::sew || placing.what == What::note;
  if (thread) placing.after = holes_named(sentence, begin, end, placing.what);
  if (!placing.after.empty()) return;
  read_apart(sentence, begin, end, placing);
  if (thread && placing.apart == 0) read_across(sentence, begin, end, placing);
  const bool may_tell = is_post(placing.what) || (attached && placing.from > 0);
  if (may_tell && !thread && placing.apart == 0)
    placing.after = holes_named(sentence, begin, end, placing.what);
  const bool unsaid = placing.apart == 0 && placing.after.empty();
  const bool may_be_bead = placing.what == What::bead || placing.what == What::sew;
  placing.centred = may_be_bead && unsaid && has_text(sentence, begin, end, TextWord::in_middle);
  placing.spread = placing.what == What::sew && has_text(sentence, begin, end, TextWord::opposite);
}

} // namespace whorl::pattern
