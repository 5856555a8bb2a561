#pragma once

#include "layout/line.hpp"

namespace whorl::layout {

/// Draws what is worked into one place of a row to either side of it, and lets gaps over skipped places and
/// chains be as wide as what they span: so lace stays as wide as the row beneath. The line has gaps, and the
/// middles of what its stands go into as targets.
void fan_out_of_places(const fabric::Fabric& fabric, const Footing& footing, const Room& room, Course& course);

} // namespace whorl::layout
