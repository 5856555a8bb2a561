#pragma once

#include "drawing/scene.hpp"

#include <string_view>
#include <utility>
#include <vector>

namespace whorl::drawing {

/// The font that is asked for first: "Liberation Sans", "TeX Gyre Pagella".
const char* font_name(Typeface face);

/// That font and what may stand in for it, as CSS lists them.
const char* font_family(Typeface face);

/// Width of a text in ems, from the table of advance widths; no font is asked.
double text_width(Typeface face, bool bold, bool italic, std::string_view text);

/// Advance widths in ems, sorted by character.
std::vector<std::pair<char32_t, double>> advance_widths(Typeface face, bool bold, bool italic);

} // namespace whorl::drawing
