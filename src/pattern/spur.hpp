#pragma once

#include "pattern/building.hpp"

namespace whorl::pattern {

/// Chains of a round with stitches back along them, "ch 4, sc in 2nd ch from hook, sc in next 2 ch", become one
/// thing that stands on the round: an ear, a thumb, a spike. Those that begin a piece, or a row, stay.
void take_spurs(Building& b);

} // namespace whorl::pattern
