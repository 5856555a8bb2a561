#pragma once

#include "pattern/choice.hpp"
#include "pattern/way.hpp"

namespace whorl::pattern {

/// Settles which part is meant wherever stitches go through another part too: its last round is the node's
/// round. Returns what could not be settled: a name that no part has, a part that is made later.
std::vector<Finding> name_held_parts(Tree& tree, const Reader& reader);

} // namespace whorl::pattern
