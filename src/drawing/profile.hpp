#pragma once

#include "fabric/fabric.hpp"
#include "layout/extents.hpp"

#include <cstdint>
#include <vector>

namespace whorl::drawing {

/// Half of a piece's outline, from its start down, in W: how far from the axis, how far down.
struct Profile {
  std::vector<layout::Point> side;
  std::vector<std::size_t> ends; ///< where in `side` each round ends
};

/// The outline of rounds `first` to `last`: each as wide as its stitches reach round and sloping as steeply
/// as its height allows, then rounded off.
Profile profile_of(const fabric::Fabric& fabric, std::uint32_t first, std::uint32_t last);

} // namespace whorl::drawing
