#pragma once

#include "layout/bounds.hpp"
#include "layout/seen.hpp"

namespace whorl::layout {

/// Two rings side by side: the one being laid, and the one inside it with its places.
struct RingPair {
  const RingLaid& inside;
  const Laid& inside_laid;
  const RingLaid& ring;
};

/// Holds the stitches of a ring by their own places, where its springs do not: no foot is nearer to another.
/// False: there is no room for that. Where its ends yield, a ring of many stitches is only drawn to its
/// places.
bool hold_by_places(const fabric::Fabric& fabric, const RingPair& rings, const Turn& turn, Ends ends,
                    Laid& laid);

/// Whether there is; `at`: where they stand about.
bool has_room_by_places(const fabric::Fabric& fabric, const RingPair& rings, const Turn& turn, Ends ends,
                        const std::vector<double>& at);

} // namespace whorl::layout
