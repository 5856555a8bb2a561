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

constexpr double near_corner = 0.3, nearer_corner = 0.15; ///< of a side; with chains in a group, without
constexpr double nearest_corner = 0.4;                    ///< … of chains between stitches
constexpr double solid_corner = 0.15;                     ///< radius of one without chains
constexpr double near_spine = 0.04;
constexpr int most_plain = 2;                 ///< rounds round a motif, without corners
constexpr std::uint32_t most_stitches = 2000; ///< of a round that is measured against all that is near

/// Whether a leg of the round's own is of this sort. Most rounds have none of any such sort at all, which is
/// quickly told.
template <typename Sort> bool any_own_leg(const Fabric& fabric, const fabric::Round& round, Sort is_one) {
  const auto has_one = [&](const fabric::Legs& legs) {
    return std::any_of(legs.begin(), legs.end(), is_one);
  };
  if (round.count == 0) return false;
  const StitchId last = round.first_stitch + round.count - 1;
  if (!has_one({fabric::legs_of(fabric, round.first_stitch).begin(), fabric::legs_of(fabric, last).end()}))
    return false;
  for (StitchId i = round.first_stitch; i <= last; ++i)
    if (has_one(fabric::own_legs_of(fabric, i))) return true;
  return false;
}

/// Whether a round goes along the edges of other pieces, or asks for more than a ring of lace shows.
bool needs_gutter(const Fabric& fabric, const Ring& ring) {
  const fabric::Round& round = fabric.rounds[ring.round];
  if (ring.owner || ring.round != ring.last_round || round.count == 0 || round.count > most_stitches)
    return true;
  return round.joined_open > 0 || any_own_leg(fabric, round, [](const fabric::Leg& leg) {
           return leg.into.what == fabric::On::row_end || leg.into.what == fabric::On::chain_side;
         });
}

} // namespace

std::vector<std::size_t> groups_of(const LaceRing& ring, bool with_chains) {
  std::vector<std::size_t> groups;
  for (std::size_t i = 0; i < ring.bunches.size(); ++i)
    if ((with_chains ? ring.bunches[i].corner : ring.bunches[i].crowd) && ring.seats[i]) groups.push_back(i);
  return groups;
}

bool works_in_spaces(const Fabric& fabric, std::uint32_t number) {
  return any_own_leg(fabric, fabric.rounds[number], [](const fabric::Leg& leg) {
    return leg.into.what == fabric::On::space || is_gap(leg.into);
  });
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
    keep_spaces(ring, groups);
    if (std::exchange(outline_.corners, corners) > 0) return true;
    turn_ = turn_of(ring, groups);
    if (is_solid(i)) outline_.corner = solid_corner;
    outline_.start = (lace_.figure.rings[i].against ? 1 : -1) * turn_ / corners;
    return true;
  }

  void keep_spaces(const LaceRing& ring, const std::vector<std::size_t>& groups) {
    for (const std::size_t group : groups)
      if (const auto& base = ring.bunches[group].base; base && base->what == fabric::On::space)
        outline_.spaces.push_back(base->of);
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

void hang_in_corners(const Fabric& fabric, const Outline& outline, double pull, LaceRing& ring) {
  const std::vector<std::optional<Spotted>> seats = ring.seats;
  const auto goes_into = [&](const Bunch& bow, std::uint32_t space) {
    const StitchId first = fabric.arches[space].first_chain;
    return bow.standing.front().first <= first && first <= bow.standing.back().first;
  };
  for (std::size_t i = 1; i + 1 < ring.bunches.size(); ++i) {
    if (!is_bow(ring.bunches[i]) || !seats[i - 1] || !seats[i + 1]) continue;
    if (std::none_of(outline.spaces.begin(), outline.spaces.end(),
                     [&](std::uint32_t space) { return goes_into(ring.bunches[i], space); }))
      continue;
    const double before = seats[i - 1]->at;
    const Spotted middle{seats[i - 1]->r, (before + turned_near(seats[i + 1]->at, before)) / 2};
    const double place = corner_place(outline.corners, middle), corner = std::floor(place + 0.5);
    if (std::abs(place - corner) >= nearest_corner) continue;
    ring.seats[i] = Spotted{middle.r, (corner + 0.5) / outline.corners};
    ring.pull[i] = pull;
  }
}

void share_out(int corners, double pull, LaceRing& ring) {
  const auto has_seat = [](const std::optional<Spotted>& seat) { return seat.has_value(); };
  const auto spaces = std::count_if(ring.bunches.begin(), ring.bunches.end(), is_bow);
  if (corners == 0 || spaces != corners || std::any_of(ring.seats.begin(), ring.seats.end(), has_seat))
    return;
  double all = 0, sum = 0, off = 0;
  for (const Bunch& bunch : ring.bunches) all += bunch.share;
  int corner = 0;
  for (std::size_t i = 0; i < ring.bunches.size(); ++i) {
    const Bunch& bunch = ring.bunches[i];
    ring.seats[i] = Spotted{ring.feet_if_none, (sum + bunch.share / 2) / all};
    ring.pull[i] = pull;
    sum += bunch.share;
    if (is_bow(bunch)) off += corner_place(corners, *ring.seats[i]) - corner++;
  }
  for (std::optional<Spotted>& seat : ring.seats) seat->at -= off / corners / corners;
}

Outline outline_of(const Fabric& fabric, const Lace& lace) { return Corners(fabric, lace).outline(); }

} // namespace whorl::layout
