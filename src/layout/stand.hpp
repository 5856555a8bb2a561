#pragma once

#include "layout/ring.hpp"

#include <vector>

namespace whorl::layout {

/// A point, or a piece of the ink, of an item's symbol, where it stands.
Point stood(const Item& item, Point p);
Convex stood(const Item& item, const Convex& piece);

/// The ink of an item, where it stands.
std::vector<Convex> ink_of(const Extents& extents, const Item& item);

/// Stands the items of a ring, strung at these arc lengths, on it: adds them to the figure with their feet
/// and tips, each in the order of work.
void stand_ring(const fabric::Fabric& fabric, const std::vector<Item>& items, const Band& band,
                const Size& size, const std::vector<double>& at, const Turn& turn, Figure& figure);

/// Adds an item that stands already, with its feet and tips in the order of work.
void stand_item(const fabric::Fabric& fabric, const SymbolExtent& shape, const Item& item, Hand hand,
                Figure& figure);

} // namespace whorl::layout
