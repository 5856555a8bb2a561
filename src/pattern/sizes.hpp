#pragma once

#include <string>

namespace whorl::pattern {

/// Larger sizes that stand in brackets of their own, "20 (30) (40) sts", "(20) (30) (40)": all but the first,
/// which is worked, become blanks; every byte keeps its place.
void blank_sizes(std::string& text);

} // namespace whorl::pattern
