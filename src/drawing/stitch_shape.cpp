#include "drawing/stitch_shape.hpp"

#include "drawing/spur_shape.hpp"

#include "layout/turn.hpp"

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
constexpr double more = 0.87;                           // three and more tall legs: their pitch, of a pair's
constexpr double widest_fan = 1.5;                      // sum of the sines between the legs of a fan
constexpr double stroke = 0.34, stroke_from_end = 0.20; // across a leg of a stroked V
constexpr double bar = 0.56, bar_of_pitch = 0.80, bellied_bar = 0.50;
constexpr double slash = 0.46, slash_in_group = 0.38, slash_pitch = 0.30, slash_under_head = 0.44;
constexpr double slash_in_fan = 0.62, slash_together = 0.36; // of the leg, from its foot
constexpr double cross_arm = 0.30, plus_arm = 0.34;          // from the middle, along x (and y)
constexpr double long_loop = 0.22, loop_over = 0.10;         // above the tips, above the head
constexpr double held_at = 0.38;   // of the legs of an invisible decrease, from the feet
constexpr double under_tie = 0.16; // where legs that are worked together meet
constexpr double picot_foot = 0.16, picot_dot = 0.115, picot_chain_half = 0.12, picot_chain_pitch = 0.50;
constexpr double tie = 0.22; // pitch of the ties of an extended stitch, under its head
constexpr double bobble = 1.80, puff = 1.60;
constexpr double bobble_pitch = 0.30, cluster_pitch = 0.40, puff_pitch = 0.41; // of legs at half height
constexpr double bobble_slash = 0.17, cluster_slash = 0.26;
constexpr double bobble_slot = 1.6, cluster_slot = 1.3, puff_slot = 1.2, chain_slot = 0.68;
constexpr double popcorn_oval = 0.30, popcorn_oval_height = 0.15; // half axes
} // namespace size
double tall_height(int chains) {
  if (chains <= 0) return size::slip;
  return chains == 1 ? size::single : size::half + size::step * (chains - 2);
}

