#pragma once

#include "layout/place.hpp"

#include <cstdint>
#include <vector>

namespace whorl::layout {

/// Flags the first stitch in a yarn that a round or row brings in on its way; where a whole one changes, the
/// flag stands beside its label. Returns the rings outside which one found no room, as `add_posts` does.
std::vector<int> add_flags(const fabric::Fabric& fabric, const Extents& extents, Figure& figure, int again);

/// Whether such a flag stands above a line of these items; `met`: the yarns of the lines before, and behind it
/// of this.
bool brings_in_yarn(const fabric::Fabric& fabric, const std::vector<Item>& items, bool echo,
                    std::vector<std::uint8_t>& met);

inline constexpr double flag_room = 1.4; ///< between lines

} // namespace whorl::layout
