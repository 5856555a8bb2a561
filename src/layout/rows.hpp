#pragma once

#include "layout/fold.hpp"
#include "layout/section.hpp"
#include "layout/straight.hpp"

#include <cstdint>
#include <optional>

namespace whorl::layout {

/// Draws a flat piece, its rows as they look from the right side: on its starting chain, or on the part of a
/// round that they go on from.
Straight draw_rows(const fabric::Fabric& fabric, std::uint32_t part, const Section& section,
                   const Folding& folding, const Extents& extents, const Page& page);

/// The same with the section's edging round it, none of its rows folded; nothing where the edging finds no
/// room near to what it is worked into, or there are too many rows.
std::optional<Straight> draw_edged_rows(const fabric::Fabric& fabric, std::uint32_t part,
                                        const Section& section, const Folding& folding,
                                        const Extents& extents, const Page& page);

} // namespace whorl::layout
