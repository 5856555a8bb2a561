#pragma once

#include "pattern/label_head.hpp"

namespace whorl::pattern {

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

/// Passes "Rnd", "Row" or the R of "R3"; `row` is set where it is the word for row.
std::size_t pass_round_word(const Head& head, std::size_t place, bool& row);

/// Whether a Roman number stands there, which a mark or the word for round closes.
bool is_roman(const Head& head, std::size_t place);

} // namespace whorl::pattern
