#pragma once

#include "layout/ring.hpp"

#include <vector>

namespace whorl::layout {

/// A point, or a piece of the ink, of an item's symbol, where it stands.
inline Point stood(const Item& item, Point p) {
  return {item.foot.x + p.x * item.up.y + p.y * item.up.x, item.foot.y - p.x * item.up.x + p.y * item.up.y};
}
Convex stood(const Item& item, const Convex& piece);

/// A point of the figure as the item's symbol has it: origin its foot, y toward its head.
inline Point seen_by(const Item& item, Point p) {
  const Point from_foot = p - item.foot;
  return {from_foot.x * item.up.y - from_foot.y * item.up.x,
          from_foot.x * item.up.x + from_foot.y * item.up.y};
}

/// The ink of an item, where it stands.
std::vector<Convex> ink_of(const Extents& extents, const Item& item);

/// Stands the items of a ring, strung at these arc lengths, on it: adds them to the figure with their feet
/// and tips, each in the order of work.
void stand_ring(const fabric::Fabric& fabric, const std::vector<Item>& items, const Band& band,
                const Size& size, const std::vector<double>& at, const Turn& turn, Figure& figure);

/// Adds what stands in a group whose foot an item has.
void stand_group(const fabric::Fabric& fabric, const std::vector<InGroup>& group, const Item& whole,
                 Hand hand, Figure& figure);

/// Adds an item that stands already, with its feet and tips in the order of work.
void stand_item(const fabric::Fabric& fabric, const SymbolExtent& shape, const Item& item, Hand hand,
                Figure& figure);

} // namespace whorl::layout
