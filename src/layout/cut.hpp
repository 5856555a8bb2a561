#pragma once

#include "layout/place.hpp"

namespace whorl::layout {

/// Whether the yarn is cut at the end of a figure.
bool is_cut_off(const fabric::Fabric& fabric, const Figure& figure);

/// Sets the mark of the end of the yarn outside the last stitch of a part that is cut off, clear of all that
/// stands in its figure by then; false: it found no room. `echo` rounds have none.
bool add_cut(const fabric::Fabric& fabric, const Extents& extents, Figure& figure);

/// What the mark covers; its point at `cut.tip`.
Convex outline_of(const Cut& cut);

} // namespace whorl::layout
