#pragma once

#include "layout/place.hpp"

namespace whorl::layout {

/// Brackets, inside the first ring of a disc that goes on along the edges of other parts or beneath the first
/// line of such a strip, the stretch along each of them, and names it where there is room; the middle of the
/// disc then stays empty.
void add_joined_edges(const fabric::Fabric& fabric, const Extents& extents, Figure& figure);

} // namespace whorl::layout
