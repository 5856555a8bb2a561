#pragma once

#include "drawing/copy.hpp"

#include <cstdint>

namespace whorl::drawing {

/// The items that a step shows close up, from `first` of the ring's on.
struct Repeat {
  std::uint32_t first = 0, count = 0;
  bool repeated = false; ///< they are one pass of what the author repeats
};

/// One pass of what the author repeats most, as far from the ring's ends as it can be, of long ones the
/// beginning; the stitches into one place where all places have as many; else a few, as different as can be.
Repeat repeat_shown(const Copy& copy, const layout::Figure& figure, const layout::Ring& ring);

/// Some of a ring's items with a few close by on either side.
Repeat with_neighbours(const layout::Figure& figure, const layout::Ring& ring, Repeat some);

} // namespace whorl::drawing
