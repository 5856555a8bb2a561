#include "layout/contour.hpp"

#include "layout/turn.hpp"

#include <algorithm>

namespace whorl::layout {

Point outward(double angle, Way way) {
  const SineCosine at = sine_cosine(angle);
  return {way == Way::clockwise ? at.sine : -at.sine, at.cosine};
}

Point along(double angle, Way way) {
  const SineCosine at = sine_cosine(angle);
  return {way == Way::clockwise ? at.cosine : -at.cosine, -at.sine};
}

Point on_circle(double radius, double angle, Way way) { return radius * outward(angle, way); }

std::vector<Point> circle_curve(double radius, double from, double to, Way way) {
  const int pieces = std::max(1, static_cast<int>((to - from) / (pi / 4) + 0.999));
  const double step = (to - from) / pieces;
  // the handle of a circular arc: 4/3 tan(step / 4)
  const double handle = radius * 4.0 / 3.0 * sine(step / 4) / cosine(step / 4);
  std::vector<Point> points{on_circle(radius, from, way)};
  for (int i = 0; i < pieces; ++i) {
    const double a = from + i * step, b = from + (i + 1) * step;
    points.push_back(on_circle(radius, a, way) + handle * along(a, way));
    points.push_back(on_circle(radius, b, way) - handle * along(b, way));
    points.push_back(on_circle(radius, b, way));
  }
  return points;
}

void line_to(Point to, std::vector<Point>& points) {
  const Point from = points.back();
  points.push_back(from + (1.0 / 3) * (to - from));
  points.push_back(from + (2.0 / 3) * (to - from));
  points.push_back(to);
}

void curve_on(double radius, double from, double to, Way way, std::vector<Point>& points) {
  const std::vector<Point> curve = circle_curve(radius, from, to, way);
  points.insert(points.end(), curve.begin() + (points.empty() ? 0 : 1), curve.end());
}

} // namespace whorl::layout
