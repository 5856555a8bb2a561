#include "layout/direction.hpp"
#include "layout/lace_ring.hpp"

#include <algorithm>

namespace whorl::layout {
namespace {

constexpr double furthest_aside = 4, step = 0.1, beside = 0.2;

using Inks = std::vector<std::vector<Convex>>;

bool is_clear(const std::vector<Convex>& label, double air, const Obstacles& inside, const Inks& ink) {
  if (inside.air_around(label, air) < air) return false;
  return std::all_of(ink.begin(), ink.end(), [&label, air](const std::vector<Convex>& one) {
    return air_between(label, one, air) >= air;
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
      if (far >= best || !is_clear(ink_of_label(ring.label, start), label_air, inside, ink)) continue;
      best = far;
      found = start;
    }
  return found;
}

void label_row(const Rounded& contour, const Obstacles& inside, const Inks& ink, double r, LaceRing& ring) {
  constexpr double furthest = 12, pointer_air = 0.12, out_step = 0.05;
  const double edge = ring.at.front() - ring.bunches.front().before / length_of(contour, ring.r);
  const Point from = point_on(contour, r, edge), out = outward(contour, edge);
  const Point on = contour.way == Way::anticlockwise ? Point{0 - out.y, out.x} : Point{out.y, 0 - out.x};
  const auto clear = [&](const Convex& piece, double air) { return is_clear({piece}, air, inside, ink); };
  double far = 0;
  ring.pointer_direction = on;
  for (; far < furthest; far += out_step) {
    ring.pointer_tip = from - (far - pointer_length / 2) * on;
    if (clear(ink_of_pointer(ring.pointer_tip, on), pointer_air)) break;
  }
  const Convex pointer = ink_of_pointer(ring.pointer_tip, on);
  for (; far < furthest; far += out_step) {
    ring.label_start = label_start_at(ring.label, from - far * on);
    const std::vector<Convex> label = ink_of_label(ring.label, ring.label_start);
    if (air_between(label, {pointer}, pointer_air) >= pointer_air && is_clear(label, label_air, inside, ink))
      return;
  }
}

} // namespace whorl::layout
