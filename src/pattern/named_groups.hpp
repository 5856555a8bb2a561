#pragma once

#include "pattern/tree.hpp"
#include "pattern/way.hpp"

#include <cstddef>

namespace whorl::pattern {

/// Gives the nodes from `first` on that are groups of the pattern's own their names ("V-st", "shell"), and
/// the counts of the tree's last round that speak of such. A count of a name that nobody knows is left out.
void name_groups(Tree& tree, std::size_t first, const Reader& reader);

} // namespace whorl::pattern
