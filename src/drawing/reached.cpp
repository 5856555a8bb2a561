#include "drawing/reached.hpp"

#include <algorithm>

namespace whorl::drawing {
namespace {

using layout::Figure;

/// The end of a row where it was begun, or where it ended.
std::uint32_t end_of(const Figure& figure, const fabric::Place& place) {
  for (const layout::Ring& ring : figure.rings)
    if (ring.items > 0 && !ring.edging && ring.round <= place.of && place.of <= ring.last_round)
      return place.loops == stitch::back ? ring.first_item + ring.items - 1 : ring.first_item;
  return fabric::none;
}

Reached in_space(const DrawnItems& drawn, const fabric::Arch& arch) {
  if (arch.count == 0) return {};
  const std::uint32_t first = drawn.of(arch.first_chain), last = drawn.of(arch.first_chain + arch.count - 1);
  const bool shown = first != fabric::none && last != fabric::none && first <= last;
  if (!shown) return {};
  return {first, last - first + 1, arch.first_chain + arch.count / 2, fabric::On::space, {}};
}

/// Both stitches beside a gap; where a round's end meets its start, the first.
Reached in_gap(const fabric::Fabric& fabric, const DrawnItems& drawn, const fabric::Place& gap) {
  const std::uint32_t before = drawn.of(fabric::before_gap(fabric, gap)), behind = drawn.of(gap.of);
  const bool beside = before != fabric::none && behind != fabric::none && before < behind;
  if (!beside) return {behind, 1, gap.of, gap.what, {}};
  return {before, behind - before + 1, gap.of, gap.what, {}};
}

Reached at(const fabric::Fabric& fabric, const Figure& figure, const DrawnItems& drawn,
           const fabric::Place& place) {
  switch (place.what) {
  case fabric::On::ring:
    return {fabric::none, 0, fabric::none, place.what, {}};
  case fabric::On::space:
    return place.of < fabric.arches.size() ? in_space(drawn, fabric.arches[place.of]) : Reached{};
  case fabric::On::between:
    return in_gap(fabric, drawn, place);
  case fabric::On::row_end: {
    const std::uint32_t item = end_of(figure, place);
    return {item, 1, item == fabric::none ? fabric::none : figure.items[item].first, place.what, {}};
  }
  default:
    return {drawn.of(place.of), 1, place.of, place.what, {}};
  }
}

bool is_shown(const Reached& place) { return place.first != fabric::none || place.what == fabric::On::ring; }

bool are_one(const Reached& a, const Reached& b) {
  return a.first == b.first && a.count == b.count && a.stitch == b.stitch && a.what == b.what;
}

} // namespace

DrawnItems::DrawnItems(const Figure& figure) : figure_(figure) {
  for (std::uint32_t i = 0; i < figure.items.size(); ++i) items_.emplace_back(figure.items[i].first, i);
  std::stable_sort(items_.begin(), items_.end(),
                   [](const auto& a, const auto& b) { return a.first < b.first; });
}

std::uint32_t DrawnItems::of(fabric::StitchId stitch) const {
  auto after = std::upper_bound(items_.begin(), items_.end(), stitch,
                                [](fabric::StitchId id, const auto& one) { return id < one.first; });
  if (after == items_.begin()) return fabric::none;
  const std::uint32_t item = (--after)->second;
  return stitch < figure_.items[item].first + figure_.items[item].count ? item : fabric::none;
}

std::vector<Reached> reached_by(const fabric::Fabric& fabric, const Figure& figure, const DrawnItems& drawn,
                                const layout::Item& item) {
  std::vector<Reached> places;
  std::size_t legs = 0;
  for (std::uint32_t i = 0; i < item.count; ++i) legs += fabric::own_legs_of(fabric, item.first + i).size();
  const bool spread = item.count == 1 && legs == item.feet && legs > 1;
  std::uint32_t leg_number = 0;
  for (std::uint32_t i = 0; i < item.count; ++i)
    for (const fabric::Leg& leg : fabric::own_legs_of(fabric, item.first + i)) {
      Reached place = at(fabric, figure, drawn, leg.into);
      place.foot = spread ? figure.feet[item.first_foot + leg_number] : item.foot;
      ++leg_number;
      if (is_shown(place)) places.push_back(place);
    }
  return places;
}

std::vector<Reached> reached_by(const fabric::Fabric& fabric, const Figure& figure,
                                const std::vector<std::uint32_t>& items) {
  const DrawnItems drawn(figure);
  std::vector<Reached> places;
  for (const std::uint32_t item : items)
    for (const Reached& place : reached_by(fabric, figure, drawn, figure.items[item]))
      places.push_back(place);
  const auto before = [](const Reached& a, const Reached& b) {
    if (a.first != b.first) return a.first < b.first;
    if (a.count != b.count) return a.count < b.count;
    if (a.stitch != b.stitch) return a.stitch < b.stitch;
    return a.what < b.what;
  };
  std::stable_sort(places.begin(), places.end(), before);
  places.erase(std::unique(places.begin(), places.end(), are_one), places.end());
  return places;
}

} // namespace whorl::drawing
