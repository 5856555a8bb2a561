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
  const double share = 1.0 / static_cast<double>(outline.size());
  for (const Point& p : outline) circle.middle = circle.middle + share * p;
  double furthest = 0;
  for (const Point& p : outline) {
    const Point out = p - circle.middle;
    furthest = std::max(furthest, out.x * out.x + out.y * out.y);
  }
  circle.reach = std::sqrt(furthest);
  return circle;
}

std::vector<Circle> circles_of(const std::vector<Convex>& outlines) {
  std::vector<Circle> circles;
  circles.reserve(outlines.size());
  for (const Convex& outline : outlines) circles.push_back(circle_of(outline));
  return circles;
}

bool are_nearer(const Circle& one, const Circle& other, double air) {
  const Point apart = one.middle - other.middle;
  const double reach = one.reach + other.reach + air;
  return apart.x * apart.x + apart.y * apart.y < reach * reach;
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

bool Obstacles::may_be_near(Point middle, double reach) const {
  const double far = reach + widest_;
  auto at = std::lower_bound(sorted_.begin(), sorted_.end(), middle.x - far,
                             [](const Obstacle& one, double x) { return one.middle.x < x; });
  for (; at != sorted_.end() && at->middle.x <= middle.x + far; ++at) {
    const Point apart = at->middle - middle;
    const double near = at->reach + reach;
    if (apart.x * apart.x + apart.y * apart.y < near * near) return true;
  }
  return false;
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
  const std::vector<Circle> circles = circles_of(other);
  double air = most;
  for (const Convex& a : one) {
    const Circle own = circle_of(a);
    for (std::size_t i = 0; i < other.size(); ++i)
      if (are_nearer(own, circles[i], air)) air = std::min(air, distance(a, other[i]));
  }
  return air;
}

} // namespace whorl::layout
