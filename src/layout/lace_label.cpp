#include "layout/direction.hpp"
#include "layout/lace_ring.hpp"

#include <algorithm>

namespace whorl::layout {
namespace {

constexpr double furthest_aside = 4, step = 0.1, beside = 0.2;

using Inks = std::vector<std::vector<Convex>>;

bool is_free(const std::vector<Convex>& label, const Obstacles& inside, const Inks& ink) {
  if (inside.air_around(label, label_air) < label_air) return false;
  return std::all_of(ink.begin(), ink.end(), [&label](const std::vector<Convex>& one) {
    return air_between(label, one, label_air) >= label_air;
  });
}

} // namespace

Point label_start_at(const Lettering& label, Point middle) {
  return middle - Point{label.width / 2, letter_height * number_size / 2};
}

std::optional<Point> free_label_start(const Rounded& contour, const LaceRing& ring, const Obstacles& inside,
                                      const Inks& ink) {
  const double low = ring.stands.front(), high = low + std::max(0.8, ring.bunches.front().low_head);
  const double first = ring.at.front(), round = length_of(contour, ring.r);
  const auto on_ring = [&](double r, double aside) {
    return point_on(contour, r, carried(contour, ring.r, first + aside / round, r));
  };
  const Point from = on_ring((low + high) / 2, 0);
  double best = 1e9;
  std::optional<Point> found;
  for (double aside = -furthest_aside; aside <= furthest_aside; aside += step)
    for (double r = low - beside; r <= high - beside; r += step) {
      const Point middle = on_ring(r, aside), start = label_start_at(ring.label, middle);
      const double far = dot(middle - from, middle - from);
      if (far >= best || !is_free(ink_of_label(ring.label, start), inside, ink)) continue;
      best = far;
      found = start;
    }
  return found;
}

} // namespace whorl::layout
