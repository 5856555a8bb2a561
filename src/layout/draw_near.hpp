#pragma once

#include "layout/seen.hpp"

namespace whorl::layout {

/// A ring, where its items stand, and its feet or tips as seen from the middle.
struct Standing {
  const RingLaid& ring;
  const std::vector<double>& at;
  const std::vector<Seen>& seen;
};

/// Mostly a ring, which has the feet outward and the tops inward, is by its places, or is so when the springs
/// of the few items that are not are made stronger; false: that does not help, or cannot be told so simply.
bool draw_to_places(const fabric::Fabric& fabric, const Standing& feet, const Standing& tops,
                    const Turn& turn, const Laid* inside, Laid& laid);

/// Makes them stronger once, and does not ask whether that helped.
void draw_nearer(const fabric::Fabric& fabric, const Standing& feet, const Standing& tops, const Turn& turn,
                 const Laid* inside, Laid& laid);

} // namespace whorl::layout
