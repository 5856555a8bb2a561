#pragma once

#include "layout/place.hpp"

namespace whorl::layout {

/// Lengthens the legs of stitches worked over three places and more where these are so far apart that a foot is
/// nearer to another place: a line leads on from it to its own, where nothing is in the way.
void lengthen_legs(const fabric::Fabric& fabric, const Extents& extents, Figure& figure);

} // namespace whorl::layout
