#pragma once

#include "layout/line.hpp"

namespace whorl::layout {

/// Holds the stitches of a laid line by their own places on the line before it. How many have no room there.
std::size_t hold_by_places(const fabric::Fabric& fabric, const Course& before, const Ring& ring_before,
                           Course& course);

} // namespace whorl::layout
