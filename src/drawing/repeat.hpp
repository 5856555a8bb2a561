#pragma once

#include "drawing/copy.hpp"

#include <cstdint>

namespace whorl::drawing {

/// The items that a step shows close up, from `first` of the ring's on.
struct Repeat {
  std::uint32_t first = 0, count = 0;
};

/// One pass of what the author repeats most, as far from the ring's ends as it can be; short ones twice, of
/// long ones the beginning; a few stitches, as different as can be, of a round without repeats.
Repeat repeat_shown(const Copy& copy, const layout::Figure& figure, const layout::Ring& ring);

/// Some of a ring's items with a few close by on either side.
Repeat with_neighbours(const layout::Figure& figure, const layout::Ring& ring, Repeat some);

} // namespace whorl::drawing
