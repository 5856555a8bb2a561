#include "drawing/symbol.hpp"

#include "drawing/outline.hpp"
#include "drawing/type.hpp"

#include <algorithm>
#include <cmath>

namespace whorl::drawing {
namespace {

/// The proportions of symbols, in W.
namespace size {
constexpr double slip = 0.30, single = 0.80, half = 1.40, step = 0.65, chain = 0.32; // foot to head
constexpr double vee = 0.78, vee_pair = 0.96, vee_more = 0.83; // legs of sc in one, together
constexpr double pair = 0.98, pair_treble = 1.15, pair_double_treble = 1.35;
constexpr double pair_of_crosses = 1.45, under_cross = 0.74; // extended single crochets
constexpr double more = 0.87;      // three and more tall legs: their pitch, of a pair's
constexpr double widest_fan = 1.5; // sum of the sines between the legs of a fan
constexpr double bar = 0.56, bar_of_pitch = 0.80, bellied_bar = 0.50;
constexpr double slash = 0.46, slash_in_group = 0.38, slash_pitch = 0.30, slash_under_head = 0.44;
constexpr double slash_in_fan = 0.62, slash_together = 0.36; // of the leg, from its foot
constexpr double tie = 0.22; // pitch of the ties of an extended stitch, under its head
constexpr double bobble = 1.80, puff = 1.60;
constexpr double bobble_pitch = 0.30, cluster_pitch = 0.40, puff_pitch = 0.41; // of legs at half height
constexpr double bobble_slash = 0.17, cluster_slash = 0.26;
constexpr double bobble_slot = 1.6, cluster_slot = 1.3, puff_slot = 1.2, chain_slot = 0.68;
constexpr double popcorn_oval = 0.30, popcorn_oval_height = 0.15; // half axes
constexpr double loop_under_cross = 0.16, loop_under_foot = 0.30, loop_under_each = 0.24;
} // namespace size

/// Where a mark is put: its origin, and what its x and y directions become.
struct Frame {
  Point at;
  Point across{1, 0};
  Point along{0, 1};
};

double length(Point p) { return std::sqrt(p.x * p.x + p.y * p.y); }
Point unit(Point p) { return (1 / length(p)) * p; }
Point right_of(Point up) { return {up.y, 0.0 - up.x}; }
Frame upright(Point at, Point up, double scale = 1) { return {at, scale * right_of(up), scale * up}; }

std::string_view origin_of(const Mark& mark) {
  for (const auto& [name, point] : mark.anchors)
    if (name == "foot" || name == "middle" || name == "tip") return name;
  return "foot";
}

/// What is being composed: the marks it is made of, and the ink so far.
struct Drawing {
  const std::vector<Mark>& marks;
  Style style;
  Composed out;

