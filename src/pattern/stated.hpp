#pragma once

#include "pattern/sentence.hpp"
#include "pattern/tree.hpp"

#include <vector>

namespace whorl::pattern {

/// The count that a line states, and where it stands: [begin, end) in folded bytes.
struct StatedCount {
  std::vector<Stated> stated; ///< empty: the line states none
  std::uint32_t begin = 0;
  std::uint32_t end = 0;
  bool worded = false; ///< a bare number that a word tells to be a count: "total 18", "18 in all"
};

/// Finds the stated count by its form: brackets, `=`, dash, arrow, or a sentence at the end; `least`: where
/// it may begin.
StatedCount find_stated(const Sentence& sentence, const std::vector<stitch::StitchKind>& kinds,
                        std::uint32_t least = 0);

} // namespace whorl::pattern
