#pragma once

#include "pattern/typed.hpp"

#include <vector>

namespace whorl::pattern {

/// What begins in a chain that is not joined, and is turned, is a flat piece: its lines are rows, whatever
/// their labels call them ("R1: sc in 2nd ch from hook and in each across, turn").
void tell_rows(std::vector<Typed>& lines);

} // namespace whorl::pattern
