#pragma once

#include "drawing/composing.hpp"

namespace whorl::drawing {

/// Whether a stitch is drawn without a stem: x, + or, several in one or together, a V.
bool is_single(const stitch::Shape& shape);

/// Whether a stitch is as tall as its ring wants it.
bool is_stretched(const stitch::Shape& shape);

/// Foot to head of a stitch by itself.
double own_height(const stitch::Shape& shape);

/// Draws n of a stitch in one place, its foot at (0, 0); `height` counts where it is stretched.
void draw_stitch(Composing& drawing, const stitch::Shape& shape, int n, double height);

} // namespace whorl::drawing
