#include "layout/lace_ring.hpp"

#include "layout/direction.hpp"
#include "layout/sign.hpp"
#include "layout/stand.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace whorl::layout {

std::vector<Convex> ink_of_label(const Lettering& label, Point start) {
  std::vector<Convex> ink{line_box(start, line_width(label.first), number_size)};
  const Point middle = start + Point{0, letter_height * number_size / 2};
  if (!label.below.empty())
    ink.push_back(line_box(middle + Point{0, label.second - letter_height * second_size / 2},
                           line_width(label.below), second_size));
  for (const Placed& sign : yarn_signs(label, middle, false, 0))
    for (Convex& piece : outlines_of(sign)) ink.push_back(std::move(piece));
  return ink;
}

Convex ink_of_pointer(Point tip, Point direction) {
  const Point on = pointer_length * direction, aside{-on.y / 2, on.x / 2};
  return {tip, tip - on + aside, tip - on - aside};
}

namespace {

constexpr double least_leaning = 1.2, steepest = 0.7, steepest_group = 0.4; ///< heights; of a height
constexpr double upright = 0.15; ///< as far aside of its place a stitch does not lean

/// What stands at its foot, turned to its head.
Item leaning(const Rounded& contour, const LaceRing& ring, std::size_t bunch) {
  const double foot = ring.stands[bunch] - ring.longer[bunch],
               head = ring.stands[bunch] + ring.bunches[bunch].low_head;
  const double at = carried(contour, ring.r, ring.at[bunch] + ring.leans[bunch], foot);
  Item frame;
  frame.foot = point_on(contour, foot, at);
  frame.up = outward(contour, at);
  if (ring.leans[bunch] == 0) return frame;
  frame.up = unit(point_on(contour, head, carried(contour, ring.r, ring.at[bunch], head)) - frame.foot);
  return frame;
}

} // namespace

void lean_to_places(const Rounded& contour, const std::vector<std::optional<double>>& wanted, double pushed,
                    LaceRing& ring) {
  ring.leans.assign(ring.bunches.size(), 0);
  ring.longer.assign(ring.bunches.size(), 0);
  for (std::size_t i = 0; i < ring.bunches.size(); ++i) {
    const Bunch& bunch = ring.bunches[i];
    if (!ring.whole || !bunch.group) ring.longer[i] = std::min(pushed, bunch.most_rise);
    const bool in_corner = bunch.corner && contour.corners > 0;
    if (bunch.sort != Bunch::Sort::stitch || !wanted[i] || in_corner || bunch.low_head < least_leaning)
      continue;
    const double high = bunch.low_head + ring.longer[i];
    const double aside = *wanted[i] / length_of(contour, ring.r) - ring.at[i],
                 on_ring = length_of(contour, ring.stands[i]);
    const double most = (bunch.group ? steepest_group : steepest) * high / on_ring;
    const double over = std::max(0.0, std::abs(aside) - upright / on_ring);
    ring.leans[i] = std::min(over, most) * (aside < 0 ? -1 : 1);
  }
}

namespace {

/// Moves the foot of a frame until its head is at its place; how far heads rise from where they are when all
/// stand at their foot.
double rise(const Rounded& contour, const LaceRing& ring, std::size_t number, Item& frame) {
  const Bunch& bunch = ring.bunches[number];
  if (bunch.most_rise <= 0 || (ring.longer[number] <= 0 && ring.leans[number] == 0)) return 0;
  const double head = ring.stands[number] + bunch.low_head;
  const Point top = point_on(contour, head, carried(contour, ring.r, ring.at[number], head));
  double high = std::max(0.0, length(top - frame.foot) - bunch.low_head);
  if (bunch.group) high = std::min(high, bunch.most_rise);
  frame.foot = top - (bunch.low_head + high) * frame.up;
  return high;
}

} // namespace

std::vector<Item> standing_items(const Rounded& contour, const LaceRing& ring, std::size_t bunch) {
  Item frame = leaning(contour, ring, bunch);
  const double high = rise(contour, ring, bunch, frame);
  std::vector<Item> items = raised(ring.bunches[bunch], high);
  for (Item& item : items) {
    item.up = stood(frame, item.foot + item.up) - stood(frame, item.foot);
    item.foot = stood(frame, item.foot);
  }
  return items;
}

std::vector<Convex> ink_of_ring(const Extents& extents, const Rounded& contour, const LaceRing& ring) {
  std::vector<Convex> ink;
  for (std::size_t i = 0; i < ring.bunches.size(); ++i)
    for (const Item& item : standing_items(contour, ring, i))
      for (Convex& piece : ink_of(extents, item)) ink.push_back(std::move(piece));
  for (Convex& piece : ink_of_label(ring.label, ring.label_start)) ink.push_back(std::move(piece));
  if (ring.pointed) ink.push_back(ink_of_pointer(ring.pointer_tip, ring.pointer_direction));
  return ink;
}

} // namespace whorl::layout
