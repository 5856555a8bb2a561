#pragma once

#include "pattern/way.hpp"

namespace whorl::pattern {

/// Whether a round is told by nothing but a number of stitches, perhaps with its loops and the same number as
/// the count: "21", "21 (21)", "21 =21", "BLO 24 (24)".
bool is_number_alone(const Reader& reader, const Way& way, std::string_view work);

/// Such work without the unit behind its number, every byte in its place: the 6 of 6目.
std::string without_unit(const Reader& reader, std::string_view work);

} // namespace whorl::pattern