double pair_width(int chains) {
  if (chains <= 3) return size::pair;
  return chains == 4 ? size::pair_treble : size::pair_double_treble;
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
void draw_leg(Composing& drawing, const Leg& leg) {
  drawing.stretch("stem", leg.foot, leg.top);
  const Point up = unit(leg.top - leg.foot);
  Standing frame = upright({}, up, leg.slash / size::slash);
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
void draw_head(Composing& drawing, const stitch::Shape& shape, Point top, Point up, double bar = size::bar) {
  if (!shape.bar) return drawing.put(single_mark(drawing.style), upright(top - size::single * up, up));
  drawing.put("bar", upright(top, up, bar / size::bar));
  for (int i = 1; i <= shape.stems; ++i) drawing.put("tie", upright(top - (i * size::tie) * up, up));
}

/// One leg ends at the bar or in the middle of the cross.
Point leg_end(const stitch::Shape& shape, Point top) {
  return shape.bar ? top : top - (size::single / 2) * unit(top);
}

void tall(Composing& drawing, const stitch::Shape& shape, double height) {
  const Point top{0, height};
  draw_leg(
      drawing,
      {{}, leg_end(shape, top), slashes_of(shape, 0), height * (1 - size::slash_under_head), size::slash});
  draw_head(drawing, shape, top, {0, 1});
  drawing.out.extent.feet = {{}};
  drawing.out.extent.tips = {top};
}

void tall_in_one(Composing& drawing, const stitch::Shape& shape, int n, double height) {
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

/// How far under their head legs meet: ties need a piece of stem of their own.
double under_head(const stitch::Shape& shape) {
  if (!shape.bar) return size::under_cross;
  return shape.stems == 0 ? 0 : size::tie * shape.stems + size::under_tie;
}

void tall_together(Composing& drawing, const stitch::Shape& shape, double height) {
  const double pair = pair_width(shape.height);
  const std::vector<Point> feet = in_line(shape.legs, shape.legs == 2 ? pair : size::more * pair, 0);
  const Point top{0, height}, joint{0, height - under_head(shape)};
  for (std::size_t i = 0; i < feet.size(); ++i)
    draw_leg(drawing, {feet[i], joint, slashes_of(shape, i), size::slash_together * length(joint - feet[i]),
                       size::slash_in_group});
  if (shape.bar && joint.y < top.y) drawing.stretch("stem", joint, top);
  draw_head(drawing, shape, top, {0, 1});
  drawing.out.extent.feet = feet;
  drawing.out.extent.tips = {top};
}

double vee_pitch(int n) { return n == 2 ? size::vee_pair : size::vee_more; }

/// Stands the V in the middle of the height of a single crochet.
constexpr double vee_air = (size::single - size::vee) / 2;

/// The long loop of a loop stitch goes from tip to tip, low enough for what stands on the head.
void draw_long_loop(Composing& drawing, Point left, Point right, double height) {
  const double half = (right.x - left.x) / 2;
  drawing.put("long-loop", {{(left.x + right.x) / 2, left.y}, {half, 0}, {0, height}});
}

void single(Composing& drawing, bool long_loop) {
  drawing.put(single_mark(drawing.style), {});
  const bool plus = drawing.style.single == Style::Single::plus;
  const double arm = plus ? size::plus_arm : size::cross_arm, rise = plus ? 0 : size::cross_arm;
  const double tip = size::single / 2 + rise;
  if (long_loop)
    draw_long_loop(drawing, {0.0 - arm, tip}, {arm, tip}, size::long_loop + (plus ? size::plus_arm : 0));
  drawing.out.extent.feet = {{}};
  drawing.out.extent.tips = {{0, size::single}};
}

/// A short stroke across a leg of a V, near its open end.
void stroke_leg(Composing& drawing, Point apex, Point end) {
  const Point way = unit(end - apex);
  drawing.put("bar", upright(end - size::stroke_from_end * way, way, size::stroke / size::bar));
}

void singles_in_one(Composing& drawing, int n, bool long_loop) {
  const double top = size::single - vee_air - (long_loop ? size::long_loop - size::loop_over : 0);
  const std::vector<Point> tips = in_line(n, vee_pitch(n), top);
  for (const Point& tip : tips) drawing.stretch("leg", {0, vee_air}, tip);
  for (const Point& tip : tips)
    if (drawing.style.stroked && !long_loop) stroke_leg(drawing, {0, vee_air}, tip);
  if (long_loop) draw_long_loop(drawing, tips.front(), tips.back(), size::long_loop);
  drawing.out.extent.feet.assign(tips.size(), {});
  drawing.out.extent.tips = tips;
}

/// Legs of an invisible decrease, which lies in front of what it takes together, are held by a line.
void singles_together(Composing& drawing, const stitch::Shape& shape) {
  const std::vector<Point> feet = in_line(shape.legs, vee_pitch(shape.legs), vee_air);
  const bool stroked = drawing.style.stroked && !shape.front_loops_only && !shape.long_loop;
  const Point apex{0, size::single - vee_air};
  for (const Point& foot : feet) drawing.stretch("leg", foot, apex);
  for (const Point& foot : feet)
    if (stroked) stroke_leg(drawing, apex, foot);
  if (shape.front_loops_only) {
    const double half = feet.back().x * (1 - size::held_at);
    drawing.put("hidden", {{0, vee_air + size::held_at * size::vee}, {half / 0.28, 0}});
  }
  if (shape.long_loop)
    draw_long_loop(drawing, {-0.30, size::single - vee_air - 0.30 * size::vee},
                   {0.30, size::single - vee_air - 0.30 * size::vee}, 0.36);
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

void bellied(Composing& drawing, const stitch::Shape& shape, double height) {
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

void chain(Composing& drawing) {
  drawing.put("oval", {{0, size::chain / 2}});
  drawing.out.extent.tips = {{0, size::chain}};
  drawing.out.extent.slot = size::chain_slot;
}

double picot_radius(int chains) {
  return size::picot_chain_pitch / 2 / layout::sine(layout::pi / (chains + 1));
}

double picot_height(int chains) {
  return size::picot_foot + size::picot_dot + 2 * picot_radius(chains) + size::picot_chain_half;
}

/// The dot that closes it, and its chains in a circle above that; all above a head.
void picot(Composing& drawing, int chains, double head = 0) {
  const double turn = layout::pi / (chains + 1), radius = picot_radius(chains);
  const Point middle{0, head + size::picot_foot + size::picot_dot + radius};
  drawing.put("dot", upright({0, head + size::picot_foot}, {0, 1}, size::picot_dot / 0.15));
  for (int i = 1; i <= chains; ++i) {
    const double angle = 2 * turn * i;
    const Point out{layout::sine(angle), 0.0 - layout::cosine(angle)};
    drawing.put("picot-chain", upright(middle + radius * out, out));
  }
  drawing.out.extent.height = head + picot_height(chains);
  drawing.out.extent.tips = {{0, drawing.out.extent.height}};
  drawing.out.extent.on_heads = head == 0;
  drawing.out.extent.slot = std::max(size::chain_slot, 2 * (radius + size::picot_chain_half));
}

void slip(Composing& drawing) {
  drawing.put("dot", {});
  drawing.out.extent.feet = {{}};
  drawing.out.extent.tips = {{0, size::slip}};
}

/// Several of what cannot be fanned out (two bobbles, two decreases in one place): side by side.
void side_by_side(Composing& drawing, int n) {
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

} // namespace

bool is_single(const stitch::Shape& shape) {
  return shape.cross && shape.stems == 0 && shape.height <= 1 && shape.picot == 0;
}

bool is_stretched(const stitch::Shape& shape) {
  if (shape.picot > 0) return false; // with its chains it has its size
  if (shape.legs == 0 || (is_single(shape) && !shape.feet_joined)) return false;
  return shape.height > 0 || shape.bar;
}

namespace {

/// The stitch that chains stand on.
stitch::Shape below_chains(stitch::Shape shape) {
  shape.picot = 0;
  return shape;
}

/// A stitch with chains that are closed back into it, or several side by side.
void stalk(Composing& drawing, const stitch::Shape& shape, int n) {
  const stitch::Shape below = below_chains(shape);
  const double head = own_height(below);
  draw_stitch(drawing, below, 1, head);
  const std::vector<Point> feet = drawing.out.extent.feet;
  picot(drawing, shape.picot, head);
  drawing.out.extent.feet = feet;
  if (n > 1) side_by_side(drawing, n);
}

} // namespace

double own_height(const stitch::Shape& shape) {
  if (shape.picot > 0 && shape.legs > 0) return own_height(below_chains(shape)) + picot_height(shape.picot);
  if (shape.legs == 0) return size::chain;
  if (is_single(shape) && !shape.feet_joined) return size::single;
  if (shape.height == 0 && !shape.bar) return size::slip;
  return shape.feet_joined ? bellied_height(shape) : tall_height(shape.height);
}

void draw_stitch(Composing& drawing, const stitch::Shape& shape, int n, double height) {
  const bool one_leg = shape.legs == 1;
  if (!shape.back.empty()) return draw_spur(drawing, shape);
  if (shape.picot > 0) return shape.legs == 0 ? picot(drawing, shape.picot) : stalk(drawing, shape, n);
  if (shape.legs == 0)
    chain(drawing);
  else if (shape.feet_joined)
    bellied(drawing, shape, height);
  else if (is_single(shape) && one_leg && n > 1)
    return singles_in_one(drawing, n, shape.long_loop);
  else if (is_single(shape) && one_leg)
    single(drawing, shape.long_loop);
  else if (is_single(shape))
    singles_together(drawing, shape);
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

} // namespace whorl::drawing
