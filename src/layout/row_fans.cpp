#include "layout/row_fans.hpp"

#include "layout/items.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <vector>

namespace whorl::layout {
namespace {

using fabric::Fabric;
using fabric::Place;
using fabric::StitchId;

constexpr std::size_t most_within = 5;                 ///< chains within a fan
constexpr double column_aside = 0.35, head_air = 0.06; ///< of half a fan
constexpr double plain = 0.3; ///< how strongly chains on end are drawn to their place

/// Stitches of the row beneath, from the first to the last.
struct Span {
  StitchId first = fabric::none, last = 0;
  bool empty() const { return first == fabric::none; }
  void widen(StitchId stitch) { first = std::min(first, stitch), last = std::max(last, stitch); }
};

/// What goes into one place, chains within included, or one stitch over several: stands counted from the
/// left.
struct Fan {
  std::size_t first = 0, last = 0;
  Span span;
  double base = 0;
  std::optional<double> begins; ///< it stands to one side of its place, from here on
};

/// A row that is fanned out.
class Fanning {
public:
  Fanning(const Fabric& fabric, const Footing& footing, double slot, Course& course)
      : fabric_(fabric), course_(course), footing_(footing), slot_(slot), strung_(course.strung) {
    stand_column();
    find_fans();
  }

  void fan_out() {
    for (std::size_t i = 0; i + 1 < fans_.size(); ++i) {
      if (!is_lace(fans_[i], fans_[i + 1])) continue;
      const bool half = (i == 0 && stand_inward(fans_[i], fans_[i + 1])) ||
                        (i + 2 == fans_.size() && stand_inward(fans_[i + 1], fans_[i]));
      if (!half) fit(fans_[i], fans_[i + 1]);
    }
    for (const Fan& fan : fans_) aim(fan);
  }

private:
  std::size_t stands() const { return course_.stands.size(); }
  const Stand& stand(std::size_t i) const { return course_.stands[course_.leftward ? stands() - 1 - i : i]; }
  const Item& item(std::size_t i) const { return course_.items[stand(i).item]; }
  fabric::Legs legs(std::size_t i) const {
    return stand(i).column ? fabric::Legs{} : legs_of(fabric_, item(i));
  }
  bool is_free(std::size_t i) const { return !stand(i).column && legs(i).size() == 0; }

  Span span_of(const Place& place) const {
    Span span;
    if (is_stitch(place)) span.widen(place.of);
    if (is_gap(place)) span.widen(before_gap(fabric_, place)), span.widen(place.of);
    if (place.what == fabric::On::space && place.of < fabric_.arches.size()) {
      const fabric::Arch& arch = fabric_.arches[place.of];
      span.widen(arch.first_chain), span.widen(arch.first_chain + arch.count - 1);
    }
    return span;
  }

  Span span_of(std::size_t i) const {
    Span span;
    if (stand(i).column && column_in_ != fabric::none) span.widen(column_in_);
    for (const fabric::Leg& leg : legs(i)) {
      const Span own = span_of(leg.into);
      if (!own.empty()) span.widen(own.first), span.widen(own.last);
    }
    return span;
  }

  /// The one place that a stand goes into, if it is one.
  std::optional<Place> place_of(std::size_t i) const {
    if (stand(i).column && column_in_ == fabric::none) return std::nullopt;
    if (stand(i).column) return Place{column_in_};
    const fabric::Legs all = legs(i);
    if (all.size() == 0 || !(all.begin()->into == (all.end() - 1)->into)) return std::nullopt;
    const Place into = all.begin()->into;
    return is_stitch(into) ? Place{into.of} : into;
  }

  bool share(std::size_t one, std::size_t other) const {
    const std::optional<Place> place = place_of(one);
    return place && place == place_of(other);
  }

