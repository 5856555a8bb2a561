#pragma once

#include "fabric/fabric.hpp"

#include <cstdint>
#include <vector>

namespace whorl::fabric {

/// A run of stitches of one round that are worked through the edge of another part too.
struct Joint {
  std::uint32_t round = 0;             ///< that is worked
  std::uint32_t held = 0;              ///< the part that is taken up
  std::uint32_t first = 0, last = 0;   ///< stitches of the round, from 1
  StitchId begins = none, ends = none; ///< the same as stitches of the fabric
  bool flat = false; ///< that part is pressed flat: each stitch goes through both its layers
};

/// All of them, in the order of work.
std::vector<Joint> joints_of(const Fabric& fabric);

} // namespace whorl::fabric
