#pragma once

#include "pattern/way.hpp"

#include <vector>

namespace whorl::pattern {

/// Whether a typed line is the row of a table that names its columns: "Rnd | What to do | Sts".
bool is_table_heading(const Reader& reader, Span line);

/// The ways to read a typed line as the row of a table, its cells between tabs or bars in whatever order: the
/// round, what is worked, how many stitches, a colour. None if it is no such row.
Ways table_row(const Reader& reader, Span line);

} // namespace whorl::pattern
