#pragma once

#include "pattern/way.hpp"

#include <optional>

namespace whorl::pattern {

/// The mark between the cells of the table that this line names the columns of: "Rnd | What to do | Sts",
/// "Rnd;Instruction;Stitches"; '\0' where tabs or bars are. None if it names no columns.
std::optional<char> table_mark(const Reader& reader, Span line);

/// The ways to read a typed line as the row of a table, its cells in whatever order: the round, what is
/// worked, how many stitches, a colour. `mark` is that of the table's heading. None if it is no such row.
Ways table_row(const Reader& reader, Span line, char mark = '\0');

} // namespace whorl::pattern
