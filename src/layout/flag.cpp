#include "layout/flag.hpp"

#include "layout/hole.hpp"
#include "layout/room.hpp"
#include "layout/sign.hpp"

#include <algorithm>
#include <string>

namespace whorl::layout {
namespace {

using fabric::Fabric;

constexpr double high = 0.92, letter_aside = 0.31, letter_up = 0.61, letter_size = 0.50;

/// The items of a ring, by number, whose yarn is not that of the item before them and has not been met in the
/// figure.
std::vector<std::uint32_t> first_in_yarn(const Fabric& fabric, const Item* items, std::size_t many, bool echo,
                                         std::vector<std::uint8_t>& met) {
  std::vector<std::uint32_t> found;
  for (std::uint32_t i = 0; i < many; ++i) {
    const std::uint8_t yarn = fabric.stitches[items[i].first].yarn;
    if (std::find(met.begin(), met.end(), yarn) != met.end()) continue;
    met.push_back(yarn);
    if (i > 0 && !echo) found.push_back(i);
  }
  return found;
}

/// A flag whose pole stands in the middle of a spot.
Placed flag_at(Point at, std::uint8_t yarn, std::uint32_t ring, const Extents& extents) {
  Placed flag{Sign::flag, at - Point{letter_aside, high / 2}, {0, 1}, {}, {}, ring};
  const std::string number = std::to_string(yarn);
  flag.text = {number, Face::bold, letter_size, 0, letter_size * text_width(extents, Face::bold, number)};
  flag.text_at = flag.at + Point{letter_aside, letter_up};
  return flag;
}

} // namespace

bool brings_in_yarn(const Fabric& fabric, const std::vector<Item>& items, bool echo,
                    std::vector<std::uint8_t>& met) {
  return !first_in_yarn(fabric, items.data(), items.size(), echo, met).empty();
}

std::vector<int> add_flags(const Fabric& fabric, const Extents& extents, Figure& figure, int again) {
  std::vector<int> crowded;
  std::vector<std::uint8_t> met;
  for (std::uint32_t i = 0; i < figure.rings.size(); ++i) {
    const Ring& ring = figure.rings[i];
    const Item* items = figure.items.data() + ring.first_item;
    for (const std::uint32_t number : first_in_yarn(fabric, items, ring.items, ring.echo, met)) {
      const Item& item = items[number];
      const Spot head{item.foot + item.height * item.up, item.up};
      const Spot spot = beyond_head(figure, i, head);
      Placed flag = flag_at(spot.at, fabric.stitches[item.first].yarn, i, extents);
      const int side = side_of_heads(figure);
      if (side > 0 && i + 1 == figure.rings.size())
        push_out(figure, extents, spot.up, flag);
      else if (!is_clear(figure, extents, flag) && !settle_sign(figure, extents, spot.up, again, flag))
        crowded.push_back(static_cast<int>(i) - (side < 0 ? 1 : 0));
      figure.placed.push_back(std::move(flag));
    }
  }
  return crowded;
}

} // namespace whorl::layout
