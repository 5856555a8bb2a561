#pragma once

#include "pattern/tree.hpp"

namespace whorl::pattern {

/// A part whose round 1 is a few plain stitches and makes nothing to work into (`R1: 6 sc (6)`) begins in a
/// ring, as is the habit; that is said.
void begin_in_rings(Read& read);

} // namespace whorl::pattern
