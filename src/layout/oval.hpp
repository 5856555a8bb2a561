#pragma once

#include "layout/figure.hpp"
#include "layout/oval_ring.hpp"

#include <cstdint>
#include <vector>

namespace whorl::layout {

/// The chains that a round goes along, if it is the first of an oval: from the chain at the far end to the
/// one nearest the hook that is worked into.
struct OvalCore {
  fabric::StitchId far = fabric::none, near = 0;
  std::uint32_t chains() const { return far == fabric::none ? 0 : near - far + 1; }
};

/// Of a part whose first round is worked along one side of its starting chain and back along the other; of
/// any other part none.
OvalCore oval_core(const fabric::Fabric& fabric, std::uint32_t part);

/// An oval and what the tests look at: the rings on its chain.
struct Oval {
  Figure figure;
  Stadium stadium;
  std::vector<OvalRing> rings;
};

/// Draws rounds that grow round a starting chain.
Oval draw_oval(const fabric::Fabric& fabric, const Plan& plan, const Extents& extents, const Page& page);

} // namespace whorl::layout
