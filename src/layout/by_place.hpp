#pragma once

#include "layout/lay.hpp"

namespace whorl::layout {

/// A ring as it is laid.
struct RingLaid {
  const Ring& ring;
  const std::vector<Item>& items;
  const Band& band;
  const Size& size;
};

/// Holds the stitches of a ring by their own places, where its springs do not: no foot is nearer to another.
/// `inside` and its places: the ring inside it. False: there is no room for that.
bool hold_by_places(const fabric::Fabric& fabric, const RingLaid& inside,
                    const std::vector<double>& inside_at, const RingLaid& ring, const Turn& turn, Laid& laid);

} // namespace whorl::layout
