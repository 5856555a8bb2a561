#pragma once

#include <string>
#include <vector>

namespace whorl::layout::test {

/// Doilies, mandalas, a square, a hexagon and a bowl, as they are typed: trebles, fans, arches, picots,
/// popcorns, posts.
const std::vector<std::string>& lace();

} // namespace whorl::layout::test
