#include "layout/sign.hpp"

#include "layout/direction.hpp"
#include "layout/label.hpp"

#include <algorithm>
#include <cmath>

namespace whorl::layout {
namespace {

constexpr double eye_reach = 0.38, marker_reach = 0.345, bead_reach = 0.24, loop_reach = 0.3075,
                 joined_reach = 0.30, ringed_reach = 0.34, thread_reach = 0.2;
constexpr double thin = 0.035; ///< half the width of a tick
constexpr double attach_high = 0.46, attach_half = 0.26, attach_pen = 0.08;
constexpr double flag_wide = 0.62, flag_high = 0.92, flag_pen = 0.07;

Convex octagon(Point middle, double radius) {
  const double near = radius * 0.41421356237309503; // tangent of a sixteenth of a turn
  return {middle + Point{radius, -near},  middle + Point{radius, near},  middle + Point{near, radius},
          middle + Point{-near, radius},  middle + Point{-radius, near}, middle + Point{-radius, -near},
          middle + Point{-near, -radius}, middle + Point{near, -radius}};
}

/// A box of the sign's own left, right, low and high, turned with it.
Convex turned_box(Point at, Point up, Point low, Point high) {
  const Point right{up.y, -up.x};
  const auto corner = [&](double x, double y) { return at + x * right + y * up; };
  return {corner(low.x, low.y), corner(high.x, low.y), corner(high.x, high.y), corner(low.x, high.y)};
}

Convex attach_outline(Point at, Point up) {
  const Point right{up.y, -up.x};
  const double side = attach_half + attach_pen, top = attach_high + attach_pen / 2;
  return {at - attach_pen * up, at + side * right + top * up, at - side * right + top * up};
}

Convex text_box(const Run& text, Point middle) {
  const double wide = text.width / 2, high = letter_height * text.size / 2;
  return {middle + Point{-wide, -high}, middle + Point{wide, -high}, middle + Point{wide, high},
          middle + Point{-wide, high}};
}

void add_mark(const Placed& placed, std::vector<Convex>& ink) {
  switch (placed.sign) {
  case Sign::eye:
    return ink.push_back(octagon(placed.at, eye_reach));
  case Sign::marker:
    return ink.push_back(octagon(placed.at, marker_reach));
  case Sign::bead:
    return ink.push_back(octagon(placed.at, bead_reach));
  case Sign::free_loop:
    return ink.push_back(octagon(placed.at, loop_reach));
  case Sign::joined:
    return ink.push_back(octagon(placed.at, joined_reach));
  case Sign::joined_first:
    return ink.push_back(octagon(placed.at, ringed_reach));
  case Sign::thread:
    return ink.push_back(octagon(placed.at, thread_reach));
  case Sign::attach:
    return ink.push_back(attach_outline(placed.at, placed.up));
  case Sign::flag:
    return ink.push_back(turned_box(placed.at, placed.up, {-flag_pen / 2, -flag_pen / 2},
                                    {flag_wide + flag_pen / 2, flag_high + flag_pen / 2}));
  case Sign::tick:
  case Sign::front:
  case Sign::sewn:
    if (dot(placed.up, placed.up) > 0.5)
      ink.push_back(turned_box(placed.at, placed.up, {-thin, -thin}, {thin, tick_length + thin}));
  }
}

double to_segment(Point p, Point a, Point b) {
  const Point d = b - a, e = p - a;
  const double along = dot(d, d) > 0 ? std::clamp(dot(d, e) / dot(d, d), 0.0, 1.0) : 0;
  const Point away = e - along * d;
  return length(away);
}

/// Twice the area; negative where the outline runs clockwise.
double area(const Convex& outline) {
  double sum = 0;
  for (std::size_t i = 0; i < outline.size(); ++i)
    sum += cross(outline[i], outline[(i + 1) % outline.size()]);
  return sum;
}

bool parted_by_edge_of(const Convex& one, const Convex& other) {
  const double side = area(one) < 0 ? -1 : 1;
  for (std::size_t i = 0; i < one.size(); ++i) {
    const Point a = one[i], d = one[(i + 1) % one.size()] - a;
    if (dot(d, d) < 1e-20) continue;
    const bool outside =
        std::all_of(other.begin(), other.end(), [&](Point p) { return side * cross(d, p - a) < 0; });
    if (outside) return true;
  }
  return false;
}

double from_corners(const Convex& one, const Convex& other) {
  double least = 1e18;
  for (const Point p : one)
    for (std::size_t i = 0; i < other.size(); ++i)
      least = std::min(least, to_segment(p, other[i], other[(i + 1) % other.size()]));
  return least;
}

} // namespace

std::vector<Convex> outlines_of(const Placed& placed) {
  std::vector<Convex> ink;
  add_mark(placed, ink);
  const bool inside = placed.sign == Sign::free_loop || is_joined(placed.sign) || placed.sign == Sign::flag;
  if (!placed.text.text.empty() && !inside) ink.push_back(text_box(placed.text, placed.text_at));
  return ink;
}

Convex outline_of(const Pointer& pointer) {
  const Point aside{-pointer.direction.y, pointer.direction.x};
  const Point back = pointer.tip - pointer.length * pointer.direction;
  return {pointer.tip, back + pointer.length / 2 * aside, back - pointer.length / 2 * aside};
}

Placed moved(Placed placed, Point by) {
  placed.at = placed.at + by;
  placed.text_at = placed.text_at + by;
  return placed;
}

double half_room(const Run& text, Point direction) {
  const double x = direction.x < 0 ? -direction.x : direction.x;
  const double y = direction.y < 0 ? -direction.y : direction.y;
  return x * text.width / 2 + y * letter_height * text.size / 2;
}

double distance(const Convex& one, const Convex& other) {
  if (!parted_by_edge_of(one, other) && !parted_by_edge_of(other, one)) return 0;
  return std::min(from_corners(one, other), from_corners(other, one));
}

} // namespace whorl::layout
