#include "layout/lace.hpp"

#include "layout/corners.hpp"
#include "layout/items.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace whorl::layout {
namespace {

using fabric::Fabric;
using fabric::StitchId;

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

constexpr double near_corner = 0.3, nearer_corner = 0.15;  ///< of a side; with chains in a group, without
constexpr double solid_corner = 0.15, blunt_corner = 0.25; ///< its radius without chains; of more than four
constexpr double near_spine = 0.04;
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

std::vector<std::size_t> groups_of(const LaceRing& ring, bool with_chains) {
  std::vector<std::size_t> groups;
  for (std::size_t i = 0; i < ring.bunches.size(); ++i)
    if ((with_chains ? ring.bunches[i].corner : ring.bunches[i].crowd) && ring.seats[i]) groups.push_back(i);
  return groups;
}

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
  return spaces || has_solid_corners(fabric, plan.rings);
}

namespace {

/// Finds the corners of a motif, round by round.
class Corners {
public:
  Corners(const Fabric& fabric, const Lace& lace) : fabric_(fabric), lace_(lace) {}

  Outline outline() {
    for (std::size_t i = 0; i < lace_.rings.size(); ++i)
      if (!look_at(i)) return {};
    return outline_;
  }

private:
  std::uint32_t round(std::size_t ring) const { return lace_.figure.rings[ring].round; }

  /// False: it is no motif.
  bool look_at(std::size_t i) {
    const LaceRing& ring = lace_.rings[i];
    const std::vector<std::size_t> groups = corner_groups(i);
    const auto corners = static_cast<int>(groups.size());
    if (corners == 0) return outline_.corners == 0 || may_be_plain(i);
    plain_ = 0;
    if (corners < 3 || corners > 6 || (outline_.corners > 0 && outline_.corners != corners)) return false;
    if (std::exchange(outline_.corners, corners) > 0) return true;
    turn_ = turn_of(ring, groups);
    if (is_solid(i))
      outline_.corner = solid_corner;
    else if (corners > 4)
      outline_.corner = blunt_corner;
    outline_.start = (lace_.figure.rings[i].against ? 1 : -1) * turn_ / corners;
    return true;
  }

  bool may_be_plain(std::size_t i) {
    const bool last = i + 1 == lace_.rings.size();
    return ++plain_ <= most_plain && (last || !works_in_spaces(fabric_, round(i)));
  }

  std::vector<std::size_t> corner_groups(std::size_t i) const {
    const LaceRing& ring = lace_.rings[i];
    std::vector<std::size_t> groups = groups_of(ring, true);
    if (!groups.empty()) return groups;
    groups = groups_of(ring, false);
    if (is_solid(i) || outline_.corners == 0) return is_solid(i) ? groups : std::vector<std::size_t>{};
    groups.erase(std::remove_if(groups.begin(), groups.end(),
                                [&](std::size_t group) { return !is_over_corner(*ring.seats[group]); }),
                 groups.end());
    return static_cast<int>(groups.size()) == outline_.corners ? groups : std::vector<std::size_t>{};
  }

  bool is_solid(std::size_t i) const {
    return (i > 0 && has_solid_corners(fabric_, round(i - 1), round(i))) ||
           (i + 1 < lace_.rings.size() && has_solid_corners(fabric_, round(i), round(i + 1)));
  }

  bool is_over_corner(const Spotted& seat) const {
    const double place = seat.at * outline_.corners - 0.5 - turn_;
    return std::abs(place - std::floor(place + 0.5)) < nearer_corner;
  }

  const Fabric& fabric_;
  const Lace& lace_;
  Outline outline_;
  double turn_ = 0;
  int plain_ = 0; ///< rounds behind the last with corners
};

} // namespace

namespace {

double corner_place(int corners, const Spotted& seat) { return seat.at * corners - 0.5; }

/// The corner of the first of these, so that all are as near to theirs as they can be.
double first_corner(int corners, const LaceRing& ring, const std::vector<std::size_t>& groups) {
  double sum = 0, before = corner_place(corners, *ring.seats[groups.front()]) - 1;
  for (std::size_t k = 0; k < groups.size(); ++k) {
    const double place = corner_place(corners, *ring.seats[groups[k]]);
    before = place + corners * std::floor((before + 1 - place) / corners + 0.5);
    sum += before - static_cast<double>(k);
  }
  return std::floor(sum / static_cast<double>(groups.size()) + 0.5);
}

} // namespace

void draw_to_corners(int corners, double pull, LaceRing& ring) {
  if (corners == 0) return;
  std::vector<std::size_t> groups = groups_of(ring, true);
  if (groups.empty()) groups = groups_of(ring, false);
  const auto in_stitch = [&](std::size_t group) { return is_stitch(*ring.bunches[group].base); };
  const bool solid =
      static_cast<int>(groups.size()) == corners && std::all_of(groups.begin(), groups.end(), in_stitch);
  double next = solid ? first_corner(corners, ring, groups) : 0;
  for (const std::size_t group : groups) {
    const double place = corner_place(corners, *ring.seats[group]);
    const double corner = solid ? next++ : std::floor(place + 0.5);
    const double near = ring.bunches[group].corner ? near_corner : nearer_corner;
    if (!solid && std::abs(place - corner) >= near) continue;
    ring.seats[group]->at = (corner + 0.5) / corners;
    ring.pull[group] = pull;
  }
}

void draw_to_spine(double pull, LaceRing& ring) {
  std::vector<std::size_t> groups = groups_of(ring, true);
  if (groups.empty()) groups = groups_of(ring, false);
  for (const std::size_t group : groups) {
    const double at = turned_near(ring.seats[group]->at, 0);
    if (std::abs(at) >= near_spine) continue;
    ring.seats[group]->at = 0;
    ring.pull[group] = pull;
  }
}

Outline outline_of(const Fabric& fabric, const Lace& lace) { return Corners(fabric, lace).outline(); }

} // namespace whorl::layout
