#pragma once

#include "pattern/way.hpp"

namespace whorl::pattern {

/// Whether a round is told by nothing but a number of stitches, perhaps with its loops and the same number as
/// the count: "21", "21 (21)", "21 =21", "BLO 24 (24)".
bool is_number_alone(const Reader& reader, const Way& way, std::string_view work);

} // namespace whorl::pattern
