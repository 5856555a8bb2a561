#include "pattern/named_holes.hpp"

#include "pattern/placing_rounds.hpp"
#include "pattern/text_words.hpp"
#include "pattern/word_names.hpp"
#include "words/ascii.hpp"

#include <algorithm>

namespace whorl::pattern {
namespace {

using words::ConceptClass;
using words::Word;

constexpr int most_small = 4; ///< small words before a number

/// How numbers of stitches are led to.
enum class Beside : std::uint8_t { nothing, after, before, between, in };

struct Lead {
  Beside beside = Beside::nothing;
  std::uint32_t end = 0;
};

/// Numbers of stitches or holes that stand together, and where they end.
struct Numbers {
  std::vector<std::uint32_t> all;
  std::uint32_t end = 0;
  Beside beside = Beside::nothing;
  bool reach = false; ///< "stitches 14 to 17": from the first to the last
  bool holes = false; ///< they are numbers of holes
};

/// Where the next number may stand, behind "and", "&", "-".
struct Link {
  std::uint32_t end = 0;
  bool reach = false; ///< "to", "-"
};

class Hearing {
public:
  Hearing(const Sentence& sentence, std::uint32_t begin, std::uint32_t end)
      : sentence_(sentence), begin_(begin), end_(end) {}

  /// All numbers in the clause, those together that words for stitches hold together.
  std::vector<Numbers> all() {
    std::vector<Numbers> found;
    for (std::uint32_t at = begin_; at < end_; ++at) {
      const bool digit_before = at > 0 && words::is_digit(sentence_.text()[at - 1]);
      if (digit_before || !begins_word(sentence_, at)) continue;
      const Lead lead = lead_at(at);
      const std::uint32_t first = behind_articles(lead.end);
      const bool bare = !found.empty() && lead.beside != Beside::nothing; // "after stitch 12 and after 19"
      Numbers numbers = behind_unit(first, bare);
      if (numbers.all.empty()) numbers = before_unit(first);
      if (numbers.all.empty()) continue;
      numbers.beside = lead.beside;
      at = std::max(at, numbers.end - 1);
      found.push_back(std::move(numbers));
    }
    return found;
  }

private:
  std::uint32_t blanks(std::uint32_t at) const { return skip_blanks(sentence_.text(), at); }

  Lead lead_at(std::uint32_t at) const {
    if (const auto end = end_of_text(sentence_, at, TextWord::after_stitch); end > at)
      return {Beside::after, end};
    if (const auto end = end_of_text(sentence_, at, TextWord::before_stitch); end > at)
      return {Beside::before, end};
    for (const auto& [name, beside] : {std::pair{"between", Beside::between}, std::pair{"in", Beside::in}})
      if (const Word* word = word_meaning(sentence_, at, words::find_concept(sentence_.vocabulary, name)))
        return {beside, word->end};
    return {Beside::nothing, at};
  }

  bool is_hole(std::uint32_t at) const {
    return at < end_ && end_of_text(sentence_, at, TextWord::hole) > at;
  }

  /// Behind the longest word for a stitch, or one for a hole; `at` if none stands there. "Ch 30" is worked.
  std::uint32_t behind_place(std::uint32_t at) const {
    const WordsAt here = words_at(sentence_, at);
    const auto works = [this](const Word& word) { return is_work(sentence_, word); };
    if (std::any_of(here.begin(), here.end(), works)) return at;
    for (const Word& word : words_at(sentence_, at))
      if (sort_of(sentence_, word) == ConceptClass::place) return word.end;
    return at < end_ ? end_of_text(sentence_, at, TextWord::hole) : at;
  }

  std::uint32_t behind_articles(std::uint32_t at) const {
    at = blanks(at);
    for (int i = 0; i < most_small && at < end_; ++i) {
      const std::uint32_t small = std::max(end_of_text(sentence_, at, TextWord::article),
                                           end_of_text(sentence_, at, TextWord::number));
      const std::uint32_t behind = sentence_.text()[at] == '#' ? at + 1 : small;
      if (behind == at) break;
      at = blanks(behind);
    }
    return at;
  }

  /// "and", "&", "-", "to" between two numbers; its end is `at` if they are not linked there.
  Link link_at(std::uint32_t at) const {
    if (at >= end_) return {at};
    std::uint32_t next = at;
    const char sign = sentence_.text()[at];
    if (std::string_view(",-/&+").find(sign) != std::string_view::npos) next = blanks(at + 1);
    const bool to = means(sentence_, next, "to");
    if (next < end_ && (to || means(sentence_, next, "and")))
      next = blanks(words_at(sentence_, next).first->end);
    return {next == at ? at : behind_articles(next), to || sign == '-'};
  }

