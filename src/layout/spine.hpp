#pragma once

#include "fabric/fabric.hpp"

#include <vector>

namespace whorl::layout {

/// Whether every row behind the first of some has one group in its middle that is like no other but those at
/// its ends: several stitches in one place, with chains within where any group has some.
bool has_spine(const fabric::Fabric& fabric, const std::vector<std::uint32_t>& rows);

} // namespace whorl::layout
