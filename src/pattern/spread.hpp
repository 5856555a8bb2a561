#pragma once

#include "pattern/part_lines.hpp"

namespace whorl::pattern {

/// "Rnds 3, 5 and 7:" becomes a round at each of these places among the lines around it; "Rows 6-end" goes up
/// to the next label.
void spread_rounds(PartLines& part);

} // namespace whorl::pattern
