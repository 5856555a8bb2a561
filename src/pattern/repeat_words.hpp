#pragma once

#include "pattern/sentence.hpp"

namespace whorl::pattern {

/// Where the words begin that say how the list before them is repeated: the last "repeat" or "around" outside
/// brackets and stars, or "x 6" at the end; `end` if there are none.
std::uint32_t find_repeat(const Sentence& sentence, std::uint32_t begin, std::uint32_t end);

} // namespace whorl::pattern
