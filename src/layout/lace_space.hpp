#pragma once

#include "layout/lace.hpp"

#include <vector>

namespace whorl::layout {

/// What is kept free beside the rings of a figure: outside each for what is placed on it, and how far each
/// stands out at least, reaching down to its places.
struct Space {
  std::vector<double> room, pushed;
};

/// How far out a ring of it stands that must do so most.
double most_pushed(const Lace& lace);

/// Rings that must stand far out share the way with those inside them, those with stems more than low ones;
/// none stands further out than it must.
void share_pushes(const Lace& lace, Space& space);

} // namespace whorl::layout
