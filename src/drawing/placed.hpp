#pragma once

#include "drawing/copy.hpp"
#include "drawing/scene.hpp"
#include "drawing/symbol_case.hpp"

#include <string_view>

namespace whorl::drawing {

/// The mark that a sign is drawn with; "": a line.
std::string_view mark_of(layout::Sign sign);

/// Pale colours under stitches, from 1, the palest; in grey print they differ by how light they are.
Color ground_color(std::uint8_t tone);

/// The tone of a yarn's ground on this sheet.
std::uint8_t tone_of(const Copy& copy, std::uint8_t yarn);

/// The grounds of a figure up to a round of the fabric, to lie beneath everything else.
Group draw_grounds(const Copy& copy, const layout::Figure& figure, const Frame& frame,
                   std::uint32_t last = fabric::none);

/// A sign as it stands in a figure, its mark `factor` as large as the scale says.
std::vector<Item> draw_sign(const layout::Placed& placed, const Frame& frame, SymbolCase& symbols,
                            double factor = 1);

/// All signs of a figure.
Group draw_signs(const layout::Figure& figure, const Frame& frame, SymbolCase& symbols);

} // namespace whorl::drawing