  /// Chains that count as a stitch stand at the end of the row beneath, or one stitch beyond the first of the
  /// starting chain that is worked into.
  void stand_column() {
    const std::size_t column = course_.leftward ? stands() - 1 : 0;
    if (stands() < 2 || !stand(column).column || stand(column).slot < 1) return;
    std::size_t first = column;
    do {
      if (first == (course_.leftward ? 0 : stands() - 1)) return;
      first += course_.leftward ? -1 : 1;
    } while (strung_.pull[first] <= 0);
    const Span worked = span_of(first);
    if (worked.empty()) return;
    const StitchId end = end_beneath(worked, strung_.target[first]);
    const std::optional<double> at = footing_.at(end);
    if (!at) return;
    strung_.target[column] = *at, strung_.pull[column] = plain;
    if (!is_of_chain(end))
      column_in_ = end;
    else if (worked.first <= end && end <= worked.last)
      strung_.target[column] += (course_.leftward ? 1 : -1) * slot_;
  }

  /// That end of the row beneath which is nearer to where work begins.
  StitchId end_beneath(const Span& worked, double begins) const {
    const fabric::Round& row = fabric_.rounds[fabric_.stitches[worked.first].round];
    StitchId ends[] = {row.first_stitch, row.first_stitch + row.count - 1};
    const auto known = [&](StitchId stitch) { return can_be_met(stitch) && footing_.at(stitch).has_value(); };
    while (ends[0] < ends[1] && !known(ends[0])) ++ends[0];
    while (ends[0] < ends[1] && !known(ends[1])) --ends[1];
    const double one = footing_.at(ends[0]).value_or(0), other = footing_.at(ends[1]).value_or(0);
    return std::abs(one - begins) < std::abs(other - begins) ? ends[0] : ends[1];
  }

  bool is_of_chain(StitchId stitch) const {
    return fabric_.rounds[fabric_.stitches[stitch].round].kind == pattern::RoundKind::chain;
  }

  void find_fans() {
    for (std::size_t i = 0; i < stands(); ++i) {
      if (strung_.pull[i] <= 0) continue;
      const bool goes_on = !fans_.empty() && i - fans_.back().last <= most_within + 1 &&
                           share(fans_.back().first, i) && only_chains(fans_.back().last + 1, i);
      if (goes_on)
        fans_.back().last = i;
      else
        fans_.push_back({i, i, span_of(i), strung_.target[i]});
    }
  }

  bool only_chains(std::size_t first, std::size_t end) const {
    for (std::size_t i = first; i < end; ++i)
      if (!is_free(i)) return false;
    return true;
  }

  /// Chains hang between them, or places between theirs are skipped.
  bool is_lace(const Fan& one, const Fan& next) const {
    if (!only_chains(one.last + 1, next.first)) return false;
    if (next.first > one.last + 1) return true;
    if (one.span.empty() || next.span.empty()) return false;
    const StitchId from = std::min(one.span.last, next.span.last),
                   to = std::max(one.span.first, next.span.first);
    for (StitchId stitch = from + 1; stitch < to; ++stitch)
      if (can_be_met(stitch)) return true;
    return false;
  }

  bool can_be_met(StitchId stitch) const {
    const fabric::Stitch& one = fabric_.stitches[stitch];
    return (one.flags & fabric::counts) != 0 || is_of_chain(stitch) ||
           fabric_.rounds[one.round].counting_chain == stitch;
  }

  /// The part of a gap that lies between the places of two fans.
  double part_between(std::size_t gap, const Fan& one, const Fan& next) const {
    return gap <= one.last || gap > next.first ? 0.5 : 1;
  }

