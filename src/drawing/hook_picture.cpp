#include "drawing/hook_picture.hpp"

#include "drawing/lines.hpp"

#include <algorithm>

namespace whorl::drawing {
namespace {

// All in mm from the tip of the hook, y downward.
constexpr double yarn = 0.9, hollow = 0.46, outline = 0.3;
constexpr double shaft_end = 32.5, thick = 1.25;
constexpr double first_slot = 9.4, last_slot = 30.9, slot_pitch = 3.4, least_pitch = 2.95;
constexpr double half = 0.95, loop_top = -3.2, loop_bottom = 4.4, drawn_bottom = 5.8, wrap_bottom = 3.7;
constexpr double stitch_half = 1.6, beside_stitch = 0.8, stitch_top = -3.3, stitch_bottom = 3.4,
                 stem_bottom = 6.4, tail_level = 8.7;
constexpr Point axis{0.3, 4.4}; ///< of the tip, from the picture's corner

Path moved(Path path, Point by) {
  for (Point& point : path.points) point = point + by;
  return path;
}

/// The picture while it is drawn; what lies behind the hook comes first.
struct Picture {
  Group group{"", "hook", "", {}};
  Point tip;

  void stroke(const Path& path, double width, Color color) {
    group.items.push_back(Stroke{moved(path, tip), width, color, 0, {}});
  }
};

Color color_of(const OnHook& on) { return on.fresh ? ink::second : ink::black; }

/// A piece of yarn: solid where it is new, else hollow; `core` is what is left white.
void lay_yarn(Picture& picture, const Path& path, const Path& core, const OnHook& on) {
  picture.stroke(path, yarn, color_of(on));
  if (!on.fresh) picture.stroke(core, hollow, ink::paper);
}

/// The same path from its end; for paths of curves only.
Path reversed(Path path) {
  std::reverse(path.points.begin(), path.points.end());
  return path;
}

// The hook itself: a rod with a rounded head, its throat cut from below.

constexpr Point throat_lip{3.9, 0.98};

Path head_and_shaft() {
  Path path = line_through({{shaft_end, -thick}, {3.4, -thick}});
  const std::vector<Point> bends{{1.6, -thick}, {0, -0.95},   {0, 0.15},   {0, 1},       {0.8, 1.4},
                                 {1.9, 1.4},    {2.8, 1.4},   {3.5, 1.25}, throat_lip,   {3.2, 0.85},
                                 {2.7, 0.6},    {2.75, 0.15}, {2.8, -0.3}, {4.4, -0.05}, {5.6, 0.7},
                                 {6.3, 1.1},    {6.9, thick}, {7.7, thick}};
  for (std::size_t i = 0; i < bends.size(); i += 3) path.verbs.push_back(Verb::curve);
  path.points.insert(path.points.end(), bends.begin(), bends.end());
  path.verbs.push_back(Verb::line);
  path.points.push_back({shaft_end, thick});
  return path;
}

void draw_rod(Picture& picture) {
  Path body = head_and_shaft();
  picture.stroke(body, outline, ink::black);
  body.verbs.push_back(Verb::close);
  picture.group.items.push_back(Fill{moved(body, picture.tip), ink::paper, {}});
  picture.stroke(head_and_shaft(), outline, ink::black);
}

// Strands. Each passes behind the hook on its left and before it on its right.

/// From the top of a strand to its foot, on one side: -1 left, 1 right. Two curves.
Path side_of(Strand strand, double x, double side) {
  const double out = x + side * half, bend = x + side * 0.62;
  switch (strand) {
  case Strand::loop:
    return curve_through({{x, loop_top},
                          {bend, loop_top},
                          {out, -1.5},
                          {out, 0.6},
                          {out, 2.7},
                          {bend, loop_bottom},
                          {x, loop_bottom}});
  case Strand::drawn:
    return curve_through({{x, loop_top},
                          {bend, loop_top},
                          {out, -1.7},
                          {out, 0.2},
                          {out, 2.4},
                          {x + side * 0.3, 3.6},
                          {x + side * 0.26, drawn_bottom}});
  case Strand::wrap:
    return curve_through({{x, loop_top},
                          {bend, loop_top},
                          {out, -1.8},
                          {out, -0.2},
                          {out, 1.2},
                          {out, 2.4},
                          {out, wrap_bottom}});
  case Strand::taken:
    return curve_through({{x, loop_top},
                          {bend, loop_top},
                          {x + side * 0.8, -1.6},
                          {x + side * 0.8, 0.2},
                          {x + side * 0.8, 2.2},
                          {x + side * 0.9, 3.3},
                          {x + side * 1.1, 4.3}});
  }
  return {};
}

Point between(Point a, Point b, double part) { return a + part * (b - a); }

/// The first part of a curve, back to its beginning, put before a path that begins there.
void put_before(Path& path, const Point* curve, double part) {
  const Point a = between(curve[0], curve[1], part), b = between(curve[1], curve[2], part),
              c = between(curve[2], curve[3], part);
  const Point ab = between(a, b, part), bc = between(b, c, part);
  path.verbs.insert(path.verbs.begin() + 1, Verb::curve);
  path.points.insert(path.points.begin(), {between(ab, bc, part), ab, a});
}

/// The front of a hollow yarn goes a little round into the back, so that there is no seam where they meet.
Path front_core(Strand strand, double x) {
  constexpr double seam = 0.3;
  const Path back = side_of(strand, x, -1);
  Path core = side_of(strand, x, 1);
  put_before(core, back.points.data(), seam);
  if (strand != Strand::loop) return core;
  const Path foot = reversed(back);
  core = reversed(core);
  put_before(core, foot.points.data(), seam);
  return core;
}

void draw_back(Picture& picture, const OnHook& on, double x) {
  const Path back = side_of(on.strand, x, -1);
  lay_yarn(picture, back, back, on);
}

void draw_front(Picture& picture, const OnHook& on, double x) {
  lay_yarn(picture, side_of(on.strand, x, 1), front_core(on.strand, x), on);
}

// The stitch that the hook stands in: its head, through which the hook goes, on its post.

Path stitch_side(double x, double side) {
  const double out = x + side * stitch_half;
  return curve_through({{x, stitch_top},
                        {x + side * 1.2, stitch_top},
                        {out, -1.6},
                        {out, 0.1},
                        {out, 1.8},
                        {x + side * 1.1, stitch_bottom},
                        {x, stitch_bottom}});
}

void draw_stitch_side(Picture& picture, double x, double side) {
  picture.stroke(stitch_side(x, side), yarn, ink::hairline);
}

void draw_post(Picture& picture, double x) {
  picture.stroke(line_through({{x, stitch_bottom}, {x, stem_bottom}}), yarn, ink::hairline);
}

// The yarn that comes from the ball, at the newest strand's foot.

Point foot_of(const OnHook& on, double x) {
  switch (on.strand) {
  case Strand::loop:
    return {x, loop_bottom};
  case Strand::wrap:
    return {x - half, wrap_bottom};
  case Strand::drawn:
    return {x - 0.3, drawn_bottom};
  case Strand::taken:
    break;
  }
  return {x, loop_bottom};
}

Path tail_from(Point foot) {
  return curve_through({foot,
                        {foot.x - 0.1, foot.y + 2.6},
                        {foot.x - 1.6, tail_level},
                        {foot.x - 4.4, tail_level},
                        {foot.x - 6, tail_level},
                        {2.4, tail_level - 0.5},
                        {0.6, tail_level + 0.6}});
}

/// Which strands are drawn where; of very many only the oldest and the newest are.
struct Slot {
  OnHook on;
  double x = 0;
};

double pitch_of(double first, std::size_t slots) {
  if (slots < 2) return slot_pitch;
  return std::min(slot_pitch, (last_slot - first) / static_cast<double>(slots - 1));
}

struct Slots {
  std::vector<Slot> strands; ///< from the handle to the head
  double gap = 0;            ///< where dots stand for strands that are not drawn; 0: nowhere
};

/// How many strands have room side by side from `first` on.
std::size_t room_from(double first) {
  return 1 + static_cast<std::size_t>((last_slot - first) / least_pitch);
}

Slots slots_of(const HookState& hook) {
  const std::size_t number = hook.strands.size();
  // The stitch stands next to the head.
  const double first = first_slot + (hook.inserted ? slot_pitch + beside_stitch : 0);
  const std::size_t room = room_from(first);
  const bool many = number > room;
  const std::size_t shown = many ? room - 2 : number; // the oldest, and dots before it
  const double pitch = pitch_of(first, many ? room : number);
  const auto at = [&](std::size_t place) { return first + pitch * static_cast<double>(place); };
  Slots slots;
  if (many) slots.strands.push_back({hook.strands.front(), at(shown + 1)});
  if (many) slots.gap = at(shown);
  for (std::size_t i = shown; i > 0; --i) slots.strands.push_back({hook.strands[number - i], at(i - 1)});
  return slots;
}

void draw_dots(Picture& picture, double x) {
  for (const double by : {-0.9, 0.0, 0.9})
    picture.group.items.push_back(Fill{circle(picture.tip + Point{x + by, 3.2}, 0.25), ink::black, {}});
}

/// A loop that was let go waits below the hook, the yarn coming out of it.
void draw_waiting(Picture& picture) {
  constexpr double x = 19, down = 5.7;
  const OnHook loop;
  Picture below{{"", "waiting", "", {}}, picture.tip + Point{0, down}};
  const Path yarn_end = curve_through(
      {{x, loop_bottom}, {x + 2, loop_bottom + 0.9}, {x + 5, loop_bottom - 0.7}, {x + 8, loop_bottom + 0.2}});
  lay_yarn(below, yarn_end, yarn_end, loop);
  draw_back(below, loop, x);
  draw_front(below, loop, x);
  picture.group.items.push_back(std::move(below.group));
}

/// The yarn to the ball, and the back of the strand that it comes from.
void draw_spun_back(Picture& picture, const Slot& slot) {
  const Path tail = tail_from(foot_of(slot.on, slot.x)), back = side_of(slot.on.strand, slot.x, -1);
  for (const Path* path : {&tail, &back}) picture.stroke(*path, yarn, color_of(slot.on));
  if (slot.on.fresh) return;
  for (const Path* path : {&tail, &back}) picture.stroke(*path, hollow, ink::paper);
}

/// The newest strand that is the yarn's own; a stitch's loop on the hook is none. Number of strands: none is.
std::size_t newest_spun(const std::vector<Slot>& strands) {
  for (std::size_t i = strands.size(); i > 0; --i)
    if (strands[i - 1].on.strand != Strand::taken) return i - 1;
  return strands.size();
}

void draw_backs(Picture& picture, const std::vector<Slot>& strands) {
  const std::size_t spun = newest_spun(strands);
  if (spun < strands.size()) draw_spun_back(picture, strands[spun]);
  for (std::size_t i = 0; i < strands.size(); ++i)
    if (i != spun) draw_back(picture, strands[i].on, strands[i].x);
}

} // namespace

Group draw_hook(const HookState& hook, Point at) {
  Picture picture;
  picture.tip = at + axis;
  const Slots slots = slots_of(hook);
  if (hook.waiting > 0) draw_waiting(picture);
  draw_backs(picture, slots.strands);
  if (hook.inserted) draw_post(picture, first_slot);
  if (hook.inserted) draw_stitch_side(picture, first_slot, -1);
  draw_rod(picture);
  if (hook.inserted) draw_stitch_side(picture, first_slot, 1);
  for (const Slot& slot : slots.strands) draw_front(picture, slot.on, slot.x);
  if (slots.gap > 0) draw_dots(picture, slots.gap);
  return std::move(picture.group);
}

} // namespace whorl::drawing
