#include "stitch/turning.hpp"

#include <algorithm>

namespace whorl::stitch {

std::optional<Turning> turning_of(const StitchKind& kind) {
  const Shape shape = shape_of(kind);
  if (kind.own || shape.legs != 1 || kind.takes != 1 || kind.makes != 1 || shape.stems > 0 ||
      shape.close != Close::none)
    return std::nullopt;
  Turning turning;
  turning.chains = shape.height;
  turning.first_chain = std::max(1, shape.height) + 1;
  if (shape.bar) turning.counts = shape.slashes.front() > 0 ? ChainCounts::yes : ChainCounts::writers_differ;
  return turning;
}

} // namespace whorl::stitch
