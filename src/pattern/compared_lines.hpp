#pragma once

#include "pattern/typed.hpp"

namespace whorl::pattern {

/// Looks at typed lines beside one another: which numbers are those of a list, which line is a round though
/// no label of its own says so, which is none though it looks like one.
void compare_lines(const Reader& reader, std::vector<Typed>& lines);

/// Whether a line without a label may be a part's first round.
bool may_start_round(const Reader& reader, const Typed& typed);

} // namespace whorl::pattern
