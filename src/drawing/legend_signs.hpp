#pragma once

#include "drawing/legend.hpp"
#include "drawing/usage.hpp"

#include <vector>

namespace whorl::drawing {

/// Adds an entry for every kind of sign that stands beside the stitches, and for each yarn that has a ground.
/// `scale`: mm per W of the samples, `factor` of the chart's scale.
void add_signs(const Copy& copy, SymbolCase& symbols, const Usage& usage, double factor, double scale,
               std::vector<Entry>& entries);

} // namespace whorl::drawing
