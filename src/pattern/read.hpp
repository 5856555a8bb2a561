#pragma once

#include "pattern/tree.hpp"
#include "words/vocabulary.hpp"

namespace whorl::pattern {

/// Reads a pattern: lines, labels, readings, choice over each part, tree. Never fails; limits (limits.hpp)
/// have findings of their own.
Read read(const Source& source, const words::Vocabulary& vocabulary);

} // namespace whorl::pattern
