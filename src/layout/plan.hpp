#pragma once

#include "layout/figure.hpp"
#include "layout/section.hpp"

#include <vector>

namespace whorl::layout {

/// The figures of rounds of a part that follow each other, in the order in which they are worked. `figures`
/// stand before them in the placement.
std::vector<Plan> plan_section(const fabric::Fabric& fabric, std::uint32_t part, const Section& section,
                               const Folding& folding, const Page& page, std::size_t figures);

/// That of a flat piece whose rows spread over a sector; nothing where they lie straight, or what is asked for
/// needs that.
std::optional<Plan> plan_sector(const fabric::Fabric& fabric, std::uint32_t part, const Section& section,
                                const Folding& folding, const Page& page);

} // namespace whorl::layout
