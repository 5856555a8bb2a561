#pragma once

#include "fabric/need.hpp"

#include <string>

namespace whorl::fabric {

/// The one number in a round of the text that, changed alone, makes it use up all `open` stitches and meet
/// the count it states: "repeat 6 times instead of 5". Empty if no number does, or more than one.
std::string mend(const pattern::Tree& tree, const std::vector<Need>& needs, std::uint32_t text,
                 std::uint64_t open);

} // namespace whorl::fabric
