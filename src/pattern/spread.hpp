#pragma once

#include "pattern/part_lines.hpp"

namespace whorl::pattern {

/// "Rnds 3, 5 and 7:" becomes a round at each of these places among the lines around it; "Rows 6-end" goes up
/// to the next label, "3+: sc for 6 rounds" as far as it says.
void spread_rounds(const Reader& reader, PartLines& part);

} // namespace whorl::pattern
