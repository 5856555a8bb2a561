#pragma once

#include "fabric/fabric.hpp"

namespace whorl::fabric {

/// Where parts that are sewn on cover their owners: over the rounds that the text names, as wide as their own
/// last round lies when it is sewn on; in front, opposite the round's start, or on both sides of it. Parts
/// that the text places nowhere have none.
void find_footprints(const pattern::Tree& tree, Fabric& fabric);

} // namespace whorl::fabric