  void put(std::string_view name, const Frame& frame) {
    const Mark* mark = find_mark(marks, name);
    if (!mark) return;
    const Point origin = anchor(*mark, origin_of(*mark));
    for (Pen pen : mark->pens) {
      for (Point& p : pen.path.points)
        p = frame.at + (p.x - origin.x) * frame.across + (p.y - origin.y) * frame.along;
      out.pens.push_back(std::move(pen));
    }
  }
  /// Draws a mark that is one W tall out from `foot` to `top`.
  void stretch(std::string_view name, Point foot, Point top, double across = 1) {
    const Point way = top - foot;
    put(name, {foot, across * right_of(unit(way)), way});
  }
};

double tall_height(int chains) {
  if (chains <= 0) return size::slip;
  return chains == 1 ? size::single : size::half + size::step * (chains - 2);
}

double pair_width(int chains) {
  if (chains <= 3) return size::pair;
  return chains == 4 ? size::pair_treble : size::pair_double_treble;
}

std::vector<Point> in_line(int n, double pitch, double y) {
  std::vector<Point> points;
  for (int i = 0; i < n; ++i) points.push_back({(i - (n - 1) / 2.0) * pitch, y});
  return points;
}

Point turned(Point p, Point by) { return {p.x * by.x - p.y * by.y, p.x * by.y + p.y * by.x}; }

/// Tips of n equal legs from one foot, an equal angle between them; `sine` is that angle's.
std::vector<Point> in_fan(int n, double leg, double sine) {
  const double cosine = std::sqrt(1 - sine * sine);
  const Point half{std::sqrt((1 + cosine) / 2), std::sqrt((1 - cosine) / 2)};
  Point way = n % 2 == 0 ? turned({0, 1}, {half.x, half.y}) : Point{0, 1};
  for (int i = 0; i < (n - 1) / 2; ++i) way = turned(way, {cosine, sine});
  std::vector<Point> tips;
  for (int i = 0; i < n; ++i, way = turned(way, {cosine, 0.0 - sine})) tips.push_back(leg * way);
  return tips;
}

/// A leg of a tall stitch and where its slashes stand.
struct Leg {
  Point foot, top;
  int slashes = 0;
  double slash_at = 0; ///< the middle of them, from the foot
  double slash = size::slash;
};

/// Slashes lean as CYC prints them; on a leg that leans to the right they are mirrored, so that what is drawn
/// about an axis stays the same on both sides and outer slashes do not stand up along their neighbours.
void draw_leg(Drawing& drawing, const Leg& leg) {
  drawing.stretch("stem", leg.foot, leg.top);
  const Point up = unit(leg.top - leg.foot);
  Frame frame = upright({}, up, leg.slash / size::slash);
  if (leg.top.x > leg.foot.x) frame.across = -1 * frame.across;
  for (int i = 0; i < leg.slashes; ++i) {
    const double at = leg.slash_at + (i - (leg.slashes - 1) / 2.0) * size::slash_pitch;
    frame.at = leg.foot + at * up;
    drawing.put("slash", frame);
  }
}

int slashes_of(const stitch::Shape& shape, std::size_t leg) {
  return leg < shape.slashes.size() ? shape.slashes[leg] : 0;
}

const char* single_mark(const Style& style) { return style.single == Style::Single::plus ? "plus" : "cross"; }

/// What legs end in: a bar, with the ties of an extended stitch under it, or the cross of an extended single
/// crochet.
void draw_head(Drawing& drawing, const stitch::Shape& shape, Point top, Point up, double bar = size::bar) {
  if (!shape.bar) return drawing.put(single_mark(drawing.style), upright(top - size::single * up, up));
  drawing.put("bar", upright(top, up, bar / size::bar));
  for (int i = 1; i <= shape.stems; ++i) drawing.put("tie", upright(top - (i * size::tie) * up, up));
}

/// One leg ends at the bar or in the middle of the cross.
Point leg_end(const stitch::Shape& shape, Point top) {
  return shape.bar ? top : top - (size::single / 2) * unit(top);
}

void tall(Drawing& drawing, const stitch::Shape& shape, double height) {
  const Point top{0, height};
  draw_leg(
      drawing,
      {{}, leg_end(shape, top), slashes_of(shape, 0), height * (1 - size::slash_under_head), size::slash});
  draw_head(drawing, shape, top, {0, 1});
  drawing.out.extent.feet = {{}};
  drawing.out.extent.tips = {top};
}

void tall_in_one(Drawing& drawing, const stitch::Shape& shape, int n, double height) {
  const double pair = shape.bar ? pair_width(shape.height) : size::pair_of_crosses;
  const double sine = std::min(size::more * pair / height, size::widest_fan / (n - 1));
  const std::vector<Point> tips = n == 2 ? in_line(2, pair, height) : in_fan(n, height, sine);
  const double bar = n == 2 ? size::bar : std::min(size::bar, size::bar_of_pitch * sine * height);
  for (const Point& tip : tips) {
    draw_leg(drawing, {{},
                       leg_end(shape, tip),
                       slashes_of(shape, 0),
                       size::slash_in_fan * length(tip),
                       size::slash_in_group});
    draw_head(drawing, shape, tip, unit(tip), bar);
  }
  drawing.out.extent.feet.assign(tips.size(), {});
  drawing.out.extent.tips = tips;
}

void tall_together(Drawing& drawing, const stitch::Shape& shape, double height) {
  const double pair = pair_width(shape.height);
  const std::vector<Point> feet = in_line(shape.legs, shape.legs == 2 ? pair : size::more * pair, 0);
  const Point top{0, height}, joint{0, shape.bar ? height : height - size::under_cross};
  for (std::size_t i = 0; i < feet.size(); ++i)
    draw_leg(drawing, {feet[i], joint, slashes_of(shape, i), size::slash_together * length(joint - feet[i]),
                       size::slash_in_group});
  draw_head(drawing, shape, top, {0, 1});
  drawing.out.extent.feet = feet;
  drawing.out.extent.tips = {top};
}

double vee_pitch(int n) { return n == 2 ? size::vee_pair : size::vee_more; }

/// Stands the V in the middle of the height of a single crochet.
constexpr double vee_air = (size::single - size::vee) / 2;

void single(Drawing& drawing) {
  drawing.put(single_mark(drawing.style), {});
  drawing.out.extent.feet = {{}};
  drawing.out.extent.tips = {{0, size::single}};
}

void singles_in_one(Drawing& drawing, int n) {
  const std::vector<Point> tips = in_line(n, vee_pitch(n), size::single - vee_air);
  for (const Point& tip : tips) drawing.stretch("leg", {0, vee_air}, tip);
  drawing.out.extent.feet.assign(tips.size(), {});
  drawing.out.extent.tips = tips;
}

void singles_together(Drawing& drawing, int n) {
  const std::vector<Point> feet = in_line(n, vee_pitch(n), vee_air);
  for (const Point& foot : feet) drawing.stretch("leg", foot, {0, size::single - vee_air});
  drawing.out.extent.feet = feet;
  drawing.out.extent.tips = {{0, size::single}};
}

/// How full a stitch of several legs in one place is.
struct Belly {
  double pitch, slash, slot;
};

Belly belly_of(const stitch::Shape& shape) {
  if (slashes_of(shape, 0) == 0 && shape.legs <= 4) return {size::puff_pitch, 0, size::puff_slot};
  if (shape.legs <= 3) return {size::cluster_pitch, size::cluster_slash, size::cluster_slot};
  return {size::bobble_pitch * std::min(1.0, 4.0 / (shape.legs - 1)), size::bobble_slash, size::bobble_slot};
}

double bellied_height(const stitch::Shape& shape) {
  const int slashes = slashes_of(shape, 0);
  if (!shape.bar) return size::single;
  return slashes == 0 ? size::puff : size::bobble + size::step * (slashes - 1);
}

void bellied(Drawing& drawing, const stitch::Shape& shape, double height) {
  const Belly belly = belly_of(shape);
  const bool popcorn = shape.close == stitch::Close::oval;
  const Point top{0, popcorn ? height - 2 * size::popcorn_oval_height : height};
  for (int leg = 0; leg < shape.legs; ++leg) {
    const double out = (leg - (shape.legs - 1) / 2.0) * belly.pitch;
    drawing.stretch("bow", {}, top, out);
    const int slashes = slashes_of(shape, static_cast<std::size_t>(leg));
    for (int i = 0; i < slashes; ++i)
      drawing.put("slash", upright({out, top.y / 2 + (i - (slashes - 1) / 2.0) * size::slash_pitch}, {0, 1},
                                   belly.slash / size::slash));
  }
  if (popcorn)
    drawing.put("oval", {{0, height - size::popcorn_oval_height},
                         {size::popcorn_oval / 0.275, 0},
                         {0, size::popcorn_oval_height / 0.16}});
  else if (shape.bar || shape.close == stitch::Close::bar)
    draw_head(drawing, shape, top, {0, 1}, size::bellied_bar);
  drawing.out.extent.feet.assign(static_cast<std::size_t>(shape.legs), {});
  drawing.out.extent.tips = {{0, height}};
  drawing.out.extent.slot = belly.slot;
}

void chain(Drawing& drawing) {
  drawing.put("oval", {{0, size::chain / 2}});
  drawing.out.extent.tips = {{0, size::chain}};
  drawing.out.extent.slot = size::chain_slot;
}

void slip(Drawing& drawing) {
  drawing.put("dot", {});
  drawing.out.extent.feet = {{}};
  drawing.out.extent.tips = {{0, size::slip}};
}

/// Several of what cannot be fanned out (two bobbles, two decreases in one place): side by side.
void side_by_side(Drawing& drawing, int n) {
  const Composed one = drawing.out;
  drawing.out.pens.clear();
  drawing.out.extent.feet.clear();
  drawing.out.extent.tips.clear();
  for (const Point& by : in_line(n, one.extent.slot, 0)) {
    for (Pen pen : one.pens) {
      for (Point& p : pen.path.points) p = p + by;
      drawing.out.pens.push_back(std::move(pen));
    }
    for (const Point& foot : one.extent.feet) drawing.out.extent.feet.push_back(foot + by);
    for (const Point& tip : one.extent.tips) drawing.out.extent.tips.push_back(tip + by);
  }
  drawing.out.extent.slot = n * one.extent.slot;
}

bool is_single(const stitch::Shape& shape) { return shape.cross && shape.stems == 0 && shape.height <= 1; }

void draw_stitch(Drawing& drawing, const stitch::Shape& shape, int n, double height) {
  const bool one_leg = shape.legs == 1;
  if (shape.legs == 0)
    chain(drawing);
  else if (shape.feet_joined)
    bellied(drawing, shape, height);
  else if (is_single(shape) && one_leg && n > 1)
    return singles_in_one(drawing, n);
  else if (is_single(shape) && one_leg)
    single(drawing);
  else if (is_single(shape))
    singles_together(drawing, shape.legs);
  else if (shape.height == 0 && !shape.bar)
    slip(drawing);
  else if (one_leg && n > 1)
    return tall_in_one(drawing, shape, n, height);
  else if (one_leg)
    tall(drawing, shape, height);
  else
    tall_together(drawing, shape, height);
  if (n > 1) side_by_side(drawing, n);
}

double drawn_height(const stitch::Shape& shape, double asked) {
  if (shape.legs == 0) return size::chain;
  if (is_single(shape) && !shape.feet_joined) return size::single;
  if (shape.height == 0 && !shape.bar) return size::slip;
  if (asked > 0) return asked;
  return shape.feet_joined ? bellied_height(shape) : tall_height(shape.height);
}

void draw_loops(Drawing& drawing, const stitch::Shape& shape, std::uint8_t loops, bool crosses) {
  if (loops == stitch::both || loops == stitch::no_loop || shape.front_loops_only) return;
  std::vector<Point> feet = drawing.out.extent.feet;
  feet.erase(std::unique(feet.begin(), feet.end()), feet.end());
  double under = size::loop_under_foot;
  if (feet.size() > 1)
    under = size::loop_under_each;
  else if (crosses)
    under = size::loop_under_cross;
  const char* mark = loops == stitch::back ? "cap" : loops == stitch::front ? "cup" : "third";
  for (const Point& foot : feet) drawing.put(mark, {{foot.x, 0.0 - under}});
}

/// What the pens from `first` on ink, as convex pieces.
std::vector<layout::Convex> ink_of(const std::vector<Pen>& pens, std::size_t first, std::size_t last) {
  std::vector<layout::Convex> ink;
  for (std::size_t i = first; i < last; ++i) append_ink(ink, pens[i]);
  return ink;
}

/// A spindle is one piece: nothing stands between its legs.
void merge(std::vector<layout::Convex>& ink) {
  std::vector<Point> corners;
  for (const layout::Convex& piece : ink) corners.insert(corners.end(), piece.begin(), piece.end());
  ink = {convex_around(corners, 0)};
}

/// The ink as convex pieces and how wide it is; how deep, where pens from `marks` on are marks of loops.
void measure(Composed& composed, std::size_t marks, bool spindle) {
  layout::SymbolExtent& extent = composed.extent;
  const std::vector<Pen>& pens = composed.pens;
  extent.ink = ink_of(pens, 0, marks);
  if (spindle) merge(extent.ink);
  for (layout::Convex& piece : ink_of(pens, marks, pens.size())) {
    for (const Point& point : piece) extent.below = std::max(extent.below, 0.0 - point.y);
    extent.ink.push_back(std::move(piece));
  }
  double reach = 0;
  for (const layout::Convex& piece : extent.ink)
    for (const Point& point : piece) reach = std::max(reach, std::abs(point.x));
  extent.width = 2 * reach;
}

layout::Widths label_widths(bool bold, bool italic) {
  return {advance_widths(Typeface::sans, bold, italic), text_width(Typeface::sans, bold, italic, "0")};
}

} // namespace

std::vector<Pen> put(const Mark& mark, Point at, Point up, double scale) {
  const std::vector<Mark> marks{mark};
  Drawing drawing{marks, {}, {}};
  drawing.put(mark.name, upright(at, up, scale));
  for (Pen& pen : drawing.out.pens) {
    pen.stroke *= scale;
    pen.dash *= scale;
  }
  return drawing.out.pens;
}

std::vector<Pen> in_millimetres(std::vector<Pen> pens, double millimetres) {
  for (Pen& pen : pens) {
    pen.stroke *= millimetres;
    pen.dash *= millimetres;
    for (Point& p : pen.path.points) p = {p.x * millimetres, 0.0 - p.y * millimetres};
  }
  return pens;
}

Composed compose(const stitch::StitchKind& kind, const layout::SymbolKey& key, const std::vector<Mark>& marks,
                 const Style& style, double height) {
  const stitch::Shape shape = stitch::shape_of(kind);
  const int n = std::max<int>(1, key.in_one);
  Drawing drawing{marks, style, {}};
  layout::SymbolExtent& extent = drawing.out.extent;
  extent.height = drawn_height(shape, height);
  extent.slot = std::max({1, kind.makes, shape.feet_joined ? 1 : kind.takes});
  draw_stitch(drawing, shape, n, extent.height);
  if (shape.legs == 1) extent.slot = std::max(extent.slot, static_cast<double>(n * kind.makes));
  extent.floats = is_single(shape) && !shape.feet_joined;
  const std::size_t unmarked = drawing.out.pens.size();
  draw_loops(drawing, shape, key.loops, extent.floats && extent.feet.size() == 1);
  measure(drawing.out, unmarked, shape.feet_joined && n == 1);
  return std::move(drawing.out);
}

layout::Extents extents_of(const fabric::Fabric& fabric, const std::vector<Mark>& marks, const Style& style) {
  layout::Extents extents;
  for (const layout::SymbolKey& key : layout::symbols_of(fabric))
    extents.symbols.emplace_back(key, compose(fabric.kinds[key.kind], key, marks, style).extent);
  extents.regular = label_widths(false, false);
  extents.bold = label_widths(true, false);
  extents.italic = label_widths(false, true);
  return extents;
}

} // namespace whorl::drawing
