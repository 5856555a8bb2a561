#pragma once

#include "layout/label.hpp"
#include "layout/place.hpp"

#include <cstdint>
#include <vector>

namespace whorl::layout {

/// The side on which feet stand and the hand that works: what turns a symbol on its ring.
struct Turn {
  bool inward = false;
  Hand hand = Hand::right;
};

/// What a ring is made of, before it has a radius.
struct Band {
  std::vector<const SymbolExtent*> shapes; ///< the different ones
  std::vector<std::uint32_t> how_many;     ///< items of each
  std::vector<std::uint32_t> shape_of;     ///< for every item, which of `shapes`
  std::vector<double> slot;                ///< the slot of each of `shapes`
  double height = 0.8;                     ///< from the feet's circle to the heads'
  double slots = 0;                        ///< all slots added up
  bool loop_marks = false;
  bool break_outside = false; ///< a break line stands outside it
  Lettering label;
};

/// Where the ink of a symbol lies when it stands on a ring: angles to either side of its ray, and radii.
struct Wedge {
  double foot = 0; ///< radius of its foot
  double before = 0, after = 0;
  double from_gutter = 0; ///< least angle from the gutter's middle of the first item …
  double to_gutter = 0;   ///< … and of the last
  double low = 0, high = 0;
  bool fits = true; ///< false: it cannot keep clear of the gutter on so small a ring
};

/// The size of one ring.
struct Size {
  double inner = 0, outer = 0, middle = 0;
  double gutter = 0;         ///< width of the channel at 12 o'clock
  double half_gutter = 0;    ///< half of it along the ring
  double slot = 0;           ///< arc length of a slot of width 1
  double air = 0;            ///< least arc between the wedges of neighbours
  double low = 0, high = 0;  ///< radii between which all its ink lies, a break line too
  bool tall = false;         ///< its stitches reach into the channel below and above the label
  double label_y = 0;        ///< height of the label's middle
  double label_top = 0;      ///< and of its upper edge
  double pushed = 0;         ///< how far it had to move out for room
  std::vector<Wedge> wedges; ///< one for each of the band's shapes
};

/// Collects the shapes of a ring's items. An echo, on one side of which nothing stands, needs room for its
/// tops only.
Band band_of(const std::vector<Item>& items, const Extents& extents, bool echo);

/// The ink of a symbol whose foot stands at this radius; `channel` is half the width that must stay clear of
/// it.
Wedge wedge_of(const SymbolExtent& shape, double foot, double channel, const Turn& turn);

/// The middle of a closed disc.
struct Core {
  double radius = 1.75; ///< of the middle of the first ring, at least
  double clear = 0;     ///< what stands in the centre reaches so far
};

/// The sizes of all rings, each on the one inside it. Rings of an open centre begin as far out as it takes
/// for none of them to be pushed.
std::vector<Size> size_rings(const std::vector<Band>& bands, const Core& core, bool open, const Turn& turn);

} // namespace whorl::layout
