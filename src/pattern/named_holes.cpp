#include "pattern/named_holes.hpp"

#include "pattern/text_words.hpp"
#include "pattern/word_names.hpp"

#include <algorithm>

namespace whorl::pattern {
namespace {

using words::Word;

/// Numbers of stitches or holes that stand together.
struct Numbers {
  std::vector<std::uint32_t> all;
  bool between = false; ///< "between stitches 10 and 11"
  bool reach = false;   ///< "stitches 14 to 17": from the first to the last
  bool holes = false;   ///< they are numbers of holes
};

class Hearing {
public:
  Hearing(const Sentence& sentence, std::uint32_t begin, std::uint32_t end)
      : sentence_(sentence), at_(begin), end_(end) {}

  /// All numbers in the clause, those together that a word for stitches holds together.
  std::vector<Numbers> all() {
    std::vector<Numbers> found;
    bool between = false;
    while (at_ < end_) {
      between = between || means("between");
      Numbers numbers = numbers_here();
      if (numbers.all.empty()) {
        step();
        continue;
      }
      numbers.between = between;
      found.push_back(std::move(numbers));
    }
    return found;
  }

private:
  bool means(std::string_view name) const { return is_named(sentence_, at_, {name}); }
  bool is_hole() const {
    const std::string_view word = sentence_.text().substr(at_, end_of_letters(sentence_, at_) - at_);
    return !word.empty() && is_text_word(sentence_.vocabulary, word, TextWord::hole);
  }
  bool is_place() const { return is_named(sentence_, at_, {"st"}) || is_hole(); }
  void step() {
    const WordsAt words = words_at(sentence_, at_);
    at_ = words.empty() ? skip_blanks(sentence_.text(), at_ + 1) : behind(sentence_, *words.first);
  }

  /// "stitches 14 and 17", "st 14 to st 17", "hole 14", "the 14th and 17th stitch"; "4 stitches" are none.
  Numbers numbers_here() {
    const std::uint32_t was = at_;
    Numbers numbers;
    const bool ahead = is_place();
    if (ahead) numbers.holes = is_hole(), step();
    bool heard = hear_number(numbers, ahead);
    while (heard && hear_link(numbers)) heard = hear_number(numbers, ahead);
    if (heard && (ahead || is_place())) return numbers;
    at_ = was;
    return {};
  }

  /// `ahead`: the word for stitch stands before it, so that it may be no ordinal.
  bool hear_number(Numbers& numbers, bool ahead) {
    const Word* number = number_at(sentence_, at_);
    if (number == nullptr || number->end > end_) return false;
    std::uint32_t next = behind(sentence_, *number);
    const bool ordinal = is_named(sentence_, next, {"ordinal"});
    if (ordinal) next = behind(sentence_, *words_at(sentence_, next).first);
    if (!ahead && !ordinal) return false;
    numbers.all.push_back(number->number);
    at_ = next;
    return true;
  }

  /// "and", "to", "-" before a number, a word for stitch between.
  bool hear_link(Numbers& numbers) {
    const std::uint32_t was = at_;
    const bool dash = at_ < end_ && sentence_.text()[at_] == '-';
    const bool to = dash || means("to");
    if (!to && !means("and") && !(at_ < end_ && sentence_.text()[at_] == '&')) return false;
    at_ = dash ? skip_blanks(sentence_.text(), at_ + 1) : behind(sentence_, *words_at(sentence_, at_).first);
    while (at_ < end_ && (is_place() || is_named(sentence_, at_, {"filler", "in"}))) step();
    if (number_at(sentence_, at_) == nullptr) return at_ = was, false;
    numbers.reach = numbers.reach || to;
    return true;
  }

  const Sentence& sentence_;
  std::uint32_t at_, end_;
};

void put(std::vector<std::uint16_t>& holes, std::uint32_t number) {
  constexpr std::uint32_t most = 0xFFFF;
  const auto hole = static_cast<std::uint16_t>(std::min(number, most));
  if (std::find(holes.begin(), holes.end(), hole) == holes.end()) holes.push_back(hole);
}

void put_holes(std::vector<std::uint16_t>& holes, const Numbers& numbers, What what) {
  const std::uint32_t first = numbers.all.front(), last = numbers.all.back();
  const bool pair = numbers.all.size() == 2 && last > first && !numbers.holes;
  if (pair && numbers.between && (last == first + 1 || what == What::embroider)) {
    put(holes, first);
    if (last > first + 1) put(holes, last - 1);
    return;
  }
  if (pair && numbers.reach && what == What::embroider && first > 0)
    return put(holes, first - 1), put(holes, last);
  for (const std::uint32_t number : numbers.all) put(holes, number);
}

} // namespace

std::vector<std::uint16_t> holes_named(const Sentence& sentence, std::uint32_t begin, std::uint32_t end,
                                       What what) {
  std::vector<std::uint16_t> holes;
  for (const Numbers& numbers : Hearing(sentence, begin, end).all()) put_holes(holes, numbers, what);
  return holes;
}

} // namespace whorl::pattern
