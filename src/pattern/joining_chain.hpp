#pragma once

#include "pattern/typed.hpp"

#include <vector>

namespace whorl::pattern {

/// A round that goes around parts that are joined by a chain takes the chain from the line above that makes it:
/// "Ch 3 and join to the first leg." The lines before the round begin at `begin`.
void join_by_chain(const Reader& reader, std::vector<Typed>& lines, std::size_t begin, std::size_t round);

/// Whether a line makes a chain and speaks of another part, as the words between parts and their round do.
bool tells_joining_chain(const Reader& reader, Span line);

} // namespace whorl::pattern
