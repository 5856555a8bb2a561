#pragma once

#include "fabric/fabric.hpp"
#include "pattern/finding.hpp"
#include "pattern/limits.hpp"

#include <vector>

namespace whorl::fabric {

/// What working gives.
struct Worked {
  Fabric fabric;
  std::vector<pattern::Finding> findings;
};

/// Works the tree into a fabric, round by round. A round that cannot be worked ends its part there, with a
/// finding that says where; other parts are worked wholly. At most `limit` stitches (then a finding).
Worked work(const pattern::Tree& tree, std::uint32_t limit = pattern::limit::all_stitches);

} // namespace whorl::fabric
