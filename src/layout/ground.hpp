#pragma once

#include "layout/place.hpp"

#include <cstdint>
#include <vector>

namespace whorl::layout {

/// The yarn of a round that is worked wholly in another yarn than the round before it ended in; 0: it is not.
std::uint8_t changed_yarn(const fabric::Fabric& fabric, std::uint32_t round);

/// Lays the pale grounds under all stitches in another yarn than the part's first. `edges`: for each ring the
/// angle at which the gutter ends (of a line: nothing).
void add_grounds(const fabric::Fabric& fabric, const std::vector<double>& edges, Figure& figure);

} // namespace whorl::layout
