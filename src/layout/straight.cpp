#include "layout/straight.hpp"

#include "layout/items.hpp"
#include "layout/sign.hpp"
#include "layout/stand.hpp"

#include <algorithm>
#include <utility>

namespace whorl::layout {
namespace {

using fabric::Fabric;

constexpr double clearance = 0.30;                        ///< heads of a line to feet of the next
constexpr double loop_gap = 0.46;                         ///< more where loop marks stand between
constexpr double free_gap = 0.66;                         ///< more where loops for another part stand between
constexpr double break_gap = 0.70;                        ///< more where a break line stands between
constexpr double air_across = 0.21;                       ///< between the inks of a line and the next
constexpr double break_middle = 0.45, zigzag_long = 0.19; ///< of a break line, above the heads
constexpr std::uint32_t stitches_a_zigzag = 6;
constexpr double chain_pitch = 0.72; ///< of chains one above the other

bool is_chain(const Fabric& fabric, const Item& item) {
  return stitch::shape_of(fabric.kinds[item.key.kind]).legs == 0;
}

bool turns(const Fabric& fabric, const Item& item) {
  return (fabric.stitches[item.first].flags & fabric::starts_chain) != 0 && is_chain(fabric, item);
}

double pitch_of(const Course& course, const Stand& column) {
  return std::max(chain_pitch, (course.outer - course.inner) / column.items);
}

/// Shorter symbols float in the middle; a chain, which has no foot, lies among the heads.
double foot_of(const Course& course, const SymbolExtent& shape) {
  if (shape.on_heads) return course.outer;
  if (shape.feet.empty()) return course.outer - shape.height;
  return course.inner + (course.outer - course.inner - shape.height) / 2;
}

const SymbolExtent& shape_at(const Course& course, std::uint32_t item) {
  return *course.band.shapes[course.band.shape_of[item]];
}

void reach(double foot, const SymbolExtent& shape, Course& course) {
  for (const Convex& piece : shape.ink)
    for (const Point& point : piece) {
      course.low = std::min(course.low, foot + point.y);
      course.high = std::max(course.high, foot + point.y);
    }
}

std::vector<Point> in_work_order(std::vector<Point> points, Point otherwise, bool leftward) {
  if (points.empty()) points.push_back(otherwise);
  std::stable_sort(points.begin(), points.end(),
                   [leftward](Point a, Point b) { return leftward ? a.x > b.x : a.x < b.x; });
  return points;
}

/// `wanted` points of an upright symbol; where it has fewer, the last stands for the rest.
void add_points(Point foot, const std::vector<Point>& own, std::uint32_t wanted, std::vector<Point>& points) {
  for (std::uint32_t i = 0; i < wanted; ++i)
    points.push_back(foot + own[std::min<std::size_t>(i, own.size() - 1)]);
}

void begin_item(Item& item, const Figure& figure) {
  item.first_foot = static_cast<std::uint32_t>(figure.feet.size());
  item.first_tip = static_cast<std::uint32_t>(figure.tips.size());
}

void stand_upright(const Fabric& fabric, const SymbolExtent& shape, Point foot, bool leftward, Item item,
                   Figure& figure) {
  begin_item(item, figure);
  item.foot = foot;
  item.up = {0, 1};
  item.height = shape.height;
  item.feet = static_cast<std::uint32_t>(legs_of(fabric, item).size());
  add_points(foot, in_work_order(shape.feet, {0, 0}, leftward), item.feet, figure.feet);
  add_points(foot, in_work_order(shape.tips, {0, shape.height}, leftward), item.count, figure.tips);
  figure.items.push_back(std::move(item));
}

void stand_on_end(const SymbolExtent& chain, Point middle, double half, Item item, Figure& figure) {
  begin_item(item, figure);
  item.foot = middle - Point{chain.height / 2, 0};
  item.up = {1, 0};
  item.height = chain.height;
  figure.tips.push_back(middle + Point{0, half});
  figure.items.push_back(std::move(item));
}

} // namespace

Stand column_of(const SymbolExtent& chain, std::uint32_t chains) {
  Stand stand{0, chains, 0, 0, 0.6, true};
  for (const Convex& piece : chain.ink)
    for (const Point& point : piece)
      stand.left = std::max({stand.left, point.y - chain.height / 2, chain.height / 2 - point.y});
  stand.right = stand.left;
  return stand;
}

std::uint32_t leading_chains(const Fabric& fabric, const std::vector<Item>& items) {
  std::uint32_t chains = 0;
  while (chains < items.size() && turns(fabric, items[chains])) ++chains;
  return chains == items.size() ? 0 : chains;
}

std::uint32_t trailing_chains(const Fabric& fabric, const std::vector<Item>& items) {
  std::uint32_t chains = 0;
  while (chains < items.size() && turns(fabric, items[items.size() - 1 - chains])) ++chains;
  return chains == items.size() ? 0 : chains;
}

void set_stands(const Extents& extents, std::uint32_t chains, bool counting, Course& course) {
  if (chains > 0) course.stands.push_back(column_of(extent(extents, course.items.front().key), chains));
  if (chains > 0 && counting) course.stands.front().slot = 1;
  for (std::uint32_t i = chains; i < course.items.size(); ++i)
    course.stands.push_back(stand_of(shape_at(course, i), course.band.slot[course.band.shape_of[i]], i));
}

void set_height(double inner, const Extents& extents, Course& course) {
  double height = 0;
  for (const Stand& stand : course.stands) {
    const SymbolExtent& shape = extent(extents, course.items[stand.item].key);
    if (!shape.on_heads) height = std::max(height, stand.column ? chain_pitch * stand.items : shape.height);
  }
  course.inner = inner;
  course.outer = inner + height;
  course.low = course.outer;
  course.high = course.inner;
  for (const Stand& stand : course.stands)
    if (!stand.column)
      reach(foot_of(course, extent(extents, course.items[stand.item].key)), shape_at(course, stand.item),
            course);
    else
      course.low = std::min(course.low, inner), course.high = std::max(course.high, course.outer);
}

double gap_above(const Course& below, const Course& above) {
  const double wanted = clearance + (above.band.loop_marks ? loop_gap : 0) +
                        (below.band.free_loops ? free_gap : 0) + (below.band.break_outside ? break_gap : 0);
  const double ink = air_across + (below.high - below.outer) + (above.inner - above.low) +
                     (below.band.break_outside ? break_gap : 0);
  return std::max(wanted, ink) + below.band.room_outside;
}

double break_height(const Course& course) { return std::max(course.outer, course.high - 0.1) + break_middle; }

void add_break(const Course& course, double left, double right, Figure& figure) {
  const double y = break_height(course), sixth = zigzag_long / 6;
  const auto zigzags = std::max<std::uint32_t>(
      1, (static_cast<std::uint32_t>(course.items.size()) + stitches_a_zigzag / 2) / stitches_a_zigzag);
  Stroke line{Line::fold_break, {{left, y}}, false};
  for (std::uint32_t i = 0; i < zigzags; ++i) {
    const double x = left + (right - left) * (i + 0.5) / zigzags;
    for (const Point p : {Point{x - 3 * sixth, y},
                          {x - sixth, y + zigzag_high},
                          {x + sixth, y - zigzag_high},
                          {x + 3 * sixth, y}})
      line.points.push_back(p);
  }
  line.points.push_back({right, y});
  figure.strokes.push_back(std::move(line));
}

void stand_course(const Fabric& fabric, const Extents& extents, const Course& course, double aside,
                  Ring& ring, Figure& figure) {
  ring.first_item = static_cast<std::uint32_t>(figure.items.size());
  ring.items = static_cast<std::uint32_t>(course.items.size());
  ring.inner = course.inner;
  ring.outer = course.outer;
  ring.middle = (course.inner + course.outer) / 2;
  ring.leftward = course.leftward;
  for (std::size_t i = 0; i < course.stands.size(); ++i) {
    const Stand& stand = course.stands[i];
    const double at = stand_at(course, i), x = at + aside;
    for (std::uint32_t j = 0; j < stand.items; ++j) {
      Item item = course.items[stand.item + j];
      item.at = course.leftward ? course.strung.length - at : at;
      const SymbolExtent& shape = extent(extents, item.key);
      if (!stand.column) {
        stand_upright(fabric, shape, {x, foot_of(course, shape)}, course.leftward, item, figure);
        continue;
      }
      const double pitch = pitch_of(course, stand);
      const double up = ring.middle + (j - (stand.items - 1) / 2.0) * pitch;
      stand_on_end(shape, {x, up}, pitch / 2, item, figure);
    }
  }
}

Label straight_label(Point at, std::vector<Run> runs, std::uint32_t ring, Tone tone) {
  Label label;
  label.at = at;
  double size = 0;
  for (const Run& run : runs) size = std::max(size, run.size);
  label.box = line_box(at, line_width(runs), size);
  label.runs = std::move(runs);
  label.ring = ring;
  label.tone = tone;
  return label;
}

namespace {

void widen(const std::vector<Point>& points, Figure& figure) {
  for (const Point& point : points) {
    figure.low = {std::min(figure.low.x, point.x), std::min(figure.low.y, point.y)};
    figure.high = {std::max(figure.high.x, point.x), std::max(figure.high.y, point.y)};
  }
}

} // namespace

void bound_straight(const Extents& extents, Figure& figure) {
  if (figure.items.empty()) return;
  figure.low = figure.high = figure.items.front().foot;
  for (const Item& item : figure.items)
    for (const Convex& piece : extent(extents, item.key).ink) widen(stood(item, piece), figure);
  for (const Label& label : figure.labels) widen(label.box, figure);
  for (const Pointer& pointer : figure.pointers) widen({pointer.tip}, figure);
  for (const Stroke& stroke : figure.strokes) widen(stroke.points, figure);
  for (const Ground& ground : figure.grounds) widen(ground.outline, figure);
  for (const Placed& placed : figure.placed)
    for (const Convex& outline : outlines_of(placed)) widen(outline, figure);
}

} // namespace whorl::layout
