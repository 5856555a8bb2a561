#pragma once

#include "layout/place.hpp"

namespace whorl::layout {

/// The side on which feet stand and the hand that works: what turns a symbol on its ring.
struct Turn {
  bool inward = false;
  Hand hand = Hand::right;
};

/// Where the ink of a symbol lies when it stands on a ring: angles to either side of its ray, and radii.
struct Wedge {
  double foot = 0;              ///< radius of its foot
  double before = 0, after = 0; ///< toward the item before it and the one behind it
  double low = 0, high = 0;
};

/// The ink of a symbol whose foot stands at this radius; the foot must stand outside all that reaches inward
/// of it.
Wedge wedge_of(const SymbolExtent& shape, double foot, const Turn& turn);

/// On which side of the gutter's neighbour the gutter lies.
enum class Beside : std::uint8_t { before, behind };

/// The least angle from the gutter's middle at which a symbol keeps out of a channel `half` wide to either
/// side; more than a quarter turn: it cannot.
double gutter_angle(const SymbolExtent& shape, double foot, double half, Beside gutter, const Turn& turn);

} // namespace whorl::layout
