#pragma once

#include "layout/seen.hpp"

namespace whorl::layout {

/// Holds the stitches of a ring by their own places, where its springs do not: no foot is nearer to another.
/// `inside` and its places: the ring inside it. False: there is no room for that.
bool hold_by_places(const fabric::Fabric& fabric, const RingLaid& inside,
                    const std::vector<double>& inside_at, const RingLaid& ring, const Turn& turn, Laid& laid);

/// Whether there is; `at`: where they stand about.
bool has_room_by_places(const fabric::Fabric& fabric, const RingLaid& inside,
                        const std::vector<double>& inside_at, const RingLaid& ring, const Turn& turn,
                        const std::vector<double>& at);

} // namespace whorl::layout
