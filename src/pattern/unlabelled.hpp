#pragma once

#include "pattern/way.hpp"

#include <optional>

namespace whorl::pattern {

/// The round that a line tells without a label, behind others: along the edges of rows, through both layers
/// of an opening pressed flat, or into loops that an earlier round left free; none if it tells none.
std::optional<Way> round_without_label(const Reader& reader, Span line, bool behind_rows);

} // namespace whorl::pattern
