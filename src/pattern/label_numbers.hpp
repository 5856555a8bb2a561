#pragma once

#include "pattern/label_figure.hpp"

#include <vector>

namespace whorl::pattern {

/// What stands before a number of a label: "Rnd", "Rnd.", "Row no.", "#", "Ряды с".
struct NumberLead {
  std::size_t end = 0;
  bool word = false; ///< the word for round or row
  bool row = false;  ///< it is the word for row
};
NumberLead number_lead_at(const Head& head, std::size_t place);

/// Passes the mark of an ordinal before the word for round: the full stop of "3. Runde", the º of "3º giro".
std::size_t pass_ordinal_mark(const Head& head, std::size_t place);

/// The numbers of a label, as far as they go: "6-10", "5, 6 and 7", "4th to 8th", "第6圈至第8圈".
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

/// Numbers that follow on with a blank or a point between them, as only a word for round behind the last
/// closes them: "6 7 8", "6.7.8.9".
LabelNumbers numbers_run_at(const Head& head, std::size_t place);

/// Passes "inclusive", "incl.", "(inc.)" behind a range; `place` if no such word stands there.
std::size_t pass_inclusive(const Head& head, std::size_t place);

/// Numbers of a label that do not follow on: "3, 5 and 7", "4, 6, 8"; none where they do.
struct SpreadNumbers {
  std::vector<int> numbers;
  std::size_t end = 0; ///< 0: there are none
};
SpreadNumbers spread_numbers_at(const Head& head, std::size_t place);

} // namespace whorl::pattern
