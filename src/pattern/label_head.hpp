#pragma once

#include "words/lattice.hpp"
#include "words/vocabulary.hpp"

#include <algorithm>
#include <string_view>

namespace whorl::pattern {

/// The head of a line, its words, and the concepts that labels are made of.
struct Head {
  const words::Vocabulary& vocabulary;
  words::Folded line;
  words::Lattice lattice;
  words::Concept round, row, to, through, conjunction, next, last, first, times, step, ordinal;
};

Head head_of(std::string_view text, std::uint32_t begin, const words::Vocabulary& vocabulary);

std::size_t pass_blanks(const Head& head, std::size_t place);

/// Whether nothing but blanks stands behind `place`.
bool is_end(const Head& head, std::size_t place);

/// The first word at `place` of which `is_it` is true.
template <typename Test> const words::Word* find_word(const Head& head, std::size_t place, Test is_it) {
  if (place + 1 >= head.lattice.at.size()) return nullptr;
  const auto* first = head.lattice.words.data() + head.lattice.at[place];
  const auto* last = head.lattice.words.data() + head.lattice.at[place + 1];
  const auto* found = std::find_if(first, last, is_it);
  return found == last ? nullptr : found;
}

const words::Word* phrase_at(const Head& head, std::size_t place, words::Concept means);

/// The mark at a place, or '\0'.
char mark_at(const Head& head, std::size_t place);

/// Passes the mark that closes a label; ":-" and ".)" are one.
std::size_t pass_closing(const Head& head, std::size_t place, std::string_view marks);

/// Passes "Rnd", "Row" or the R of "R3"; `row` is set where it is the word for row.
std::size_t pass_round_word(const Head& head, std::size_t place, bool& row);

/// Passes 第, which stands before the number of an ordinal where no blanks divide the words.
std::size_t pass_ordinal_lead(const Head& head, std::size_t place);

/// A number of a label.
struct LabelNumber {
  int value = 0;
  std::size_t end = 0; ///< 0: there is none
  bool ordinal = false;
};

/// The forms in which a number may stand.
enum class NumberForm : std::uint8_t {
  digits,  ///< "3", "3rd"
  any,     ///< also "three", "third", and "l" or "lO" for 1 and 10 as scanners read them
  scanned, ///< also "lst" for 1st, and no number in words
};
LabelNumber label_number_at(const Head& head, std::size_t place, NumberForm form);

/// Whether a Roman number stands there, which a mark or the word for round closes.
bool is_roman(const Head& head, std::size_t place);

/// The numbers of a label, as far as they go: "6-10", "5, 6 and 7", "4th to 8th".
struct LabelNumbers {
  int from = 0;
  int to = 0;
  std::size_t end = 0; ///< 0: there is none
  bool ordinal = false;
  bool dash = false;   ///< a dash stands between them, which may also stand between label and work
  bool comma = false;  ///< … a comma, which may too
  bool word = false;   ///< … a word or `&`
  bool again = false;  ///< the word for round stands before the second number again
  bool spaced = false; ///< blanks stand before what is between them
  bool ranges() const { return to > from; }
};
LabelNumbers label_numbers_at(const Head& head, std::size_t place, NumberForm form);

/// Passes "inclusive", "incl.", "(inc.)" behind a range; `place` if no such word stands there.
std::size_t pass_inclusive(const Head& head, std::size_t place);

/// Numbers of a label that do not follow on: "3, 5 and 7", "4, 6, 8"; none where they do.
struct SpreadNumbers {
  std::vector<int> numbers;
  std::size_t end = 0; ///< 0: there are none
};
SpreadNumbers spread_numbers_at(const Head& head, std::size_t place);

/// Whether the brackets [begin, end) hold a count and nothing else: "(18)", "[18 sts]".
bool holds_count(const Head& head, std::size_t begin, std::size_t end);

/// Whether they hold the loops of the round and nothing else: "(BLO)".
bool holds_loops(const Head& head, std::size_t begin, std::size_t end);

/// Where the brackets that open at `place` close; `place` if none open there or they do not close.
std::size_t pass_brackets(const Head& head, std::size_t place);

/// Passes a number and the word for stitches: "18 sts"; `place` if they do not stand there.
std::size_t pass_count(const Head& head, std::size_t place);

} // namespace whorl::pattern
