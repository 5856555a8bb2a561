#pragma once

#include "fabric/fabric.hpp"
#include "layout/place.hpp"

#include <cstdint>
#include <vector>

namespace whorl::layout {

/// The legs of one stitch that are drawn: without those that go through the edge of a part held against it,
/// or through the layer behind where its own edge lies flat.
inline fabric::Legs legs_of_one(const fabric::Fabric& fabric, fabric::StitchId stitch) {
  if ((fabric.stitches[stitch].flags & fabric::holds_part) != 0) return fabric::own_legs_of(fabric, stitch);
  if ((fabric.stitches[stitch].flags & fabric::two_layers) != 0) {
    const fabric::Legs both = fabric::legs_of(fabric, stitch);
    return {both.begin(), both.begin() + both.size() / 2};
  }
  const fabric::Leg* all = fabric.legs.data();
  const std::size_t end =
      stitch + 1 < fabric.stitches.size() ? fabric.stitches[stitch + 1].first_leg : fabric.legs.size();
  return {all + fabric.stitches[stitch].first_leg, all + end};
}

/// The legs of the stitches that an item stands for, but for those in a part held against its own.
inline fabric::Legs legs_of(const fabric::Fabric& fabric, const Item& item) {
  return item.count == 1 ? legs_of_one(fabric, item.first)
                         : fabric::Legs{legs_of_one(fabric, item.first).begin(),
                                        legs_of_one(fabric, item.first + item.count - 1).end()};
}

/// The legs of an item that stand by their own places wherever it stands: of three or more worked together
/// the middle ones, from which lines lead the others to theirs where these are far apart.
struct LegsHeld {
  std::size_t first = 0, behind = 0;
  bool holds(std::size_t leg) const { return leg >= first && leg < behind; }
};
inline LegsHeld legs_held(const Item& item, std::size_t legs) {
  return item.count > 1 || legs < 3 ? LegsHeld{0, legs} : LegsHeld{(legs - 1) / 2, legs / 2 + 1};
}

/// The symbols of a round in the order of work, not yet placed: stitches of one kind in one place are one
/// item. An echo shows no loop marks.
std::vector<Item> items_of(const fabric::Fabric& fabric, std::uint32_t round, bool echo = false);

/// Whether a place is between two stitches with no chain there.
inline bool is_gap(const fabric::Place& place) {
  return place.what == fabric::On::between && place.of != fabric::none;
}

/// Whether a place is one that an item stands for: no ring, no space and no end of a row.
inline bool is_stitch(const fabric::Place& place) {
  return place.what != fabric::On::ring && place.what != fabric::On::space &&
         place.what != fabric::On::row_end && !is_gap(place) && place.of != fabric::none;
}

/// An increase, or a decrease over several places.
bool is_shaping(const fabric::Fabric& fabric, const Item& item);

/// Items side by side in one place share it as a fan.
bool shares_place(const fabric::Fabric& fabric, const Item& one, const Item& other);

/// Loops that every item of a round is marked with; both: none, or not all alike.
std::uint8_t marked_loops(const std::vector<Item>& items);

/// Whether stitches of a round go through both layers of an edge laid flat.
bool closes_flat(const fabric::Fabric& fabric, std::uint32_t round);

/// Whether any item of a round carries a loop mark.
bool has_loop_marks(const fabric::Fabric& fabric, std::uint32_t round);

} // namespace whorl::layout
