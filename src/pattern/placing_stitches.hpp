#pragma once

#include "pattern/sentence.hpp"
#include "pattern/tree.hpp"

namespace whorl::pattern {

/// Where on its round [begin, end) of a sentence puts what it places: how many stitches lie between two of
/// them, "8 sts apart", "with 8 sts between", "with a gap of 8 sts"; or the stitches themselves, "after
/// stitches 12 and 19"; or the middle of the front. Of embroidery also how far it reaches, "over 4 sts".
void read_stitches(const Sentence& sentence, std::uint32_t begin, std::uint32_t end, Placing& placing);

} // namespace whorl::pattern
