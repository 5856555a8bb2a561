#include "layout/column.hpp"

#include "layout/contour.hpp"
#include "layout/straight.hpp"

#include <algorithm>
#include <utility>

namespace whorl::layout {
namespace {

constexpr double chain_pitch = 0.72, turning_slot = 0.6;

/// Chains turned a quarter round, from the feet's circle up.
SymbolExtent column_shape(const SymbolExtent& chain, std::size_t chains, double height) {
  SymbolExtent column;
  column.height = std::max(height, chain_pitch * static_cast<double>(chains));
  column.tips = {{0, column.height}};
  const double pitch = column.height / static_cast<double>(chains);
  for (std::size_t i = 0; i < chains; ++i)
    for (Convex piece : chain.ink) {
      for (Point& p : piece) p = {chain.height / 2 - p.y, (static_cast<double>(i) + 0.5) * pitch + p.x};
      column.ink.push_back(std::move(piece));
    }
  return column;
}

} // namespace

std::vector<Item> take_column(const fabric::Fabric& fabric, std::vector<Item>& items) {
  const std::uint32_t chains = leading_chains(fabric, items);
  if (chains == 0) return {};
  std::vector<Item> column(items.begin(), items.begin() + chains);
  items.erase(items.begin(), items.begin() + (chains - 1));
  return column;
}

void stand_on_end(std::vector<Item> chains, bool counting, const Extents& extents, Band& band) {
  const SymbolExtent& chain = extent(extents, chains.front().key);
  shape_first(column_shape(chain, chains.size(), band.height), counting ? 1 : turning_slot, band);
  band.column = std::move(chains);
  band.chain_height = chain.height;
}

void stand_column(const Band& band, const Size& size, double at, const Turn& turn, Figure& figure) {
  const Way way = figure.clockwise ? Way::clockwise : Way::anticlockwise;
  const std::uint32_t shape = band.shape_of.front();
  const double angle = at / size.middle + size.turned;
  const Point out = outward(angle, way), on = along(angle, way);
  const double pitch = band.shapes[shape]->height / static_cast<double>(band.column.size());
  const double side = turn.inward ? -1 : 1;
  for (std::size_t i = 0; i < band.column.size(); ++i) {
    Item item = band.column[i];
    const double middle = size.wedges[shape].foot + side * (static_cast<double>(i) + 0.5) * pitch;
    item.at = at;
    item.height = band.chain_height;
    item.up = on;
    item.foot = middle * out - band.chain_height / 2 * on;
    item.first_foot = static_cast<std::uint32_t>(figure.feet.size());
    item.first_tip = static_cast<std::uint32_t>(figure.tips.size());
    figure.tips.push_back((middle + side * pitch / 2) * out);
    figure.items.push_back(item);
  }
}

Item column_standing(const Band& band, Item last, const Figure& figure) {
  const double height = band.shapes[band.shape_of.front()]->height;
  const Point tip = figure.tips[last.first_tip], middle = last.foot + band.chain_height / 2 * last.up;
  const double half = height / static_cast<double>(band.column.size()) / 2;
  last.up = (1 / half) * (tip - middle);
  last.foot = tip - height * last.up;
  return last;
}

} // namespace whorl::layout
