#pragma once

#include "drawing/reached.hpp"
#include "drawing/view.hpp"

#include <vector>

namespace whorl::drawing {

/// What only pictures for screens have: what is done, what comes next, what is worked into.
namespace ink {
inline constexpr Color done{0x8d8983}, coming{0xcfcac2}, lit{0xFBE7A6};
}

/// The lit ground of places beside one another as bands along their rings: the heads of stitches, all of a
/// stitch whose post is worked round, the chains of a space, the middle.
std::vector<Item> lit_bands(const layout::Figure& figure, const std::vector<Reached>& places,
                            const View& view);

/// The same as a patch under each.
std::vector<Item> lit_patches(const layout::Figure& figure, const std::vector<Reached>& places,
                              const View& view);

} // namespace whorl::drawing
