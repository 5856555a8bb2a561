#pragma once

#include "drawing/copy.hpp"

#include <string>
#include <vector>

namespace whorl::drawing {

/// "41b": a round's number, with a letter where the part has it again.
std::string round_number(const fabric::Fabric& fabric, std::uint32_t round);

/// "round 10 of Stem", "round 10" where the part is not to be named, or has no name.
std::string round_of_part(const Copy& copy, std::uint32_t round, bool named = true);

/// "rounds 1–11", "round 5", "rows 1–4": what stretch a figure covers.
std::string stretch(const Copy& copy, const layout::Figure& figure);

/// "Fig. 2"; figures are numbered through the sheet.
std::string figure_number(const Copy& copy, std::size_t figure);

/// What stands under a figure behind its number, a line or more each: which rounds and from where they are
/// seen; where eyes go.
std::vector<std::string> caption(const Copy& copy, std::size_t figure);

/// The same in one line, with its number.
std::string spoken_caption(const Copy& copy, std::size_t figure);

/// "Round 3: 18 stitches": a ring in words, for those who cannot see it.
std::string ring_title(const Copy& copy, const layout::Ring& ring);

/// What the sheet shows, in words.
std::string description(const Copy& copy);

} // namespace whorl::drawing
