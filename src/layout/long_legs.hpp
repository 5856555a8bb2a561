#pragma once

#include "layout/place.hpp"

#include <cstdint>
#include <vector>

namespace whorl::layout {

/// Whose feet lines may lead from: those of stitches worked over three places and more, which may be far
/// apart, or all, where the figure has no room for some by their own places.
enum class Lines : std::uint8_t { of_many_legs, of_every_foot };

/// Lengthens legs where a foot is nearer to another place: a line leads on from it to its own, where nothing
/// is in the way. Returns the rings outside which such a line found no room, each once.
/// `plain`: of every ring, if given, whether only its stitches with many legs need a look.
std::vector<int> lengthen_legs(const fabric::Fabric& fabric, const Extents& extents, Lines which,
                               Figure& figure, const std::vector<char>& plain = {});

} // namespace whorl::layout
