#pragma once

#include "layout/figure.hpp"

namespace whorl::layout {

/// Puts a ring's label and pointer into the gutter.
void add_label(const Band& band, const Size& size, std::uint32_t ring, Way way, Figure& figure);

/// A circle with eight zigzags, open at the gutter, outside a folded ring.
void add_break_line(const Size& size, Way way, Figure& figure);

/// The arrow of direction outside everything: its shaft, then its head.
void add_arrow(double radius, const Size& last, Way way, Figure& figure);

/// The dashed circle inside the last ring of a closing.
void add_gathering(double radius, Figure& figure);

/// Sets low and high to hold everything in the figure, whose rings reach out to `radius` from its middle, or
/// from the core of an oval.
void bound(double radius, Figure& figure);

} // namespace whorl::layout
