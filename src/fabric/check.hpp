#pragma once

#include "fabric/fabric.hpp"
#include "pattern/finding.hpp"

#include <vector>

namespace whorl::fabric {

/// The counts and places of a worked fabric against its text: stated counts, stitches left over, numbers that
/// do not follow on, loops taken twice, eyes in rounds that do not exist. Silent on a right pattern.
std::vector<pattern::Finding> check(const pattern::Tree& tree, const Fabric& fabric);

} // namespace whorl::fabric
