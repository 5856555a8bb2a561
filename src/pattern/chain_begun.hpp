#pragma once

#include "pattern/reading.hpp"

namespace whorl::pattern {

/// "Ch 7, 5 sc, …" at the head of a piece: where the likeliest reading makes a chain and nothing says which
/// chain the first stitch goes into, it goes into the one that such a stitch goes into, and that reading
/// stands first.
void begin_in_chain(std::vector<Reading>& readings, const std::vector<stitch::StitchKind>& kinds);

} // namespace whorl::pattern
