#pragma once

#include "pattern/line.hpp"

#include <vector>

namespace whorl::pattern {

/// What a pattern says of its starting chains once for all: "The ch 1 never counts", "ch 3 counts as first dc
/// throughout", "Turning ch-2 does not count as a stitch."
struct ChainHabit {
  std::uint32_t chains = 0; ///< of this many; 0: of all
  bool counts = false;
};

/// "1) Ch 2 at beg of rnd does not count as a st.", "The first 3 ch stand for 1 dc.": whether a stretch tells such
/// a habit and works nothing.
bool only_tells_habit(const Reader& reader, Span line);

/// The clauses of a first row that only tell what the chains skipped at the hook stand for: "The 3 ch at the
/// beginning are 1 dc, from the 4th ch from the hook: 19 dc."
std::vector<Span> habits_told_in(const Reader& reader, Span work);

/// The habits that the sentences between the rounds tell, in order.
std::vector<ChainHabit> chain_habits(const Reader& reader, const Cut& cut);

/// Makes the readings of a way dearer that go against what is said; whether there are any.
bool keep_habits(const std::vector<ChainHabit>& habits, Way& way);

} // namespace whorl::pattern
