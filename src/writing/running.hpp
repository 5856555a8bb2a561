#pragma once

#include "fabric/fabric.hpp"
#include "pattern/tree.hpp"

#include <cstdint>
#include <map>

namespace whorl::writing {

/// How many stitches a round has behind each of its steps, where it comes to it for the first time; a repeat:
/// behind its last pass. Steps that make none, and those whose end cannot be told, are not in it.
using Running = std::map<pattern::NodeId, std::uint32_t>;

Running running_of(const pattern::Tree& tree, const fabric::Fabric& fabric, std::uint32_t entry);

} // namespace whorl::writing
