#include "layout/lace.hpp"

#include "layout/items.hpp"

#include <utility>

namespace whorl::layout {
namespace {

using fabric::Fabric;
using fabric::StitchId;

/// The corner groups of a round.
std::vector<std::size_t> corner_groups(const LaceRing& ring) {
  std::vector<std::size_t> groups;
  for (std::size_t i = 0; i < ring.bunches.size(); ++i)
    if (ring.bunches[i].corner && ring.seats[i]) groups.push_back(i);
  return groups;
}

/// How far corner groups stand from the corners, in sides.
double turn_of(const LaceRing& ring, const std::vector<std::size_t>& groups) {
  double turn = 0;
  for (std::size_t k = 0; k < groups.size(); ++k) {
    const double place = ring.seats[groups[k]]->at * static_cast<double>(groups.size()) - 0.5;
    turn = (turn * static_cast<double>(k) + (k == 0 ? place : turned_near(place, turn))) /
           static_cast<double>(k + 1);
  }
  return turn;
}

constexpr int most_plain = 2;                 ///< rounds round a motif, without corners
constexpr std::uint32_t most_stitches = 2000; ///< of a round that is measured against all that is near

/// Whether a round goes along the edges of other pieces, or asks for more than a ring of lace shows.
bool needs_gutter(const Fabric& fabric, const Ring& ring) {
  const fabric::Round& round = fabric.rounds[ring.round];
  if (ring.owner || ring.round != ring.last_round || round.count == 0 || round.count > most_stitches)
    return true;
  for (StitchId i = round.first_stitch; i < round.first_stitch + round.count; ++i)
    for (const fabric::Leg& leg : fabric::own_legs_of(fabric, i))
      if (leg.into.what == fabric::On::row_end || leg.into.what == fabric::On::chain_side) return true;
  return round.joined_open > 0;
}

} // namespace

bool works_in_spaces(const Fabric& fabric, std::uint32_t number) {
  const fabric::Round& round = fabric.rounds[number];
  for (StitchId i = round.first_stitch; i < round.first_stitch + round.count; ++i)
    for (const fabric::Leg& leg : fabric::own_legs_of(fabric, i))
      if (leg.into.what == fabric::On::space || is_gap(leg.into)) return true;
  return false;
}

bool is_net(const Fabric& fabric, std::uint32_t number) {
  constexpr std::uint32_t most_chains = 2, least_spaces = 12;
  const fabric::Round& round = fabric.rounds[number];
  std::uint32_t before = fabric::none, spaces = 0;
  for (StitchId i = round.first_stitch; i < round.first_stitch + round.count; ++i)
    for (const fabric::Leg& leg : fabric::own_legs_of(fabric, i)) {
      if (leg.into.what != fabric::On::space) continue;
      if (leg.into.of == before || fabric.arches[leg.into.of].count > most_chains) return false;
      before = leg.into.of;
      ++spaces;
    }
  return spaces == 0 || spaces >= least_spaces;
}

bool is_lace(const Fabric& fabric, const Plan& plan) {
  if (plan.inward || plan.oval || plan.strip || plan.owner || !plan.kept.empty()) return false;
  bool spaces = false;
  for (const Ring& ring : plan.rings) {
    if (needs_gutter(fabric, ring)) return false;
    spaces = spaces || (!ring.echo && works_in_spaces(fabric, ring.round));
  }
  return spaces;
}

Outline outline_of(const Fabric& fabric, const Lace& lace) {
  Outline outline;
  int plain = 0; // rounds behind the last with corners
  for (std::size_t i = 0; i < lace.rings.size(); ++i) {
    const LaceRing& ring = lace.rings[i];
    const std::vector<std::size_t> groups = corner_groups(ring);
    const auto corners = static_cast<int>(groups.size());
    if (corners == 0) {
      const bool spaces = works_in_spaces(fabric, lace.figure.rings[i].round);
      if (outline.corners > 0 && (spaces || ++plain > most_plain)) return {};
      continue;
    }
    plain = 0;
    if (corners < 3 || corners > 6 || (outline.corners > 0 && outline.corners != corners)) return {};
    if (std::exchange(outline.corners, corners) == 0)
      outline.start = (lace.figure.rings[i].against ? 1 : -1) * turn_of(ring, groups) / corners;
  }
  return outline;
}

} // namespace whorl::layout
