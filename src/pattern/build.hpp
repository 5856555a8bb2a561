#pragma once

#include "pattern/passage.hpp"

namespace whorl::pattern {

/// The reading that a path stands for: nodes, kinds, placings, what was passed over. Its effect and stated
/// count are not set.
Reading build_reading(const WorkReader& reader, std::int32_t path);

Node make_node(NodeKind kind, const Work& work, Span span);

/// Adds a node; its id.
NodeId add_node(std::vector<Node>& nodes, const Node& node);

} // namespace whorl::pattern
