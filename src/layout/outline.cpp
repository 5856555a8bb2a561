#include "layout/outline.hpp"

#include "layout/direction.hpp"
#include "layout/turn.hpp"

#include <algorithm>
#include <cmath>

namespace whorl::layout {
namespace {

std::size_t next(std::size_t i, std::size_t corners) { return i + 1 < corners ? i + 1 : 0; }

/// A side of the core, from one corner to the next, and the turn at its end.
struct Side {
  Point from, on, out;
  double length = 0, turn = 0;
};

std::vector<Side> sides_of(const std::vector<Point>& corners) {
  std::vector<Side> sides;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const Point d = corners[next(i, corners.size())] - corners[i];
    const double far = length(d);
    const Point on = (1 / far) * d;
    sides.push_back({corners[i], on, {on.y, -on.x}, far, 0});
  }
  for (std::size_t i = 0; i < sides.size(); ++i) {
    const Side& behind = sides[next(i, sides.size())];
    const double angle = arc_sine(cross(sides[i].on, behind.on));
    sides[i].turn = dot(sides[i].on, behind.on) < 0 ? pi - angle : angle;
  }
  return sides;
}

/// Points in order round them all, anticlockwise, none in line with its neighbours.
std::vector<Point> hull_of(std::vector<Point> points) {
  constexpr double straight = 1e-9;
  std::sort(points.begin(), points.end(),
            [](Point a, Point b) { return a.x != b.x ? a.x < b.x : a.y < b.y; });
  std::vector<Point> hull;
  for (int half = 0; half < 2; ++half) {
    const std::size_t begin = hull.size();
    for (const Point p : points) {
      while (hull.size() >= begin + 2 &&
             cross(hull.back() - hull[hull.size() - 2], p - hull.back()) <= straight)
        hull.pop_back();
      hull.push_back(p);
    }
    hull.pop_back();
    std::reverse(points.begin(), points.end());
  }
  return hull;
}

/// How far the lines of the neighbours of side `i` meet beyond it, and where; negative: they do not.
double beyond_side(const std::vector<Point>& corners, std::size_t i, Point& meet) {
  const std::size_t many = corners.size();
  const Point a = corners[(i + many - 1) % many], b = corners[i], c = corners[next(i, many)],
              d = corners[next(next(i, many), many)];
  const double across = cross(b - a, d - c);
  if (across <= 1e-9) return -1;
  meet = b + (cross(c - b, d - c) / across) * (b - a);
  return cross(meet - b, c - b) / length(c - b);
}

/// Leaves out the side that costs least, as long as one may be left out.
void simplify(std::vector<Point>& corners, double loose) {
  while (corners.size() > 3) {
    std::size_t found = corners.size();
    double least = loose;
    Point at;
    for (std::size_t i = 0; i < corners.size(); ++i) {
      Point meet;
      const double far = beyond_side(corners, i, meet);
      if (far >= 0 && far < least) least = far, found = i, at = meet;
    }
    if (found == corners.size()) return;
    corners[found] = at;
    corners.erase(corners.begin() + static_cast<std::ptrdiff_t>(next(found, corners.size())));
  }
}

/// Counted anticlockwise.
double turned_over(const Surround& outline, double r, double at) {
  if (outline.way == Way::anticlockwise) return at;
  return length_of(outline, r) - at;
}

double brought_in(double at, double whole) {
  while (at < 0) at += whole;
  while (at >= whole) at -= whole;
  return at;
}

Point turned(Point p, double angle) {
  const SineCosine by = sine_cosine(angle);
  return {p.x * by.cosine - p.y * by.sine, p.x * by.sine + p.y * by.cosine};
}

/// How many whole contours a place lies behind the start.
double rounds_of(double at, double whole) { return std::floor(at / whole); }

} // namespace

Surround outline_round(const std::vector<Point>& points, double loose) {
  Surround outline;
  if (points.size() < 3) return outline;
  outline.corners = hull_of(points);
  if (outline.corners.size() < 3) outline.corners.clear();
  simplify(outline.corners, loose);
  return outline;
}

double length_of(const Surround& outline, double r) {
  double all = 2 * pi * r;
  for (const Side& side : sides_of(outline.corners)) all += side.length;
  return all;
}

OnSurround on_outline(const Surround& outline, double r, double place) {
  const bool over = outline.way == Way::clockwise;
  double at = brought_in(turned_over(outline, r, place), length_of(outline, r));
  const std::vector<Side> sides = sides_of(outline.corners);
  OnSurround found;
  for (std::size_t i = 0; i < sides.size(); ++i) {
    const Side& side = sides[i];
    if (at <= side.length) {
      found = {side.from + at * side.on + r * side.out, side.out, side.on};
      break;
    }
    at -= side.length;
    if (at <= r * side.turn || i + 1 == sides.size()) {
      const double angle = r > 0 ? std::min(at / r, side.turn) : 0;
      const Point out = turned(side.out, angle);
      found = {side.from + side.length * side.on + r * out, out, turned(side.on, angle)};
      break;
    }
    at -= r * side.turn;
  }
  if (over) found.on = {0 - found.on.x, 0 - found.on.y};
  return found;
}

double carried(const Surround& outline, double r, double place, double to) {
  const double whole = length_of(outline, r), there = length_of(outline, to);
  const double rounds = rounds_of(place, whole);
  double at = turned_over(outline, r, place - rounds * whole), moved = 0;
  for (const Side& side : sides_of(outline.corners)) {
    if (at <= side.length) {
      moved += at;
      at = 0;
      break;
    }
    at -= side.length, moved += side.length;
    const double arc = std::min(at, r * side.turn);
    moved += r > 0 ? arc / r * to : 0;
    at -= arc;
    if (at <= 0) break;
  }
  return rounds * there + turned_over(outline, to, moved);
}

NearSurround met_outline(const Surround& outline, double r, Point p, Point direction) {
  NearSurround near{0, 1e300};
  double before = 0;
  for (const Side& side : sides_of(outline.corners)) {
    const double across = cross(direction, side.on);
    if (across > 1e-9) { // it leads out over this side
      const double on = std::clamp(cross(direction, p - side.from) / across, 0.0, side.length);
      const double away = length(p - (side.from + on * side.on));
      if (away < near.away) near = {before + on, away};
    }
    before += side.length + r * side.turn;
  }
  near.at = turned_over(outline, r, near.at);
  return near;
}

double away_from(const Surround& outline, Point p) {
  double least = 1e300;
  bool inside = true;
  for (const Side& side : sides_of(outline.corners)) {
    inside = inside && dot(p - side.from, side.out) <= 0;
    const double on = std::clamp(dot(p - side.from, side.on), 0.0, side.length);
    least = std::min(least, length(p - (side.from + on * side.on)));
  }
  return inside ? 0 : least;
}

NearSurround near_corner(const Surround& outline, double r, Point p) {
  NearSurround near{0, 1e300};
  double before = 0;
  for (const Side& side : sides_of(outline.corners)) {
    before += side.length;
    const double away = length(p - (side.from + side.length * side.on));
    if (away < near.away) near = {before + r * side.turn / 2, away};
    before += r * side.turn;
  }
  near.at = turned_over(outline, r, near.at);
  return near;
}

std::vector<Point> along_outline(const Surround& outline, double r, double from, double to) {
  constexpr double step = 0.4;
  const int pieces = std::max(1, static_cast<int>((to - from) / step));
  std::vector<Point> points;
  for (int i = 0; i <= pieces; ++i)
    points.push_back(on_outline(outline, r, from + (to - from) * i / pieces).at);
  return points;
}

} // namespace whorl::layout
