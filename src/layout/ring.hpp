#pragma once

#include "layout/band.hpp"
#include "layout/wedge.hpp"

#include <vector>

namespace whorl::layout {

/// The size of one ring.
struct Size {
  double inner = 0, outer = 0, middle = 0;
  double gutter = 0;         ///< width of the channel at 12 o'clock
  double half_gutter = 0;    ///< half of it along the ring
  double turned = 0;         ///< angle from 12 o'clock at which the gutter stands
  double slot = 0;           ///< arc length of a slot of width 1
  double air = 0;            ///< least arc between the wedges of neighbours
  double low = 0, high = 0;  ///< radii between which all its ink lies, a break line too
  bool tall = false;         ///< its stitches reach into the channel below and above the label
  double label_y = 0;        ///< height of the label's middle
  double label_top = 0;      ///< and of its upper edge
  double pushed = 0;         ///< how far it had to move out for room
  double room_outside = 0;   ///< what is kept free outside it
  double from_gutter = 0;    ///< least angle from the gutter's middle to the first item …
  double to_gutter = 0;      ///< … and from the last
  std::vector<Wedge> wedges; ///< one for each of the band's shapes
};

/// The angle at which the pointer beside a ring's label stands.
double pointer_angle(const Size& size);

/// The middle of a closed disc.
struct Core {
  double radius = 1.75; ///< of the middle of the first ring, at least
  double clear = 0;     ///< what stands in the centre reaches so far
  double room = 0;      ///< more, for what is placed between it and the first ring
};

/// Radii from the heads of a ring to the feet of the next, and where a symbol's foot stands in a ring.
double gap_before(const Band& inside, const Band& ring, const Turn& turn);
double foot_radius(const SymbolExtent& shape, double inner, double height, const Turn& turn);

/// Where a ring's angles and places along it count: its middle, further out where its stitches are tall.
double middle_of(double inner, double height);

/// Lets the gutter widen little by little on the way to a ring with a long label, so that the stitches beside
/// it stay by their places.
void widen_gutters(std::vector<Band>& bands);

/// The size of a ring on the one inside it.
Size size_ring(const Band& inside, const Size& size_inside, const Band& ring, const Turn& turn);

/// The sizes of all rings, each on the one inside it. Rings of an open centre begin as far out as it takes
/// for none of them to be pushed.
std::vector<Size> size_rings(const std::vector<Band>& bands, const Core& core, bool open, const Turn& turn);

} // namespace whorl::layout
