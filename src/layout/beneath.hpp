#pragma once

#include "layout/owner.hpp"
#include "layout/place.hpp"

#include <cstdint>
#include <optional>
#include <vector>

namespace whorl::layout {

/// The stitches of the starting chain that a row is worked into, the furthest to either end.
struct Worked {
  fabric::StitchId first = fabric::none, last = 0;
  bool descending = false; ///< it is worked back along it
};
Worked worked_of(const fabric::Fabric& fabric, const fabric::Round& row, const fabric::Round& chain);

/// Chains that a row's first stitch skips at the hook.
std::uint32_t chains_high(const fabric::Fabric& fabric, const fabric::Round& row);

/// Of so many chains that begin a row those that stand on end: no more than its tallest stitch is high, and
/// one. Others lead over to where its stitches begin.
std::uint32_t chains_on_end(const fabric::Fabric& fabric, const fabric::Round& row, std::uint32_t chains);

/// The items of the round that rows begin on which they stand on, and a few to either side.
std::vector<Item> items_beneath(const fabric::Fabric& fabric, std::uint32_t round, std::uint32_t row);

/// The owner of a part that is begun in the loops of another, where that is what a figure begins with.
std::optional<Owner> owner_beneath(const fabric::Fabric& fabric, std::uint32_t part, std::uint32_t begins);

} // namespace whorl::layout
