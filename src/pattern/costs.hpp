#pragma once

#include "pattern/limits.hpp"
#include "words/costs.hpp"

/// Every cost of the reader, in one table: what it takes a word for (words/costs.hpp), a line's words
/// together (Costs), and a line among the others (cost).
namespace whorl::pattern {

/// What it costs a line not to come out with the lines around it. Set on the patterns of tests/typed/open:
/// of 7874 rounds 99.38 % read and counted right, false alarms 0.37 %.
namespace cost {
inline constexpr int left_over = 9;
inline constexpr int past_end = 11;
inline constexpr int does_not_divide = 12;
inline constexpr int count_not_met = 10;
inline constexpr int bare_count_met = 5; ///< less: a last number that stands by itself, and is the count
inline constexpr int out_of_step = 5;
inline constexpr int not_read = 30;
inline constexpr int loops_as_stitches = 6; ///< "in next loop" for a stitch, behind a round of chain loops
inline constexpr int starts_again = 3;      ///< a ring or chain in a round whose number follows on
inline constexpr int edge_unproved = 1;     ///< … along an edge to its end, so that any count is met
inline constexpr int begins_nothing =
    2; ///< a first round with nothing to work into, where another reading makes a ring
inline constexpr int past_edges = 2;    ///< a round behind rows that goes over the last row only
inline constexpr int edges_unsaid = 4;  ///< … or along all edges, with no word that says so
inline constexpr int habit = 2;         ///< by which a habit of the pattern moves a reading
inline constexpr int habit_said = 6;    ///< by which one that it tells does
inline constexpr int worth_naming = 6;  ///< at most by so much dearer is another reading that is told of
inline constexpr int clean = 2;         ///< at most, for a line without a label to be a round
inline constexpr int clean_in_step = 6; ///< the same behind a word for round and the next number
inline constexpr int clean_start = 8;   ///< the same where it makes a ring or a chain: nothing else does that
inline constexpr int talk_about_start = 24; ///< the same for a chain of some length, directly above a round
inline constexpr int doubtful = 2;          ///< a number that may be a label, or belong to the work behind it
inline constexpr int decimal_point = 3;     ///< "3.5 mm": a label and its full stop
} // namespace cost

/// What it costs a reading to pass over a word, and to leave the plain way. Set on the lines of
/// tests/pattern/reading_lines.cpp: every line right when its counts are known, nearly all without.
struct Costs {
  int filler = 1;
  int unknown = 3;
  int trade_word = 4;
  int stitch = 14;
  int number = 25;
  int lone_bracket = 8;
  int no_separator = 1; ///< two pieces with nothing between them
  int behind_next = 5; ///< … where the first ends with "next", and the second with a stitch: "skip next dc"
  int placing = 1;     ///< a clause that places something
  int repeated_to_end = 6;  ///< a list without any repeat mark, repeated to the end all the same
  int plain_list = 3;       ///< less: a list of single stitches that all go round
  int only_last_around = 3; ///< the last stitch of such a list alone going round
  int second_to_end = 20;   ///< a second piece that runs to the end of the round
  int into_chains_too = 3; ///< a round that goes into the chains before as into stitches, and does not say so
  int other_layers = 3;    ///< a fold worked through or two pieces laid together, which it does not say
  int bare_count = 5;      ///< a last number that stands by itself, as the count
  int count_of_passes = 1; ///< … where it is so many passes of a list that is repeated
  int habit_again = 1;     ///< a habit that the line has shown already
  int habits_mixed = 6;    ///< two habits that contradict each other in one line
  int starting_chain = 1;  ///< chains taken for a stitch, or not, against what is usual
  int against_its_words = 20; ///< the same against what the line says of them
  int aside = 1;              ///< a bracket that only tells something
  int times_ahead = 4;        ///< how often, ahead of a whole list without a mark
  int dash_told = 0;          ///< a dash between a full stop and how often
  int chains_told = 2;        ///< what is told of the chains at the head passed over
  int spread_evenly = 4;      ///< increases or decreases that the count spreads over the round
  int ring_alone = 1;         ///< a ring whose stitches only the stated count names
  int not_read = 30;          ///< stitches and numbers worth this passed over: the line is not read
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
