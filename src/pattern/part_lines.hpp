#pragma once

#include "pattern/line.hpp"

#include <vector>

namespace whorl::pattern {

/// A line of a part: a sentence, or one of the rounds that it gives.
struct PartLine {
  const Line* line = nullptr;
  std::size_t round = no_round; ///< which of the part's rounds
  static constexpr std::size_t no_round = static_cast<std::size_t>(-1);
};

/// The lines of one part, and what was settled about its rounds.
struct PartLines {
  const Line* heading = nullptr;
  std::uint32_t make = 1;      ///< how many its heading or a line of it says are made
  Span title;                  ///< of the text, for its first part
  std::vector<PartLine> lines; ///< in order
  std::vector<Ways> rounds;    ///< the ways to read each round
  std::vector<Settled> settled;
  std::vector<std::uint32_t> in_tree; ///< where each round stands in the tree
  bool goes_on = false;               ///< it is worked on from the last round of the part before
  std::size_t on = nothing;           ///< the part along whose last round it begins
  std::size_t on_chain = nothing;     ///< the part along the other side of whose chain it begins
  static constexpr std::size_t nothing = static_cast<std::size_t>(-1);

  std::string_view name() const { return heading == nullptr ? std::string_view() : heading->heading.name; }
};

/// Sorts rounds and sentences into their parts; lines that repeat rounds before become those rounds.
std::vector<PartLines> parts_of(const Reader& reader, const Cut& cut);

/// Whether some reading of a round begins with a ring, a chain or loops that were left free.
bool starts(const Ways& ways);

/// The number of a part's last round, as its labels have it.
int last_number(const PartLines& part);

} // namespace whorl::pattern
