#pragma once

#include "pattern/sentence.hpp"
#include "pattern/tree.hpp"

#include <cstdint>
#include <vector>

namespace whorl::pattern {

/// The holes that a clause [begin, end) numbers for what is put into them, each by the stitch before it, in
/// order: "after stitches 12 and 19", "between stitches 10 and 11 and stitches 20 and 21" is behind 10 and
/// 20, "before the 13th st" behind 12, embroidery "from stitch 14 to stitch 17" reaches from behind 13 to
/// behind 17, a marker "in the 15th st" hangs at 15. Empty if it numbers none.
std::vector<std::uint16_t> holes_named(const Sentence& sentence, std::uint32_t begin, std::uint32_t end,
                                       What what);

} // namespace whorl::pattern
