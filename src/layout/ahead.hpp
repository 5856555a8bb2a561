#pragma once

#include "layout/rings.hpp"

namespace whorl::layout {

/// Gives the items of every ring a width that leaves room for what stands on them further out, ring upon
/// ring: a share of their ring as large as the largest that they have in one outside it.
void look_ahead(const fabric::Fabric& fabric, const std::vector<Ring>& rings, const std::vector<Size>& sizes,
                const Turn& turn, Rungs& rungs);

} // namespace whorl::layout
