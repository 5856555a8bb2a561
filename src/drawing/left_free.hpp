#pragma once

#include "fabric/fabric.hpp"

#include <cstdint>
#include <set>
#include <vector>

namespace whorl::drawing {

/// Loops of a round's stitches that the rounds above it in its part leave free.
struct LeftFree {
  std::uint32_t front = 0, back = 0; ///< how many stitches keep theirs
  std::set<std::uint32_t> parts;     ///< that are worked into the round
};

/// Of every round of a fabric. A stitch that nothing of its part is worked into keeps none: it stands at an
/// edge. What lies behind an invisible decrease is inside and out of reach.
std::vector<LeftFree> left_free(const fabric::Fabric& fabric);

} // namespace whorl::drawing
