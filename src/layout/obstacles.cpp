#include "layout/obstacles.hpp"

#include "layout/direction.hpp"
#include "layout/sign.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace whorl::layout {
namespace {

struct Circle {
  Point middle;
  double reach = 0;
};

Circle circle_of(const Convex& outline) {
  Circle circle;
  for (const Point& p : outline)
    circle.middle = circle.middle + (1.0 / static_cast<double>(outline.size())) * p;
  for (const Point& p : outline) circle.reach = std::max(circle.reach, length(p - circle.middle));
  return circle;
}

} // namespace

void Obstacles::add(std::vector<Convex> outlines) {
  for (Convex& outline : outlines) {
    const Circle circle = circle_of(outline);
    widest_ = std::max(widest_, circle.reach);
    sorted_.push_back({circle.middle, circle.reach, std::move(outline)});
  }
  std::stable_sort(sorted_.begin(), sorted_.end(),
                   [](const Obstacle& a, const Obstacle& b) { return a.middle.x < b.middle.x; });
}

double Obstacles::air_around(const std::vector<Convex>& ink, double most) const {
  double air = most;
  for (const Convex& own : ink) {
    const Circle circle = circle_of(own);
    const double far = circle.reach + widest_ + most;
    auto at = std::lower_bound(sorted_.begin(), sorted_.end(), circle.middle.x - far,
                               [](const Obstacle& one, double x) { return one.middle.x < x; });
    for (; at != sorted_.end() && at->middle.x <= circle.middle.x + far; ++at)
      if (length(at->middle - circle.middle) < at->reach + circle.reach + air)
        air = std::min(air, distance(own, at->outline));
  }
  return air;
}

double air_between(const std::vector<Convex>& one, const std::vector<Convex>& other, double most) {
  double air = most;
  for (const Convex& a : one) {
    const Circle own = circle_of(a);
    for (const Convex& b : other) {
      const Circle circle = circle_of(b);
      if (length(own.middle - circle.middle) < own.reach + circle.reach + air)
        air = std::min(air, distance(a, b));
    }
  }
  return air;
}

} // namespace whorl::layout
