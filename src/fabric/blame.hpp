#pragma once

#include "fabric/fabric.hpp"

#include <string>

namespace whorl::fabric {

/// Whether a round of the text would use up `open` stitches, no more and no fewer.
bool comes_out(const pattern::Tree& tree, std::uint32_t text, std::int64_t open);

/// Whether it would also make what the text states. Then the slip is in the round before, which has not what
/// the text says.
bool agrees_with(const pattern::Tree& tree, std::uint32_t text, std::int64_t open);

/// What would make a wrong count right, as it stands behind it: ": that is right only if the joining slip
/// stitch is counted"; or "".
std::string if_counted(const Fabric& fabric, const Round& round, const pattern::Stated& stated,
                       std::uint32_t count);

} // namespace whorl::fabric
