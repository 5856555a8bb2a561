#pragma once

#include "layout/figure.hpp"

#include <vector>

namespace whorl::layout {

/// The discs of a part, in the order in which they are worked. `figures` stand before them in the placement.
std::vector<Plan> plan_part(const fabric::Fabric& fabric, std::uint32_t part, const Folding& folding,
                            const Page& page, std::size_t figures);

} // namespace whorl::layout
