#pragma once

#include "pattern/way.hpp"

#include <optional>

namespace whorl::pattern {

/// How a table is typed: what stands between its cells ('\0': tabs, or else bars), and which of them holds
/// the round.
struct TableForm {
  char mark = '\0';
  std::size_t round = 0;
  std::size_t times = 0; ///< that of how often what stands beside it is worked; 0: there is none
};

/// The form of the table that this line names the columns of: "Rnd | What to do | Sts",
/// "Sts;Rnd;Instruction". None if it names no columns.
std::optional<TableForm> table_form(const Reader& reader, Span line);

/// The ways to read a typed line as the row of a table, its cells in whatever order: the round, what is
/// worked, how many stitches, a colour. `form` is that of the table's heading. None if it is no such row.
Ways table_row(const Reader& reader, Span line, const TableForm& form = {});

} // namespace whorl::pattern
