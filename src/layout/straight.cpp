#include "layout/straight.hpp"

#include "layout/direction.hpp"
#include "layout/few.hpp"
#include "layout/items.hpp"
#include "layout/reach.hpp"
#include "layout/sign.hpp"
#include "layout/stand.hpp"

#include <algorithm>
#include <cmath>
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

} // namespace

double pitch_of(const Course& course, const Stand& column) {
  return std::max(chain_pitch, (course.outer - course.inner) / column.items);
}

/// Shorter symbols float in the middle; a chain, which has no foot, lies among the heads.
double foot_of(const Course& course, const SymbolExtent& shape) {
  if (shape.on_heads) return course.outer;
  if (shape.feet.empty()) return course.outer - shape.height;
  return course.inner + (course.outer - course.inner - shape.height) / 2;
}

namespace {

bool begins_with_column(const Course& course) {
  return !course.stands.empty() && course.stands.front().column;
}

Few<Point> in_work_order(const std::vector<Point>& points, Point otherwise, bool leftward) {
  Few<Point> few(points, otherwise);
  if (few.size() > 1)
    std::stable_sort(few.begin(), few.end(),
                     [leftward](Point a, Point b) { return leftward ? a.x > b.x : a.x < b.x; });
  return few;
}

/// `wanted` points of an upright symbol; where it has fewer, the last stands for the rest.
void add_points(Point foot, const Few<Point>& own, std::uint32_t wanted, std::vector<Point>& points) {
  for (std::uint32_t i = 0; i < wanted; ++i) points.push_back(foot + own.or_last(i));
}

void begin_item(Item& item, const Figure& figure) {
  item.first_foot = static_cast<std::uint32_t>(figure.feet.size());
  item.first_tip = static_cast<std::uint32_t>(figure.tips.size());
}

/// How one of a line's shapes stands upright on it, its ends in order of work.
struct Upright {
  double foot = 0, height = 0;
  Few<Point> feet, tips;
};

std::vector<Upright> uprights_of(const Course& course) {
  std::vector<Upright> all;
  all.reserve(course.band.shapes.size());
  for (const SymbolExtent* shape : course.band.shapes)
    all.push_back({foot_of(course, *shape), shape->height,
                   in_work_order(shape->feet, {0, 0}, stitches_run_leftward(course)),
                   in_work_order(shape->tips, {0, shape->height}, stitches_run_leftward(course))});
  return all;
}

/// A chain of a bow.
void stand_bowed(const SymbolExtent& chain, Point foot, Point up, Item item, Figure& figure) {
  begin_item(item, figure);
  item.foot = foot;
  item.up = up;
  item.height = chain.height;
  figure.tips.push_back(foot + chain.height * up);
  figure.items.push_back(item);
}

void stand_upright(const Fabric& fabric, const Upright& upright, double x, Item item, Figure& figure) {
  begin_item(item, figure);
  item.foot = {x, upright.foot};
  item.up = {0, 1};
  item.height = upright.height;
  item.feet = static_cast<std::uint32_t>(legs_of(fabric, item).size());
  add_points(item.foot, upright.feet, item.feet, figure.feet);
  add_points(item.foot, upright.tips, item.count, figure.tips);
  figure.items.push_back(item);
}

void stand_on_end(const SymbolExtent& chain, Point middle, double half, Item item, Figure& figure) {
  begin_item(item, figure);
  item.foot = middle - Point{chain.height / 2, 0};
  item.up = {1, 0};
  item.height = chain.height;
  figure.tips.push_back(middle + Point{0, half});
  figure.items.push_back(item);
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
  course.reaches.reserve(course.band.shapes.size());
  for (const SymbolExtent* shape : course.band.shapes) course.reaches.push_back(reach_of(*shape));
  course.upright.assign(course.band.shapes.size(), 0);
  course.stands.reserve(course.items.size());
  if (chains > 0) course.stands.push_back(column_of(extent(extents, course.items.front().key), chains));
  if (chains > 0 && counting) course.stands.front().slot = 1;
  for (std::uint32_t i = chains; i < course.items.size(); ++i) {
    const std::uint32_t shape = course.band.shape_of[i];
    course.upright[shape] = 1;
    course.stands.push_back(stand_of(course.reaches[shape], course.band.slot[shape], i));
  }
}

namespace {

double height_of(const Course& course) {
  double height = begins_with_column(course) ? chain_pitch * course.stands.front().items : 0;
  for (std::size_t i = 0; i < course.upright.size(); ++i)
    if (course.upright[i] && !course.band.shapes[i]->on_heads)
      height = std::max(height, course.band.shapes[i]->height);
  return height;
}

} // namespace

void set_height(double inner, Course& course) {
  course.inner = inner;
  course.outer = inner + height_of(course);
  course.low = begins_with_column(course) ? course.inner : course.outer;
  course.high = begins_with_column(course) ? course.outer : course.inner;
  for (std::size_t i = 0; i < course.upright.size(); ++i) {
    if (!course.upright[i]) continue;
    const double foot = foot_of(course, *course.band.shapes[i]);
    course.low = std::min(course.low, foot + course.reaches[i].low.y);
    course.high = std::max(course.high, foot + course.reaches[i].high.y);
  }
}

double gap_above(const Course& below, const Course& above) {
  const double wanted = clearance + (above.band.loop_marks ? loop_gap : 0) +
                        (below.band.free_loops && !below.band.loops_below ? free_gap : 0) +
                        (below.band.break_outside ? break_gap : 0);
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

void make_room(const std::vector<Course>& courses, Figure& figure) {
  std::size_t items = 0;
  for (const Course& course : courses) items += course.items.size();
  figure.items.reserve(items);
  figure.feet.reserve(items + items / 4);
  figure.tips.reserve(items + items / 4);
}

namespace {

/// A stem from its foot to its head, which stands at `x`.
void stand_leaning(const Fabric& fabric, const Extents& extents, const Course& course, const Stand& stand,
                   double x, Item item, Figure& figure) {
  constexpr double step_of_height = 20; // of a W, so that stems alike in height are one symbol
  const SymbolExtent& shape = extent(extents, item.key);
  const double low = foot_of(course, shape);
  const Point foot{x + stand.foot, low}, head{x, low + shape.height};
  item.up = unit(head - foot);
  item.height = std::floor(length(head - foot) * step_of_height) / step_of_height;
  item.foot = head - item.height * item.up;
  stand_item(fabric, shape, item, Hand::right, figure);
}

} // namespace

void stand_course(const Fabric& fabric, const Extents& extents, const Course& course, double aside,
                  Ring& ring, Figure& figure) {
  ring.first_item = static_cast<std::uint32_t>(figure.items.size());
  ring.items = static_cast<std::uint32_t>(course.items.size());
  ring.inner = course.inner;
  ring.outer = course.outer;
  ring.middle = (course.inner + course.outer) / 2;
  ring.leftward = course.leftward;
  const std::vector<Upright> uprights = uprights_of(course);
  for (std::size_t i = 0; i < course.stands.size(); ++i) {
    const Stand& stand = course.stands[i];
    const double at = stand_at(course, i), x = at + aside;
    for (std::uint32_t j = 0; j < stand.items; ++j) {
      Item item = course.items[stand.item + j];
      item.at = course.leftward ? course.strung.length - at : at;
      if (stand.foot != 0) {
        stand_leaning(fabric, extents, course, stand, x, item, figure);
        continue;
      }
      if (!course.bent.empty() && !(course.bent[i].moved == Point{})) {
        const SymbolExtent& chain = extent(extents, item.key);
        stand_bowed(chain, Point{x, foot_of(course, chain)} + course.bent[i].moved, course.bent[i].up, item,
                    figure);
        continue;
      }
      if (!stand.column) {
        stand_upright(fabric, uprights[course.band.shape_of[stand.item + j]], x, item, figure);
        continue;
      }
      const double pitch = pitch_of(course, stand);
      const double up = ring.middle + (j - (stand.items - 1) / 2.0) * pitch;
      stand_on_end(extent(extents, item.key), {x, up}, pitch / 2, item, figure);
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

void widen(Point low, Point high, Figure& figure) {
  figure.low = {std::min(figure.low.x, low.x), std::min(figure.low.y, low.y)};
  figure.high = {std::max(figure.high.x, high.x), std::max(figure.high.y, high.y)};
}

void widen(const std::vector<Point>& points, Figure& figure) {
  for (const Point point : points) widen(point, point, figure);
}

void widen_for_items(const Extents& extents, Figure& figure) {
  Reaches reaches;
  for (const Item& item : figure.items) {
    const SymbolExtent& shape = extent(extents, item.key);
    if (item.up == Point{0, 1}) {
      const Reach& ink = reaches.of(shape);
      widen(item.foot + ink.low, item.foot + ink.high, figure);
    } else {
      for (const Convex& piece : shape.ink) widen(stood(item, piece), figure);
    }
  }
}

} // namespace

void bound_straight(const Extents& extents, Figure& figure) {
  if (figure.items.empty()) return;
  figure.low = figure.high = figure.items.front().foot;
  widen_for_items(extents, figure);
  bound_furniture(figure);
}

void bound_furniture(Figure& figure) {
  for (const Label& label : figure.labels) widen(label.box, figure);
  for (const Pointer& pointer : figure.pointers) widen(pointer.tip, pointer.tip, figure);
  for (const Stroke& stroke : figure.strokes) widen(stroke.points, figure);
  for (const Ground& ground : figure.grounds) widen(ground.outline, figure);
  for (const Placed& placed : figure.placed)
    for (const Convex& outline : outlines_of(placed)) widen(outline, figure);
}

} // namespace whorl::layout
