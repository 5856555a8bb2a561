#pragma once

#include "layout/lace.hpp"

namespace whorl::layout {

/// What stands on and beside laid lace and is no stitch; returns the rings outside which it found no room.
std::vector<int> furnish_lace(const fabric::Fabric& fabric, const Extents& extents, const Page& page,
                              int again, Lace& lace);

} // namespace whorl::layout
