#pragma once

#include "fabric/fabric.hpp"
#include "layout/place.hpp"

#include <cstdint>
#include <vector>

namespace whorl::layout {

/// The legs of the stitches that an item stands for, but for those in a part held against its own.
fabric::Legs legs_of(const fabric::Fabric& fabric, const Item& item);

/// The symbols of a round in the order of work, not yet placed: stitches of one kind in one place are one
/// item. An echo shows no loop marks.
std::vector<Item> items_of(const fabric::Fabric& fabric, std::uint32_t round, bool echo = false);

/// Whether a place is one that an item stands for: no ring, no space and no end of a row.
bool is_stitch(const fabric::Place& place);

/// Whether a place is between two stitches with no chain there.
bool is_gap(const fabric::Place& place);

/// An increase, or a decrease over several places.
bool is_shaping(const fabric::Fabric& fabric, const Item& item);

/// Items side by side in one place share it as a fan.
bool shares_place(const fabric::Fabric& fabric, const Item& one, const Item& other);

/// Loops that every item of a round is marked with; both: none, or not all alike.
std::uint8_t marked_loops(const std::vector<Item>& items);

/// Whether any item of a round carries a loop mark.
bool has_loop_marks(const fabric::Fabric& fabric, std::uint32_t round);

} // namespace whorl::layout
