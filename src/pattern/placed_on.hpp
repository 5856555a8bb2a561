#pragma once

#include "pattern/tree.hpp"
#include "pattern/way.hpp"

namespace whorl::pattern {

/// Settles whose rounds a placing names: of the part that its text names last, else of the part in hand if
/// that has them, else of the one that does. What is sewn to rounds that no part here has names none.
void place_on_parts(Tree& tree, const Reader& reader);

} // namespace whorl::pattern
