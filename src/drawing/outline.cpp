#include "drawing/outline.hpp"

#include <algorithm>

namespace whorl::drawing {
namespace {

constexpr int cuts = 8;

Point on_curve(Point p, Point a, Point b, Point q, double t) {
  const double u = 1 - t;
  return (u * u * u) * p + (3 * u * u * t) * a + (3 * u * t * t) * b + (t * t * t) * q;
}

double turn(Point a, Point b, Point c) { return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x); }

/// Corners of the octagon about a disc.
void append_octagon(std::vector<Point>& out, Point at, double radius) {
  const double near = radius * 0.41421356237309503; // tangent of a sixteenth of a turn
  for (const double x : {-1.0, 1.0})
    for (const double y : {-1.0, 1.0}) {
      out.push_back(at + Point{x * radius, y * near});
      out.push_back(at + Point{x * near, y * radius});
    }
}

void append_half_hull(layout::Convex& hull, const std::vector<Point>& sorted) {
  const std::size_t base = hull.size();
  for (const Point& point : sorted) {
    while (hull.size() >= base + 2 && turn(hull[hull.size() - 2], hull.back(), point) <= 0) hull.pop_back();
    hull.push_back(point);
  }
  hull.pop_back();
}

bool is_closed(const Path& path) {
  return std::find(path.verbs.begin(), path.verbs.end(), Verb::close) != path.verbs.end();
}

} // namespace

std::vector<std::vector<Point>> flatten(const Path& path) {
  std::vector<std::vector<Point>> runs;
  const Point* next = path.points.data();
  for (const Verb verb : path.verbs) {
    if (verb == Verb::move) runs.emplace_back();
    if (runs.empty()) return runs;
    std::vector<Point>& run = runs.back();
    if (verb == Verb::move || verb == Verb::line) run.push_back(*next++);
    if (verb == Verb::close && !run.empty()) run.push_back(run.front());
    if (verb != Verb::curve) continue;
    const Point from = run.back();
    for (int i = 1; i <= cuts; ++i)
      run.push_back(on_curve(from, next[0], next[1], next[2], static_cast<double>(i) / cuts));
    next += 3;
  }
  return runs;
}

layout::Convex convex_around(const std::vector<Point>& points, double radius) {
  std::vector<Point> corners;
  for (const Point& point : points) append_octagon(corners, point, radius);
  std::sort(corners.begin(), corners.end(),
            [](Point a, Point b) { return a.x != b.x ? a.x < b.x : a.y < b.y; });
  corners.erase(std::unique(corners.begin(), corners.end()), corners.end());
  if (corners.size() < 3) return corners;
  layout::Convex hull;
  append_half_hull(hull, corners);
  std::reverse(corners.begin(), corners.end());
  append_half_hull(hull, corners);
  return hull;
}

void append_ink(std::vector<layout::Convex>& ink, const Pen& pen) {
  const double radius = pen.stroke / 2;
  const bool one_piece = pen.stroke == 0 || is_closed(pen.path);
  for (const std::vector<Point>& run : flatten(pen.path)) {
    if (one_piece || run.size() < 2) {
      ink.push_back(convex_around(run, radius));
      continue;
    }
    for (std::size_t i = 1; i < run.size(); ++i) ink.push_back(convex_around({run[i - 1], run[i]}, radius));
  }
}

} // namespace whorl::drawing
