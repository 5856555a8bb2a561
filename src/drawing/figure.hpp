#pragma once

#include "drawing/box.hpp"
#include "drawing/copy.hpp"
#include "drawing/symbol_case.hpp"

namespace whorl::drawing {

/// Room that a figure takes, in mm about its own origin, y downward. A disc takes as much on either side of
/// its centre, so that what is centred under it is centred under its eye.
Box figure_box(const Copy& copy, std::size_t figure);

/// A figure as it stands on the sheet: its lines, its centre, and a named group for each ring.
Group draw_figure(const Copy& copy, std::size_t figure, const Frame& frame, SymbolCase& symbols);

/// A ring alone, with the number of its round and its pointer, all in one colour.
Group draw_ring(const Copy& copy, std::size_t figure, const Frame& frame, SymbolCase& symbols,
                std::uint32_t ring, Color color);

/// What stands in the middle of a figure.
Group draw_centre(const Copy& copy, std::size_t figure, const Frame& frame, SymbolCase& symbols);

/// The colour of a ring's symbols and, where `label`, of its label: grey text stays readable where symbols
/// are faint.
Color color_of(const layout::Ring& ring);
Color label_color_of(const layout::Ring& ring);

/// A run of a label, its base line beginning at `at`.
Text lettered(const layout::Run& run, Point at, double scale, Color color);

/// Whether a part's last stitch is marked as the end of the yarn in this figure.
bool shows_cut(const Copy& copy, std::size_t figure);

/// Whether a text of the figure carries "(!)": a count that the text states otherwise.
bool shows_miscount(const layout::Figure& figure, std::uint32_t ring);

/// What a part may begin with in the middle of a disc: "magic-ring", "second-chain", "chain-ring"; else "".
std::string_view centre_mark(layout::Centre centre);

/// That, `factor` times as large as on the chart, turned so that `up` of it points up; of a ring of chains all.
std::vector<Item> draw_centre_mark(const Copy& copy, const layout::Figure& figure, SymbolCase& symbols,
                                   const Symbol& like);

} // namespace whorl::drawing
