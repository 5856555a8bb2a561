#pragma once

#include "layout/place.hpp"

#include <vector>

namespace whorl::layout {

/// Parts tall stitches of a row that are one symbol where they are to lean each for itself: of a fan with
/// chains within, and of half a fan at either end of the row, beside which places are skipped.
void part_fans(const fabric::Fabric& fabric, const Extents& extents, std::vector<Item>& items);

/// All of them one by one.
std::vector<Item> each_alone(const std::vector<Item>& items);

} // namespace whorl::layout
