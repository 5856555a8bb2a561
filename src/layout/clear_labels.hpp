#pragma once

#include "layout/place.hpp"

namespace whorl::layout {

/// Whether the labels of a disc, with what stands in line with them, keep clear of those of the next ring and
/// of the stitches beside the gutter. Where it stands upright they do, as its rings are sized; where it leans
/// they may come too near to one another.
bool labels_are_clear(const Figure& figure, const Extents& extents);

} // namespace whorl::layout
