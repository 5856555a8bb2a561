#pragma once

#include "layout/band.hpp"

#include <vector>

namespace whorl::layout {

/// Items in a row that stand as one: stitches with chains among them that go into one place, chains that lead
/// up beside a slip stitch to a tall stitch, and the picots on a stitch.
struct Group {
  std::size_t at = 0; ///< the item that stands for all of them
  std::vector<Item> items;
};

/// Lets each group among the items of a ring, from `first` on in the order of work, become one item that
/// stands for all its stitches. Behind it no other item does.
std::vector<Group> gather_groups(const fabric::Fabric& fabric, const Extents& extents, std::size_t first,
                                 std::vector<Item>& items);

/// Lets them fan out of the foot they share: each is one shape of the band.
void fan_out(const fabric::Fabric& fabric, const Extents& extents, const std::vector<Group>& groups,
             Hand hand, Band& band);

} // namespace whorl::layout
