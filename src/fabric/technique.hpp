#pragma once

#include "fabric/fabric.hpp"
#include "pattern/finding.hpp"

#include <vector>

namespace whorl::fabric {

/// What the text says of techniques and cannot be: one of a stitch that is nowhere worked, two at once.
std::vector<pattern::Finding> check_techniques(const pattern::Tree& tree, const Fabric& fabric);

} // namespace whorl::fabric
