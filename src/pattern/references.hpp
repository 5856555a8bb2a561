#pragma once

#include "pattern/part_lines.hpp"

namespace whorl::pattern {

/// Puts in the place of each line that names rounds before those rounds themselves, with all readings of
/// theirs, so that the counts choose among them.
void follow_references(const Reader& reader, std::vector<PartLines>& parts);

} // namespace whorl::pattern
