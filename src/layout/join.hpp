#pragma once

#include "layout/ring.hpp"

#include <optional>
#include <vector>

namespace whorl::layout {

/// Takes the slip stitch that joins a round from the end of its items; none: nothing does.
std::optional<Item> take_join(const fabric::Fabric& fabric, std::vector<Item>& items);

/// Stands it beside the head of the first item, on the side where the last one is: it closes the ring there.
void join_first(Item dot, const Extents& extents, Hand hand, Band& band);

/// Adds it to a figure, where the first item stands so.
void stand_join(const fabric::Fabric& fabric, const InGroup& join, const Item& first, Hand hand,
                Figure& figure);

} // namespace whorl::layout
