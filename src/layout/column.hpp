#pragma once

#include "layout/ring.hpp"

#include <vector>

namespace whorl::layout {

/// Takes the chains that a round of a disc starts with out of its items; the last of them stays for all.
std::vector<Item> take_column(const fabric::Fabric& fabric, std::vector<Item>& items);

/// Stands these chains on end, one above the other, in the first place of a ring; `counting`: as a stitch.
void stand_on_end(std::vector<Item> chains, bool counting, const Extents& extents, Band& band);

/// Adds the chains of a laid ring's column to the figure.
void stand_column(const Band& band, const Size& size, double at, const Turn& turn, Figure& figure);

/// The last chain of a column as one symbol with all below it, upright on the feet's circle.
Item column_standing(const Band& band, Item last, const Figure& figure);

} // namespace whorl::layout
