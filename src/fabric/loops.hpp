#pragma once

#include "fabric/fabric.hpp"
#include "pattern/finding.hpp"

#include <vector>

namespace whorl::fabric {

/// Loops that two rounds are worked into, and parts that grow from loops inside a closed piece: warnings.
std::vector<pattern::Finding> check_loops(const pattern::Tree& tree, const Fabric& fabric);

} // namespace whorl::fabric
