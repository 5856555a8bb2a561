#include "layout/lace_ring.hpp"

#include "layout/sign.hpp"
#include "layout/stand.hpp"

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

std::vector<Item> standing_items(const Rounded& contour, const LaceRing& ring, std::size_t bunch) {
  const double r = ring.stands[bunch], at = carried(contour, ring.r, ring.at[bunch], r);
  Item frame;
  frame.foot = point_on(contour, r, at);
  frame.up = outward(contour, at);
  std::vector<Item> items = ring.bunches[bunch].standing;
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
