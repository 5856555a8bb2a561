#pragma once

#include "drawing/copy.hpp"
#include "drawing/legend.hpp"

namespace whorl::drawing {

/// White space round the sheet, in mm.
inline constexpr double margin = 15;

/// Title, subtitle, terms and the rule under them. A long title is set smaller, then in several lines.
Drawn draw_title(const Copy& copy, Point at, double width);

/// Whether a part has anything to say above its figures.
bool has_head(const Copy& copy, std::uint32_t part);

/// The head of a part: its letter in a black disc, its name, how many to make, its note.
Drawn draw_part_head(const Copy& copy, std::uint32_t part, Point at, double width);

/// Room that a part's head needs at the least: its letter, name and make; the note may go to further lines.
double head_width(const Copy& copy, std::uint32_t part);

/// "A", "B" … "Z", "AA": the letter of a part, from 0.
std::string part_letter(std::uint32_t part);

/// What stands at the foot of the sheet: making-up, and the caution where there is one.
Drawn draw_closing(const Copy& copy, SymbolCase& symbols, Point at, double width);

} // namespace whorl::drawing
