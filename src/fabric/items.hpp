#pragma once

#include "fabric/fabric.hpp"

#include <vector>

namespace whorl::fabric {

/// Stitches of a round that belong together: one plain stitch, all those of an increase, a decrease.
struct Item {
  std::uint32_t first = 0; ///< number among the stitches of the round that count, from 1
  std::uint32_t last = 0;
  std::uint32_t places = 1; ///< places they go into
  pattern::NodeId origin = pattern::no_node;
  bool in_ring = false; ///< the place is a ring, or one chain that holds the whole round
  bool chain = false;   ///< a starting chain that counts

  std::uint32_t stitches() const { return last - first + 1; }
  bool is_increase() const { return stitches() > 1 && !in_ring; }
  bool is_decrease() const { return places > 1; }
  bool is_plain() const { return stitches() == 1 && places == 1 && !chain && !in_ring; }
};

/// What a round is made of, in order; what does not count is left out.
std::vector<Item> items_of(const Fabric& fabric, std::uint32_t round);

/// A repeat of a round: one pass and how often it comes.
struct Passes {
  std::uint32_t times = 0;
  std::uint32_t makes = 0; ///< stitches a pass
  std::uint32_t uses = 0;  ///< places a pass
};

/// The repeats of a round, found from the passes' common origin; a repeat of one plain stitch is none.
std::vector<Passes> passes_of(const std::vector<Item>& items);

} // namespace whorl::fabric
