#pragma once

#include "pattern/tree.hpp"
#include "words/vocabulary.hpp"

#include <string_view>
#include <vector>

namespace whorl::pattern {

/// One way to understand the label that a line begins with: "Rnd 3:", "R6-10", "2nd Round -", "Next 3
/// rounds:".
struct Label {
  int from = 0;            ///< number of the first round …
  int to = 0;              ///< … and of the last
  bool relative = false;   ///< no number is given: `to` rounds that follow the last one
  int again = 0;           ///< 41b: 1
  std::vector<int> spread; ///< "Rnds 3, 5 and 7:": the numbers, where they do not follow on; else none
  bool open_end = false;   ///< "Rows 6-end", "Row 3 and onward": up to the next label
  RoundKind kind = RoundKind::round;
  bool word = false;        ///< a word for round or row stands in it
  int listed = 0;           ///< number of a list that stands before the label and says nothing
  bool ordinal = false;     ///< "3rd round"
  bool unmarked = false;    ///< a number whose mark was forgotten, known from the rounds around it
  bool behind_rows = false; ///< of a round, behind rows of a flat piece: it may go along all its edges
  bool closed = false;      ///< a mark or a line end closes it
  bool unclosed = false;    ///< no mark stands behind a word for round, be the label closed without one
  bool loose = false; ///< "12 row 24 sc": only its place among the rounds says that it is none of "12 rows"
  Span count;         ///< "(18)": a count that stands before the work
  Span aside;         ///< "(WS)", "(brown)": brackets between number and mark
  bool loops_aside = false; ///< the brackets hold the loops of the round: its work begins with them
  Span span;                ///< as typed; empty: the line has no label
  std::uint32_t work = 0;   ///< byte of the file at which the work begins
  int cost = 0;
};

/// The ways to read the label at the head of `text` (which begins at byte `begin` of the file), the likeliest
/// first; none if the line begins with none. `R3 - 9 sc` has two: round 3, and rounds 3 to 9.
std::vector<Label> read_labels(std::string_view text, std::uint32_t begin,
                               const words::Vocabulary& vocabulary);

/// Those labels that nothing but their place among the rounds tells from a number of rounds.
std::vector<Label> read_loose_labels(std::string_view text, std::uint32_t begin,
                                     const words::Vocabulary& vocabulary);

/// A line without a label that is a round of its own: the one after the last.
Label no_label(Span work);

} // namespace whorl::pattern
