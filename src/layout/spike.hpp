#pragma once

#include "layout/place.hpp"

#include <vector>

namespace whorl::layout {

/// Gives stems to those items of ring `i` that are worked over rounds into one further down, where that and
/// all between are rings of their own beside it: they become plain symbols, and `Item::stem` says how many
/// rings they pass. Others keep the arrow that says so.
void give_stems(const fabric::Fabric& fabric, const std::vector<Ring>& rings, std::size_t i,
                std::vector<Item>& items);

/// The rings outside which stems of a figure bend, and how much more room they want there.
std::vector<std::uint32_t> rings_at_bends(const Figure& figure);
inline constexpr double bend_room = 0.24;
inline constexpr int most_bends = 3; ///< times that it is given

/// Draws the stems, each between the stitches of the rings it passes to its own foot above the head it goes
/// into. Returns the rings of those that find no way.
std::vector<std::uint32_t> add_stems(const fabric::Fabric& fabric, const Extents& extents, Figure& figure);

} // namespace whorl::layout
