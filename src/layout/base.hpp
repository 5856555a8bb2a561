#pragma once

#include "layout/place.hpp"

#include <cstdint>
#include <vector>

namespace whorl::layout {

/// Tells for the items of a round on what they stand: posts from which side, as the right side of the piece
/// shows them, and what is worked over the round before into one further down.
void set_bases(const fabric::Fabric& fabric, std::uint32_t round, std::vector<Item>& items);

} // namespace whorl::layout
