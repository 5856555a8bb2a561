#pragma once

#include "pattern/sentence.hpp"

#include <cstdint>
#include <vector>

namespace whorl::pattern {

inline constexpr std::uint32_t no_number = 0xFFFFFFFF;

/// What a row has taken up on its way.
struct Slots {
  std::uint32_t count = no_number;
  std::uint32_t many = no_number;
  std::uint32_t nth = no_number;
  std::uint32_t leave = no_number;
  std::uint32_t of = no_number;
  words::Concept work = words::no_concept;   ///< the stitch, increase or decrease
  words::Concept second = words::no_concept; ///< a stitch or decrease behind it
  words::Concept loops = words::no_concept;
  words::Concept place = words::no_concept; ///< the stitch that is named as a place
  std::int32_t bracket = no_bracket;
};

/// A row that reads so in the text: [begin, end) in folded bytes.
struct Match {
  std::uint16_t row = 0;
  std::uint32_t begin = 0;
  std::uint32_t end = 0;
  int cost = 0;
  Slots slots;
};

/// The furthest place that rows have come to, and the steps of the tree of rows they stood on.
struct Furthest {
  std::uint32_t at = 0;
  std::uint32_t begin = 0;          ///< where those rows began
  std::vector<std::uint32_t> steps; ///< empty: none has begun
};

/// Where rows are looked for: they end at `end` at the latest; `list` is the passage that a row may take as
/// all that stands before, or no_bracket.
struct Stretch {
  std::uint32_t end = 0;
  std::int32_t list = no_bracket;
  std::uint32_t list_begin = 0;
};

/// Every row that reads from `at`, added to `out`; how far rows came goes into `furthest` if that is asked
/// for.
void match_rows(const Sentence& sentence, std::uint32_t at, const Stretch& stretch, std::vector<Match>& out,
                Furthest* furthest = nullptr);

} // namespace whorl::pattern
