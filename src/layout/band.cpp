#include "layout/band.hpp"

#include <algorithm>

namespace whorl::layout {
namespace {

constexpr double echo_air = 0.20;

double slot_of(const SymbolExtent& shape, const Item& item, bool echo) {
  return echo ? std::min(shape.slot, std::max<double>(item.count, shape.width + echo_air)) : shape.slot;
}

std::size_t shape_in(Band& band, const SymbolExtent& shape) {
  std::size_t at = 0;
  while (at < band.shapes.size() && band.shapes[at] != &shape) ++at;
  if (at == band.shapes.size())
    band.shapes.push_back(&shape), band.how_many.push_back(0), band.slot.push_back(0);
  return at;
}

} // namespace

Band band_of(const std::vector<Item>& items, const Extents& extents, bool echo) {
  Band band;
  band.shape_of.reserve(items.size());
  for (const Item& item : items) {
    const SymbolExtent& shape = extent(extents, item.key);
    const std::size_t at = shape_in(band, shape);
    band.shape_of.push_back(static_cast<std::uint32_t>(at));
    ++band.how_many[at];
    band.slot[at] = slot_of(shape, item, echo);
    band.height = std::max(band.height, shape.height);
    band.slots += band.slot[at];
    band.loop_marks = band.loop_marks || shape.below > 0;
  }
  return band;
}

} // namespace whorl::layout
