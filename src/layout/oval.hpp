#pragma once

#include "layout/figure.hpp"
#include "layout/oval_core.hpp"
#include "layout/oval_ring.hpp"

#include <cstdint>
#include <vector>

namespace whorl::layout {

/// An oval and what the tests look at: the rings on its chain.
struct Oval {
  Figure figure;
  Stadium stadium;
  std::vector<OvalRing> rings;
};

/// Draws rounds that grow round a starting chain.
Oval draw_oval(const fabric::Fabric& fabric, const Plan& plan, const Extents& extents, const Page& page);

} // namespace whorl::layout
