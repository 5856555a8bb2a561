#pragma once

#include "layout/place.hpp"

namespace whorl::layout {

/// Draws what parts that are sewn on cover of a figure, as dashed outlines that go between the stitches; none
/// where these stand too close.
void add_footprints(const fabric::Fabric& fabric, const Extents& extents, Figure& figure);

/// Writes their names outside a figure, beyond `edge` (a radius, the height of a line), on the ray of each.
void add_footprint_names(const fabric::Fabric& fabric, const Extents& extents, double edge, Figure& figure);

} // namespace whorl::layout
