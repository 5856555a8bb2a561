#pragma once

#include "pattern/typed.hpp"

namespace whorl::pattern {

/// Numbers, or letters, that run on from line to line are labels, be there no mark behind any: "1 mc, 6 sc",
/// "2 6 inc 12"; "a) 6 sc in MR", "b) inc around".
void mark_runs(const Reader& reader, std::vector<Typed>& lines);

} // namespace whorl::pattern
