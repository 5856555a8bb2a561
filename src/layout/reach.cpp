#include "layout/reach.hpp"

#include <algorithm>

namespace whorl::layout {

Reach reach_of(const SymbolExtent& shape) {
  Reach reach;
  for (const Convex& piece : shape.ink)
    for (const Point p : piece) {
      reach.low = {std::min(reach.low.x, p.x), std::min(reach.low.y, p.y)};
      reach.high = {std::max(reach.high.x, p.x), std::max(reach.high.y, p.y)};
    }
  return reach;
}

const Reach& Reaches::of(const SymbolExtent& shape) {
  for (const auto& [known, reach] : found_)
    if (known == &shape) return reach;
  return found_.emplace_back(&shape, reach_of(shape)).second;
}

} // namespace whorl::layout
