#pragma once

#include "layout/contour.hpp"
#include "layout/place.hpp"

#include <vector>

namespace whorl::layout {

/// What stands in a fan: a stitch, a chain or a picot between the heads, or chains on end.
struct Member {
  std::vector<Item> items;
  double height = 0;
  bool hangs = false;    ///< it has no foot
  bool on_end = false;   ///< chains, one above the other
  bool on_heads = false; ///< it stands on the heads
  bool bows = false;     ///< chains that bow outward from head to head
};

/// How far the feet of a fan spread: along a space of this length, or close together in a stitch. Between
/// wide and round it opens further and keeps its feet together, so that it takes less of its ring.
struct Spread {
  double length = 0;
  bool space = false;
  double round = 0; ///< 0 wide … 1 round
};

/// The items of a fan's members, each as it stands, the middle of the feet at (0, 0), outward being up.
std::vector<Item> fanned(const std::vector<Member>& members, const Spread& spread, const Extents& extents,
                         Way way);

} // namespace whorl::layout
