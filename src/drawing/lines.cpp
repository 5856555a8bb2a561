#include "drawing/lines.hpp"

namespace whorl::drawing {
namespace {

/// Distance of the control points of a quarter circle of radius 1.
constexpr double quarter = 0.5522847498;

} // namespace

Path line_through(const std::vector<Point>& points) {
  Path path;
  for (const Point point : points) {
    path.verbs.push_back(path.verbs.empty() ? Verb::move : Verb::line);
    path.points.push_back(point);
  }
  return path;
}

Path closed_through(const std::vector<Point>& points) {
  Path path = line_through(points);
  if (!points.empty()) path.verbs.push_back(Verb::close);
  return path;
}

Path curve_through(const std::vector<Point>& points) {
  Path path;
  if (points.empty()) return path;
  path.verbs.push_back(Verb::move);
  path.points.push_back(points.front());
  for (std::size_t i = 1; i + 2 < points.size(); i += 3) {
    path.verbs.push_back(Verb::curve);
    path.points.insert(path.points.end(), {points[i], points[i + 1], points[i + 2]});
  }
  return path;
}

Path circle(Point c, double r) {
  const double k = quarter * r;
  Path path = curve_through({{c.x, c.y - r},
                             {c.x + k, c.y - r},
                             {c.x + r, c.y - k},
                             {c.x + r, c.y},
                             {c.x + r, c.y + k},
                             {c.x + k, c.y + r},
                             {c.x, c.y + r},
                             {c.x - k, c.y + r},
                             {c.x - r, c.y + k},
                             {c.x - r, c.y},
                             {c.x - r, c.y - k},
                             {c.x - k, c.y - r},
                             {c.x, c.y - r}});
  path.verbs.push_back(Verb::close);
  return path;
}

Path triangle(Point tip, Point direction, double length, double base) {
  const Point back = tip - length * direction, side{-direction.y, direction.x};
  return closed_through({tip, back + base / 2 * side, back - base / 2 * side});
}

Path break_line(Point middle, double width, double zigzag) {
  const double half = width / 2, z = zigzag;
  std::vector<Point> points;
  for (const Point p : {Point{-half, 0}, {-z, 0}, {-z / 2, -z}, {z / 2, z}, {z, 0}, {half, 0}})
    points.push_back(middle + p);
  return line_through(points);
}

std::vector<Path> bent_arrow(Point middle, double width, double way) {
  const double half = width / 2, sag = width * 0.13;
  const auto at = [middle, way](double ahead, double down) { return middle + Point{way * ahead, down}; };
  const Path shaft =
      curve_through({at(-half, -sag), at(-half * 0.3, -sag * 0.8), at(half * 0.4, 0), at(half, sag)});
  const Path head =
      line_through({at(half - width * 0.2, sag - width * 0.23), at(half, sag), at(half - width * 0.28, sag)});
  return {shaft, head};
}

} // namespace whorl::drawing
