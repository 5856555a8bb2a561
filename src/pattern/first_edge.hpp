#pragma once

#include "pattern/tree.hpp"

namespace whorl::pattern {

/// A text whose first round has a number above 1 (`R12: 18 sc in BLO`) goes on from somewhere else: a chain
/// of as many stitches as the round needs is put in front of it, and that is said.
void open_first_edge(Read& read);

} // namespace whorl::pattern
