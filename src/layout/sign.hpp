#pragma once

#include "layout/place.hpp"

#include <vector>

namespace whorl::layout {

inline constexpr double tick_length = 0.28;
inline constexpr double sign_text = 0.52; ///< size of the numbers and words beside a figure

/// The ink of a sign as convex outlines, pen width included; its text as a box.
std::vector<Convex> outlines_of(const Placed& placed);

/// The triangle of a pointer.
Convex outline_of(const Pointer& pointer);

/// The same sign elsewhere.
Placed moved(Placed placed, Point by);

/// Half of the room that a text takes in a direction from its middle.
double half_room(const Run& text, Point direction);

/// Distance between two convex outlines; 0 where they overlap.
double distance(const Convex& one, const Convex& other);

} // namespace whorl::layout
