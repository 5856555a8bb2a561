#pragma once

#include "fabric/fabric.hpp"
#include "pattern/finding.hpp"

#include <optional>
#include <vector>

namespace whorl::fabric {

/// The holes in which two posts sit, `apart` whole stitches between them, in the middle of the front:
/// opposite the round's start, half a stitch toward the lower number where they cannot be centred. None if
/// they do not fit.
std::optional<std::vector<std::uint32_t>> holes(std::uint32_t stitches, std::uint32_t apart);

/// Finds the rounds and holes of everything the text places, and says how each part ends.
void place_all(const pattern::Tree& tree, Fabric& fabric, std::vector<pattern::Finding>& findings);

} // namespace whorl::fabric
