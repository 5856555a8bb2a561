#pragma once

#include "fabric/fabric.hpp"

#include <cstddef>
#include <optional>
#include <vector>

namespace whorl::layout {

/// Where what a stitch goes into stands along its line; none: it has no place of its own.
struct Seat {
  std::optional<double> at;
  fabric::StitchId into = fabric::none; ///< the one stitch that it goes into, if it is one
};

/// Stitches [first, end) of a line that cross.
struct Crossing {
  std::size_t first = 0, end = 0;
};

/// The crossings among stitches in the order they stand, their seats growing along the line: those whose places
/// come neither in their own order nor in that in which they were made.
std::vector<Crossing> crossings_of(const std::vector<Seat>& seats);

} // namespace whorl::layout