  /// Gaps between the middles of two fans come to the distance of their places: what is wider than that draws
  /// near where there is room; if not, the row grows.
  void fit(const Fan& one, const Fan& next) {
    const double apart = next.base - one.base;
    double wanted = 0, least = 0, between = 0, least_between = 0;
    for (std::size_t gap = one.first + 1; gap <= next.last; ++gap) {
      const double part = part_between(gap, one, next);
      wanted += part * strung_.wanted[gap], least += part * strung_.least[gap];
      if (part == 1) between += strung_.wanted[gap], least_between += strung_.least[gap];
    }
    if (wanted <= apart) {
      for (std::size_t gap = one.last + 1; gap <= next.first; ++gap)
        strung_.wanted[gap] *= (between + apart - wanted) / between;
    } else if (least <= apart) {
      const double share = (apart - least) / (wanted - least);
      for (std::size_t gap = one.first + 1; gap <= next.last; ++gap)
        strung_.wanted[gap] = std::min(
            strung_.wanted[gap], strung_.least[gap] + share * (strung_.wanted[gap] - strung_.least[gap]));
    } else if (may_bow(one, next, apart - (least - least_between))) {
      const double share = (apart - (least - least_between)) / least_between;
      for (std::size_t gap = one.last + 1; gap <= next.first; ++gap)
        strung_.wanted[gap] = strung_.least[gap] *= share;
      course_.bows.push_back({one.last + 1, next.first - 1});
    }
  }

  /// Whether chains between two fans have so much room for a bow.
  bool may_bow(const Fan& one, const Fan& next, double room) const {
    constexpr double least_chord = 0.32, oval = 0.48, air_along = 0.12;
    const std::size_t chains = next.first - one.last - 1;
    for (std::size_t i = one.last + 1; i < next.first; ++i)
      if (course_.band.shapes[course_.band.shape_of[stand(i).item]]->on_heads) return false;
    const double ink = stand(one.last).right + stand(next.first).left + 2 * air_along;
    return chains >= 2 && room >= least_chord * static_cast<double>(chains) + oval + ink;
  }

  /// Half a fan at the end of a row stands from there inward, if it has room beside the next.
  bool stand_inward(Fan& half, const Fan& next) {
    const bool left = half.first < next.first;
    const double apart = std::abs(next.base - half.base) + beside_column(half);
    double own = 0, between = 0, other = 0;
    for (std::size_t gap = half.first + 1; gap <= half.last; ++gap) own += strung_.least[gap] + head_air;
    for (std::size_t gap = next.first + 1; gap <= next.last; ++gap) other += strung_.wanted[gap] / 2;
    const std::size_t first = left ? half.last + 1 : next.last + 1, last = left ? next.first : half.first;
    for (std::size_t gap = first; gap <= last; ++gap) between += strung_.least[gap];
    if (half.first == half.last || own + between + other > apart) return false;
    for (std::size_t gap = half.first + 1; gap <= half.last; ++gap)
      strung_.wanted[gap] = strung_.least[gap] + head_air;
    for (std::size_t gap = first; gap <= last; ++gap)
      strung_.wanted[gap] *= (apart - own - other) / wanted_between(first, last);
    half.begins = left ? half.base - beside_column(half) : half.base + beside_column(half) - own;
    return true;
  }

  /// Chains on end leave the place to the stitches beside them.
  double beside_column(const Fan& fan) const {
    return stand(fan.first).column || stand(fan.last).column ? column_aside : 0;
  }

  double wanted_between(std::size_t first, std::size_t last) const {
    double all = 0;
    for (std::size_t gap = first; gap <= last; ++gap) all += strung_.wanted[gap];
    return all;
  }

  /// Another fan stands to either side of its place.
  void aim(const Fan& fan) {
    const double all = wanted_between(fan.first + 1, fan.last);
    double reached = fan.begins.value_or(fan.base - all / 2);
    for (std::size_t i = fan.first; i <= fan.last; ++i) {
      if (i > fan.first) reached += strung_.wanted[i];
      if (strung_.pull[i] > 0) strung_.target[i] = reached;
    }
  }

  const Fabric& fabric_;
  Course& course_;
  const Footing& footing_;
  double slot_;
  Strung& strung_;
  StitchId column_in_ = fabric::none; ///< what the chains on end stand in
  std::vector<Fan> fans_;
};

} // namespace

void fan_out_of_places(const Fabric& fabric, const Footing& footing, const Room& room, Course& course) {
  Fanning(fabric, footing, room.slot, course).fan_out();
}

} // namespace whorl::layout
