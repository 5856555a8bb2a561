#pragma once

#include "pattern/way.hpp"

#include <optional>

namespace whorl::pattern {

/// The round that a line tells without a label, behind others: along the edges of rows, through both layers
/// of an opening pressed flat, or into loops that an earlier round left free; none if it tells none.
std::optional<Way> round_without_label(const Reader& reader, Span line, bool behind_rows);

/// The round that a line tells without a label below another that names the loops it goes into: "Attach cream
/// to a front loop left on Rnd 9" and "2 hdc in each loop around (24)"; none if it tells none.
std::optional<Way> round_below_loops(const Reader& reader, Span line, Span above);

} // namespace whorl::pattern
