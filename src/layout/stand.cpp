#include "layout/stand.hpp"

#include "layout/column.hpp"
#include "layout/contour.hpp"
#include "layout/few.hpp"
#include "layout/items.hpp"
#include "layout/join.hpp"

#include <algorithm>

namespace whorl::layout {
namespace {

/// Feet and tips of a symbol as work meets them.
struct Ends {
  Few<Point> feet, tips;
};

Few<Point> in_work_order(const std::vector<Point>& points, Point otherwise, Hand hand) {
  Few<Point> few(points, otherwise);
  if (few.size() > 1)
    std::stable_sort(few.begin(), few.end(),
                     [hand](Point a, Point b) { return hand == Hand::right ? a.x > b.x : a.x < b.x; });
  return few;
}

std::vector<Ends> ends_of(const Band& band, Hand hand) {
  std::vector<Ends> ends;
  ends.reserve(band.shapes.size());
  for (const SymbolExtent* shape : band.shapes) {
    Ends own{in_work_order(shape->feet, {0, 0}, hand), in_work_order(shape->tips, {0, shape->height}, hand)};
    if (band.against) std::reverse(own.feet.begin(), own.feet.end());
    if (band.against) std::reverse(own.tips.begin(), own.tips.end());
    ends.push_back(std::move(own));
  }
  return ends;
}

/// `wanted` points of a symbol; where it has fewer, the last stands for the rest.
void add_points(const Item& item, const Few<Point>& own, std::uint32_t wanted, std::vector<Point>& points) {
  for (std::uint32_t i = 0; i < wanted; ++i) points.push_back(stood(item, own.or_last(i)));
}

void add_item(Item item, const Ends& ends, std::uint32_t legs, Figure& figure) {
  item.first_foot = static_cast<std::uint32_t>(figure.feet.size());
  item.feet = legs;
  item.first_tip = static_cast<std::uint32_t>(figure.tips.size());
  add_points(item, ends.feet, legs, figure.feet);
  add_points(item, ends.tips, item.count, figure.tips);
  figure.items.push_back(item);
}

} // namespace

Convex stood(const Item& item, const Convex& piece) {
  Convex all;
  all.reserve(piece.size());
  for (const Point p : piece) all.push_back(stood(item, p));
  return all;
}

namespace {

/// Of a stem that is higher than its own: what reaches from foot to head is longer, all else is moved.
Convex stretched(const Convex& piece, const SymbolExtent& shape, double height) {
  double low = 1e9, high = -1e9;
  for (const Point p : piece) low = std::min(low, p.y), high = std::max(high, p.y);
  const double ratio = height / shape.height, middle = (low + high) / 2;
  const bool long_piece = high - low > shape.height / 2, is_mark = high < 0;
  Convex moved = piece;
  for (Point& p : moved) p.y += is_mark ? 0 : (long_piece ? std::max(p.y, 0.0) : middle) * (ratio - 1);
  return moved;
}

} // namespace

std::vector<Convex> ink_of(const Extents& extents, const Item& item) {
  std::vector<Convex> ink;
  const SymbolExtent& shape = extent(extents, item.key);
  const bool longer = shape.stretches && item.height > shape.height;
  for (const Convex& piece : shape.ink)
    ink.push_back(stood(item, longer ? stretched(piece, shape, item.height) : piece));
  return ink;
}

namespace {

/// Chains on end have their tops above them.
Point top_on_end(const Item& chain, double pitch, Hand hand) {
  const double side = hand == Hand::right ? -1 : 1;
  return chain.foot + chain.height / 2 * chain.up +
         pitch / 2 * Point{0 - side * chain.up.y, side * chain.up.x};
}

} // namespace

void stand_group(const fabric::Fabric& fabric, const std::vector<InGroup>& group, const Item& whole,
                 Hand hand, Figure& figure) {
  constexpr double pitch = 0.72;
  fabric::StitchId first = whole.first;
  for (const InGroup& one : group) {
    Item item = one.item;
    item.first = first;
    first += item.count;
    const Point middle = item.foot + item.height / 2 * item.up;
    item.at = whole.at + (hand == Hand::right ? -middle.x : middle.x);
    item.up = stood(whole, item.foot + item.up) - stood(whole, item.foot);
    item.foot = stood(whole, item.foot);
    stand_item(fabric, *one.shape, item, hand, figure);
    if (one.on_end) figure.tips.back() = top_on_end(item, pitch, hand);
  }
}

void stand_ring(const fabric::Fabric& fabric, const std::vector<Item>& items, const Band& band,
                const Size& size, const std::vector<double>& at, const Turn& turn, Figure& figure) {
  const Way way = figure.clockwise ? Way::clockwise : Way::anticlockwise;
  const std::vector<Ends> ends = ends_of(band, turn.hand);
  const auto standing = [&](std::size_t i) {
    Item item = items[i];
    item.at = at[i];
    item.height = band.shapes[band.shape_of[i]]->height;
    const Point out = outward(item.at / size.middle + size.turned, way);
    item.foot = size.wedges[band.shape_of[i]].foot * out;
    item.up = turn.inward ? Point{0 - out.x, 0 - out.y} : out;
    return item;
  };
  if (band.join) stand_join(fabric, *band.join, standing(0), turn.hand, figure);
  if (!band.column.empty()) stand_column(band, size, at.front(), turn, figure);
  for (std::size_t i = band.column.empty() ? 0 : 1; i < items.size(); ++i) {
    const std::uint32_t shape = band.shape_of[i];
    const Item item = standing(i);
    if (const std::vector<InGroup>* group = group_in(band, shape)) {
      stand_group(fabric, *group, item, turn.hand, figure);
      continue;
    }
    add_item(item, ends[shape], static_cast<std::uint32_t>(legs_of(fabric, item).size()), figure);
  }
}

void stand_item(const fabric::Fabric& fabric, const SymbolExtent& shape, const Item& item, Hand hand,
                Figure& figure) {
  Ends ends{in_work_order(shape.feet, {0, 0}, hand), in_work_order(shape.tips, {0, shape.height}, hand)};
  if (shape.stretches) ends.tips = Few<Point>({0, std::max(shape.height, item.height)});
  add_item(item, ends, static_cast<std::uint32_t>(legs_of(fabric, item).size()), figure);
}

} // namespace whorl::layout
