#pragma once

#include "pattern/finding.hpp"
#include "pattern/tree.hpp"

#include <string_view>
#include <vector>

namespace whorl::pattern {

/// Takes back what is said of missing numbers where another variant alone works them: "Size M only: Rnd 5:".
/// `typed` and `chosen` are the whole text and that of one variant, of the same length.
void forgive_rounds_of_others(std::vector<Finding>& findings, const Tree& tree, std::string_view typed,
                              std::string_view chosen);

} // namespace whorl::pattern
