#pragma once

#include "drawing/composing.hpp"

namespace whorl::drawing {

/// Chains that stand out from their round, with the stitches that are worked back along them at their side.
void draw_spur(Composing& drawing, const stitch::Shape& shape);

} // namespace whorl::drawing
