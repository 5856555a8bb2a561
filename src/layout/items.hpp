#pragma once

#include "fabric/fabric.hpp"
#include "layout/place.hpp"

#include <cstdint>
#include <vector>

namespace whorl::layout {

/// The legs of the stitches that an item stands for.
fabric::Legs legs_of(const fabric::Fabric& fabric, const Item& item);

/// The symbols of a round in the order of work, not yet placed: stitches of one kind in one place are one
/// item. An echo shows no loop marks.
std::vector<Item> items_of(const fabric::Fabric& fabric, std::uint32_t round, bool echo = false);

/// Loops that every item of a round is marked with; both: none, or not all alike.
std::uint8_t marked_loops(const std::vector<Item>& items);

/// Whether any item of a round carries a loop mark.
bool has_loop_marks(const std::vector<Item>& items);

} // namespace whorl::layout
