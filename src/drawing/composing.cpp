#include "drawing/composing.hpp"

#include <cmath>

namespace whorl::drawing {
namespace {

Point right_of(Point up) { return {up.y, 0.0 - up.x}; }

std::string_view origin_of(const Mark& mark) {
  for (const auto& [name, point] : mark.anchors)
    if (name == "foot" || name == "middle" || name == "tip") return name;
  return "foot";
}

} // namespace

Standing upright(Point at, Point up, double scale) { return {at, scale * right_of(up), scale * up}; }

void Composing::put(std::string_view name, const Standing& standing) {
  const Mark* mark = find_mark(marks, name);
  if (!mark) return;
  const Point origin = anchor(*mark, origin_of(*mark));
  for (Pen pen : mark->pens) {
    for (Point& p : pen.path.points)
      p = standing.at + (p.x - origin.x) * standing.across + (p.y - origin.y) * standing.along;
    out.pens.push_back(std::move(pen));
  }
}

void Composing::stretch(std::string_view name, Point foot, Point top, double across) {
  const Point way = top - foot;
  put(name, {foot, across * right_of(unit(way)), way});
}

std::vector<Point> in_line(int n, double pitch, double y) {
  std::vector<Point> points;
  for (int i = 0; i < n; ++i) points.push_back({(i - (n - 1) / 2.0) * pitch, y});
  return points;
}

} // namespace whorl::drawing
