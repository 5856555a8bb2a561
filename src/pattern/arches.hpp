#pragma once

#include "pattern/tree.hpp"

#include <vector>

namespace whorl::pattern {

/// Puts the chain spaces that a body makes, and the chains in them, into its effect. Chains worked one after
/// the other are one space; those that a round or row begins with, or that are turned with, climb.
void put_arches(const std::vector<Node>& nodes, NodeId body, const std::vector<stitch::StitchKind>& kinds,
                Effect& effect);

} // namespace whorl::pattern
