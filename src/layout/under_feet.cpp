#include "layout/under_feet.hpp"

#include "layout/direction.hpp"
#include "layout/items.hpp"
#include "layout/stand.hpp"

#include <algorithm>
#include <cmath>

namespace whorl::layout {
namespace {

using fabric::Fabric;
using fabric::Place;
using fabric::StitchId;

constexpr std::size_t most_asked_alone = 2; ///< feet in one place

bool joins(const Fabric& fabric, StitchId stitch) {
  return (fabric.stitches[stitch].flags & fabric::joins) != 0;
}

/// The least of some: straight, and aside of the way out on which a foot stands.
struct Distance {
  double least = 1e9, aside = 1e9;

  void add(Point place, Point foot) {
    least = std::min(least, length(place - foot));
    if (dot(place, foot) > 0) aside = std::min(aside, std::abs(cross(unit(foot), place)));
  }
};

/// Arches stand in the order of their chains.
std::uint32_t arch_of(const Fabric& fabric, StitchId chain) {
  const auto behind = [](StitchId stitch, const fabric::Arch& arch) { return stitch < arch.first_chain; };
  const auto next = std::upper_bound(fabric.arches.begin(), fabric.arches.end(), chain, behind);
  if (next == fabric.arches.begin()) return fabric::none;
  const fabric::Arch& arch = *(next - 1);
  return chain < arch.first_chain + arch.count ? static_cast<std::uint32_t>(next - 1 - fabric.arches.begin())
                                               : fabric::none;
}

} // namespace

std::vector<Feet> feet_of(const Fabric& fabric, const Extents& extents, const std::vector<Item>& items,
                          Hand hand) {
  std::vector<Feet> all;
  Figure standing;
  for (const Item& item : items) {
    if (joins(fabric, item.first) || legs_of(fabric, item).size() == 0) continue;
    stand_item(fabric, extent(extents, item.key), item, hand, standing);
    std::uint32_t foot = standing.items.back().first_foot;
    for (const fabric::Leg& leg : legs_of(fabric, item)) {
      if (all.empty() || !(all.back().into == leg.into)) all.push_back({leg.into, {}});
      all.back().at.push_back(standing.feet[foot++]);
    }
  }
  return all;
}

void UnderFeet::add(const Figure& figure, const Ring& ring) {
  Shown shown{ring.round, {}};
  for (std::uint32_t k = 0; k < ring.items; ++k) {
    const Item& item = figure.items[ring.first_item + k];
    const std::uint32_t arch = arch_of(fabric_, item.first);
    for (std::uint32_t j = 0; j < item.count; ++j) {
      const StitchId stitch = item.first + j;
      if (arch != fabric::none)
        shown.spots.push_back({item.foot + item.height / 2 * item.up, stitch, arch});
      else if ((fabric_.stitches[stitch].flags & fabric::counts) != 0)
        shown.spots.push_back({figure.tips[item.first_tip + j], stitch, fabric::none});
    }
  }
  shown_.push_back(std::move(shown));
}

std::uint32_t UnderFeet::round_of(const Place& into) const {
  if (into.what == fabric::On::space)
    return into.of < fabric_.arches.size() ? fabric_.stitches[fabric_.arches[into.of].first_chain].round
                                           : fabric::none;
  return is_stitch(into) || is_gap(into) ? fabric_.stitches[into.of].round : fabric::none;
}

bool UnderFeet::is_near(const Place& into, Point foot) const {
  const std::uint32_t round = round_of(into);
  const auto shown =
      std::find_if(shown_.begin(), shown_.end(), [round](const Shown& one) { return one.round == round; });
  if (round == fabric::none || shown == shown_.end()) return true;
  Distance own, other;
  for (const Spot& spot : shown->spots) {
    const bool is_own = into.what == fabric::On::space ? spot.arch == into.of
                        : is_gap(into) ? spot.stitch == into.of || spot.stitch == before_gap(fabric_, into)
                                       : spot.stitch == into.of;
    (is_own ? own : other).add(spot.at, foot);
  }
  return own.least > 1e8 || own.least < other.least || own.aside < other.aside;
}

bool UnderFeet::holds(const Feet& feet) const {
  if (feet.at.size() > most_asked_alone) {
    Point middle;
    for (const Point foot : feet.at) middle = middle + (1.0 / static_cast<double>(feet.at.size())) * foot;
    return is_near(feet.into, middle);
  }
  return std::all_of(feet.at.begin(), feet.at.end(), [&](Point foot) { return is_near(feet.into, foot); });
}

} // namespace whorl::layout
