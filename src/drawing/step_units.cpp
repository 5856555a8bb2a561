#include "drawing/step_units.hpp"

#include "drawing/caption.hpp"
#include "drawing/figure.hpp"
#include "drawing/furniture.hpp"

#include <algorithm>
#include <numeric>

namespace whorl::drawing {
namespace {

using layout::Figure;
using layout::Ring;

bool is_chain(const fabric::Fabric& fabric, const layout::Item& item) {
  return fabric::own_legs_of(fabric, item.first).size() == 0;
}

/// The one place that an item goes into; none: it is a chain, goes into several, or into a ring, as all of a
/// round do.
fabric::Place place_of(const fabric::Fabric& fabric, const layout::Item& item) {
  fabric::Place place;
  for (std::uint32_t i = 0; i < item.count; ++i)
    for (const fabric::Leg& leg : fabric::own_legs_of(fabric, item.first + i)) {
      if (leg.into.what == fabric::On::ring || (place.of != fabric::none && !(leg.into == place))) return {};
      place = leg.into;
    }
  return place;
}

/// How many of a ring's items, from one on, are worked as one thing: into one place, with the chains between,
/// or chains in a row.
std::size_t unit_at(const fabric::Fabric& fabric, const std::vector<const layout::Item*>& items,
                    std::size_t first) {
  std::size_t end = first + 1;
  if (is_chain(fabric, *items[first])) {
    while (end < items.size() && is_chain(fabric, *items[end])) ++end;
    return end - first;
  }
  const fabric::Place place = place_of(fabric, *items[first]);
  if (place.of == fabric::none) return 1;
  for (std::size_t i = end; i < items.size(); ++i) {
    if (is_chain(fabric, *items[i])) continue;
    if (!(place_of(fabric, *items[i]) == place)) break;
    end = i + 1;
  }
  return end - first;
}

/// A ring's items in the order of work, which is not that of where they stand: the join does so beside the
/// start.
std::vector<const layout::Item*> as_worked(const Figure& figure, const Ring& ring) {
  std::vector<const layout::Item*> items;
  for (std::uint32_t i = 0; i < ring.items; ++i) items.push_back(&figure.items[ring.first_item + i]);
  std::stable_sort(items.begin(), items.end(),
                   [](const layout::Item* a, const layout::Item* b) { return a->first < b->first; });
  return items;
}

void add_stitches(const fabric::Fabric& fabric, const Figure& figure, std::size_t number, std::uint32_t ring,
                  std::vector<Step>& steps) {
  const std::vector<const layout::Item*> items = as_worked(figure, figure.rings[ring]);
  for (std::size_t i = 0; i < items.size();) {
    const std::size_t next = i + unit_at(fabric, items, i);
    const layout::Item& last = *items[next - 1];
    steps.push_back({number, ring, items[i]->first, last.first + last.count - items[i]->first});
    i = next;
  }
}

/// The number of a stitch in its round, with as many digits as the round's last has.
std::string stitch_number(const Copy& copy, fabric::StitchId stitch) {
  const fabric::Round& round = copy.fabric.rounds[copy.fabric.stitches[stitch].round];
  const std::size_t digits = std::to_string(round.count).size();
  const std::string number = std::to_string(fabric::index_in_round(copy.fabric, stitch));
  return std::string(digits - std::min(digits, number.size()), '0') + number;
}

} // namespace

std::vector<std::uint32_t> in_order(const Figure& figure) {
  std::vector<std::uint32_t> order(figure.rings.size());
  std::iota(order.begin(), order.end(), 0U);
  const auto begins = [&](std::uint32_t ring) {
    return figure.rings[ring].owner || figure.rings[ring].chain;
  };
  std::stable_sort(order.begin(), order.end(), [&](std::uint32_t one, std::uint32_t other) {
    if (begins(one) != begins(other)) return begins(one);
    return figure.rings[one].round < figure.rings[other].round;
  });
  return order;
}

std::vector<Step> steps_of(const Copy& copy, Pace pace) {
  std::vector<Step> steps;
  std::uint32_t part = fabric::none;
  for (std::size_t i = 0; i < copy.placement.figures.size(); ++i) {
    const Figure& figure = copy.placement.figures[i];
    if (figure.part != part) steps.push_back({i, fabric::none});
    part = figure.part;
    for (const std::uint32_t ring : in_order(figure)) {
      if (figure.rings[ring].echo || figure.rings[ring].chain) continue;
      if (pace == Pace::stitches)
        add_stitches(copy.fabric, figure, i, ring, steps);
      else
        steps.push_back({i, ring});
    }
  }
  return steps;
}

std::string step_id(const Copy& copy, const Step& step) {
  const Figure& figure = copy.placement.figures[step.figure];
  const std::string& key = copy.fabric.parts[figure.part].key;
  if (step.ring == fabric::none) return key + "-start";
  const Ring& ring = figure.rings[step.ring];
  const std::string id = key + "-" + round_number(copy.fabric, ring.round);
  return step.stitches == 0 ? id : id + "-" + stitch_number(copy, step.stitch);
}

} // namespace whorl::drawing
