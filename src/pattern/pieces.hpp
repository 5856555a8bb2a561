#pragma once

#include "pattern/way.hpp"

#include <vector>

namespace whorl::pattern {

/// A typed line cut where a round begins inside it: "1. 6 sc. 2. inc x 6", "Rnd 1: … / Rnd 2: …",
/// "TAIL: Ch 9, sc in 2nd ch". One piece if it is one thing. Pieces are without blanks around them.
std::vector<Span> pieces_of(const Reader& reader, Span line);

/// Whether a way begins something by itself: a ring or a chain, and stitches in it.
bool starts_something(const Way& way);

/// Whether a name before a colon is that of a start, and of no part: "Foundation: ch 5."
bool names_start(std::string_view name, const words::Vocabulary& vocabulary);

} // namespace whorl::pattern
