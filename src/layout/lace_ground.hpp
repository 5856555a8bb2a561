#pragma once

#include "layout/lace.hpp"

namespace whorl::layout {

/// Lays the pale grounds under stitches of lace in another yarn than the main one. They follow the ink:
/// half-way to the rings beside them, wherever that is.
void add_lace_grounds(const fabric::Fabric& fabric, const Extents& extents, std::uint8_t main_yarn,
                      Lace& lace);

} // namespace whorl::layout
