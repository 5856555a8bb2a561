#include "layout/bunch.hpp"

#include "layout/direction.hpp"

#include <algorithm>
#include <cmath>
#include <span>

namespace whorl::layout {
namespace {

constexpr double step_of_height = 20; ///< of a W, so that stems alike in height are one symbol

/// Chains on end between where they stand and their top, which rises.
void draw_apart(double rise, std::span<Item> chains) {
  const auto middle = [](const Item& chain) { return chain.foot + chain.height / 2 * chain.up; };
  const Point across = chains.front().up, half = column_pitch / 2 * Point{-across.y, across.x};
  const double side = dot(half, middle(chains.back()) - middle(chains.front())) < 0 ? -1 : 1;
  const Point from = middle(chains.front()) - side * half,
              to = middle(chains.back()) + side * half + Point{0, rise};
  const Point way = unit(to - from), up = -side * Point{-way.y, way.x};
  for (std::size_t i = 0; i < chains.size(); ++i) {
    const double share = (static_cast<double>(i) + 0.5) / static_cast<double>(chains.size());
    chains[i].up = up;
    chains[i].foot = from + share * (to - from) - chains[i].height / 2 * up;
  }
}

/// A stem from where it stands to its head, which rises.
void lengthen(double rise, Item& stem) {
  const Point head = stem.foot + stem.height * stem.up + Point{0, rise};
  stem.up = unit(head - stem.foot);
  stem.height = std::max(stem.height, std::floor(length(head - stem.foot) * step_of_height) / step_of_height);
  stem.foot = head - stem.height * stem.up;
}

} // namespace

std::vector<Item> raised(const Bunch& bunch, double rise) {
  std::vector<Item> items = bunch.standing;
  const auto on_end =
      static_cast<std::size_t>(std::count(bunch.rising.begin(), bunch.rising.end(), Rising::on_end));
  if (rise > 0 && on_end > 0) draw_apart(rise, {items.data(), on_end});
  for (std::size_t i = 0; i < items.size() && rise > 0; ++i) {
    if (bunch.rising[i] == Rising::stem) lengthen(rise, items[i]);
    if (bunch.rising[i] == Rising::whole) items[i].foot.y += rise;
  }
  return items;
}

} // namespace whorl::layout
