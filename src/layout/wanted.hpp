#pragma once

#include "fabric/fabric.hpp"

#include <cstdint>
#include <vector>

namespace whorl::layout {

/// What of a fabric is to be shown.
struct Wanted {
  std::vector<std::uint32_t> parts; ///< none: all of them
  int from = 0, to = 0;             ///< numbers of rounds; 0: from the first, to the last
};

bool is_wanted(const Wanted& wanted, std::uint32_t part);
bool is_wanted(const Wanted& wanted, const fabric::Round& round);

/// Whether rounds are left out of the parts that are shown.
bool leaves_rounds_out(const Wanted& wanted);

/// The first and last place of those rounds of a list that are wanted; {1, 0}: none is. They lie together.
struct Places {
  std::size_t first = 1, last = 0;
  bool empty() const { return first > last; }
};
Places wanted_places(const fabric::Fabric& fabric, const std::vector<std::uint32_t>& rounds,
                     const Wanted& wanted);

} // namespace whorl::layout
