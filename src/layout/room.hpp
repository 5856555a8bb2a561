#pragma once

#include "layout/place.hpp"

#include <vector>

namespace whorl::layout {

/// The ink of a figure near a point, as convex outlines: symbols, labels, pointers, lines and what is placed
/// already.
std::vector<Convex> ink_near(const Figure& figure, const Extents& extents, Point at, double within);

/// Air between a sign and some ink, looked for up to `most`.
double air_around(const Placed& placed, const std::vector<Convex>& ink, double most);

/// Air that every sign keeps to what it does not belong to.
inline constexpr double sign_air = 0.08;

/// Whether a sign has air where it stands.
bool is_clear(const Figure& figure, const Extents& extents, const Placed& placed);

/// The sign moved to the roomiest place within .35 along and .20 across from where it stands (further along
/// where that was tried in vain before); whether it has air there.
bool settle_sign(const Figure& figure, const Extents& extents, Point up, int again, Placed& placed);

/// The sign moved in a direction until it has air.
void push_out(const Figure& figure, const Extents& extents, Point direction, Placed& placed);

} // namespace whorl::layout
