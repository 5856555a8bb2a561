#pragma once

#include "layout/straight.hpp"

#include <cstdint>
#include <vector>

namespace whorl::layout {

/// The rows with which a part begins, as far as they can be drawn: indices into Fabric::rounds. None where it
/// begins in rounds, or in something that rows cannot stand on.
std::vector<std::uint32_t> rounds_in_rows(const fabric::Fabric& fabric, std::uint32_t part);

/// Draws a flat piece: its starting chain, and the rows on it as they look from the right side.
Straight draw_rows(const fabric::Fabric& fabric, std::uint32_t part, const Extents& extents,
                   const Page& page);

} // namespace whorl::layout
