#include "layout/join.hpp"

#include "layout/stand.hpp"

#include <algorithm>
#include <utility>

namespace whorl::layout {
namespace {

constexpr double dot_air = 0.12;   ///< between the dot and the head beside it
constexpr double under_head = 0.6; ///< ink that is lower is not beside it

/// How far the ink beside a head reaches to the side on which the last stitch of a round stands.
double reach_beside_head(const SymbolExtent& shape, double side) {
  double reach = 0;
  for (const Convex& piece : shape.ink)
    for (const Point& p : piece)
      if (p.y > shape.height - under_head) reach = std::max(reach, side * p.x);
  return reach;
}

} // namespace

std::optional<Item> take_join(const fabric::Fabric& fabric, std::vector<Item>& items) {
  if (items.size() < 2 || (fabric.stitches[items.back().first].flags & fabric::joins) == 0)
    return std::nullopt;
  const Item dot = items.back();
  items.pop_back();
  return dot;
}

void join_first(Item dot, const Extents& extents, Hand hand, Band& band) {
  const SymbolExtent& shape = extent(extents, dot.key);
  SymbolExtent joined = *band.shapes[band.shape_of.front()];
  const double side = hand == Hand::right ? 1 : -1;
  dot.foot = {side * (reach_beside_head(joined, side) + dot_air + shape.width / 2),
              joined.height - shape.height};
  dot.up = {0, 1};
  dot.height = shape.height;
  for (Convex& piece : ink_of(extents, dot)) joined.ink.push_back(std::move(piece));
  shape_first(std::move(joined), slot_of(band, 0), band);
  band.join = InGroup{dot, &shape, false};
}

void stand_join(const fabric::Fabric& fabric, const InGroup& join, const Item& first, Hand hand,
                Figure& figure) {
  Item dot = join.item;
  dot.at = first.at + (hand == Hand::right ? -dot.foot.x : dot.foot.x);
  dot.up = first.up;
  dot.foot = stood(first, dot.foot);
  stand_item(fabric, *join.shape, dot, hand, figure);
}

} // namespace whorl::layout
