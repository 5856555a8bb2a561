#pragma once

#include "layout/place.hpp"

#include <cstdint>
#include <vector>

namespace whorl::layout {

/// The yarn of most stitches, of the lower number where two have as many.
std::uint8_t main_yarn(const fabric::Fabric& fabric);

/// The yarn to which a whole round changes, or in which a part begins that is not the main one; 0: none.
std::uint8_t changed_yarn(const fabric::Fabric& fabric, std::uint32_t round, std::uint8_t main_yarn);

/// A closed outline of straight pieces as cubic curves.
std::vector<Point> straight_curves(const std::vector<Point>& corners);

/// Lays the pale grounds under all stitches in another yarn than the main one. `edges`: for each ring the
/// angle at which the gutter ends (of a line: nothing).
void add_grounds(const fabric::Fabric& fabric, const std::vector<double>& edges, std::uint8_t main_yarn,
                 Figure& figure);

} // namespace whorl::layout