  /// "stitches 12 and 19", "st 12 & 13 and st 18", "hole 14"; `bare`: the word for a stitch may be missing.
  Numbers behind_unit(std::uint32_t at, bool bare) const {
    Numbers numbers;
    bool reach = false;
    for (std::uint32_t next = at; next < end_;) {
      const std::uint32_t behind = behind_place(next);
      if (numbers.all.empty() && !bare && behind == next) break;
      if (numbers.all.empty()) numbers.holes = is_hole(next);
      const std::uint32_t digits = behind_articles(behind);
      const Word* number = digits < end_ ? number_at(sentence_, digits) : nullptr;
      if (number == nullptr || number->end > end_ || !words::is_digit(sentence_.text()[digits])) break;
      const std::uint32_t after = blanks(number->end);
      const bool another = ordinal_mark_at(sentence_, number->end) != nullptr ||
                           is_round_word(sentence_, after) || behind_place(after) > after;
      if (another) break; // "stitch 12 and the 8th round", "and 6 sts apart"
      add(numbers, *number, reach);
      numbers.end = number->end;
      const Link link = link_at(after);
      if (link.end == after) break;
      next = link.end, reach = link.reach;
    }
    return numbers;
  }

  /// "12th and 19th stitches", "the 12th stitch", "the 10th and in the 20th".
  Numbers before_unit(std::uint32_t at) const {
    Numbers numbers;
    bool ordinal = false, reach = false;
    for (std::uint32_t next = behind_articles(at); next < end_;) {
      const Word* number = number_at(sentence_, next);
      if (number == nullptr) break;
      const Word* mark = ordinal_mark_at(sentence_, number->end);
      ordinal = ordinal || mark != nullptr;
      add(numbers, *number, reach);
      std::uint32_t behind = blanks(mark != nullptr ? mark->end : number->end);
      if (const std::uint32_t place = behind_place(behind); place > behind && ordinal) {
        numbers.holes = numbers.holes || is_hole(behind);
        numbers.end = place;
        behind = blanks(place);
      }
      const Link link = link_at(behind);
      if (link.end == behind) break;
      next = behind_articles(lead_at(link.end).end), reach = link.reach;
    }
    return numbers.end > 0 ? numbers : Numbers{};
  }

  static void add(Numbers& numbers, const Word& number, bool reach) {
    numbers.all.push_back(number.number);
    numbers.reach = numbers.reach || reach;
  }

  const Sentence& sentence_;
  std::uint32_t begin_, end_;
};

/// Whether numbers are pairs of neighbours: "10 and 11, 20 and 21".
bool are_neighbours(const std::vector<std::uint32_t>& numbers) {
  if (numbers.size() % 2 != 0) return false;
  for (std::size_t i = 0; i < numbers.size(); i += 2)
    if (numbers[i + 1] != numbers[i] + 1) return false;
  return true;
}

/// The holes that are meant: between stitches, each pair of neighbours one; of what is embroidered both ends.
std::vector<std::uint32_t> holes_of(const Numbers& numbers, What what) {
  const std::uint32_t first = numbers.all.front(), last = numbers.all.back();
  if (numbers.holes) return numbers.all;
  const bool pair = numbers.all.size() == 2 && last > first;
  const bool between = numbers.beside == Beside::between;
  const bool thread = what == What::embroider && pair;
  if (between && are_neighbours(numbers.all)) {
    std::vector<std::uint32_t> holes;
    for (std::size_t i = 0; i < numbers.all.size(); i += 2) holes.push_back(numbers.all[i]);
    return holes;
  }
  if (thread && between) return {first, last - 1};
  if (thread && numbers.reach && first > 0) return {first - 1, last};
  std::vector<std::uint32_t> holes = numbers.all;
  if (numbers.beside == Beside::before)
    for (std::uint32_t& hole : holes) hole -= hole > 0 ? 1 : 0;
  return holes;
}

} // namespace

std::vector<std::uint16_t> holes_named(const Sentence& sentence, std::uint32_t begin, std::uint32_t end,
                                       What what) {
  constexpr std::uint32_t most = 10'000;
  std::vector<std::uint16_t> holes;
  for (const Numbers& numbers : Hearing(sentence, begin, end).all())
    for (const std::uint32_t hole : holes_of(numbers, what))
      if (hole < most) holes.push_back(static_cast<std::uint16_t>(hole));
  std::sort(holes.begin(), holes.end());
  holes.erase(std::unique(holes.begin(), holes.end()), holes.end());
  return holes;
}

} // namespace whorl::pattern
