#pragma once

#include <cstdint>

/// A line as somebody typed it (label taken off), on an edge of `open` places, and what it comes to. Common
/// practice, no source, unless one stands beside it; invented for these tests.
struct TypedLine {
  const char* text;
  std::int64_t open; ///< places of the round before; 0: the line starts a piece
  std::int64_t makes;
  std::int64_t stated;   ///< -1: the line states no count
  bool doubtful = false; ///< only the counts tell: the cheapest reading is another
};

/// Lines of one habit.
struct TypedLines {
  const TypedLine* lines;
  int count;
};

extern const TypedLines plain_lines, chain_lines, place_lines, repeat_lines, count_lines, word_lines;
