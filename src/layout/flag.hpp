#pragma once

#include "layout/place.hpp"

#include <vector>

namespace whorl::layout {

/// Flags the first stitch in a yarn that a round or row brings in on its way; where a whole one changes, the
/// flag stands beside its label. Returns the rings outside which one found no room, as `add_posts` does.
std::vector<int> add_flags(const fabric::Fabric& fabric, const Extents& extents, Figure& figure, int again);

} // namespace whorl::layout
