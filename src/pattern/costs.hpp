#pragma once

#include "pattern/limits.hpp"

namespace whorl::pattern {

/// What it costs a reading to pass over a word, and to leave the plain way. Set on the lines of
/// tests/pattern/reading_lines.cpp: every line right when its counts are known, nearly all without.
struct Costs {
  int filler = 1;
  int unknown = 3;
  int trade_word = 4;
  int stitch = 14;
  int number = 25;
  int lone_bracket = 8;
  int no_separator = 1;    ///< two pieces with nothing between them
  int placing = 1;         ///< a clause that places something
  int repeated_to_end = 6; ///< a list without any repeat mark, repeated to the end all the same
  int second_to_end = 20;  ///< a second piece that runs to the end of the round
  int bare_count = 5;      ///< a last number that stands by itself, as the count
  int habit_again = 1;     ///< a habit that the line has shown already
  int habits_mixed = 6;    ///< two habits that contradict each other in one line
  int starting_chain = 1;     ///< chains taken for a stitch, or not, against what is usual
  int against_its_words = 20; ///< the same against what the line says of them
  int aside = 1;              ///< a bracket that only tells something
  int ring_alone = 1;      ///< a ring whose stitches only the stated count names
  int not_read = 30;       ///< stitches and numbers worth this passed over: the line is not read
};
inline constexpr Costs costs;

/// How much of a line is looked at.
struct ReadingLimits {
  int nesting = limit::nesting;
  int readings = 12;
  int readings_of_long_lines = 3;
  unsigned long_line = 4000; ///< bytes
  unsigned figures = 6;      ///< of one stated count: "10 dc, 3 ch-1 sps"
  int placing_clauses = 4;   ///< clauses that still tell of one thing placed
  unsigned together = 12;    ///< stitches closed together
};
inline constexpr ReadingLimits reading_limits;

} // namespace whorl::pattern
