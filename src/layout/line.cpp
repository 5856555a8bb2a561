#include "layout/line.hpp"

#include "layout/items.hpp"
#include "layout/row_fans.hpp"

#include <algorithm>

namespace whorl::layout {
namespace {

using fabric::Fabric;
using fabric::StitchId;

constexpr double air_along = 0.12;   ///< between neighbours
constexpr double turning_air = 0.08; ///< more beside a turning chain

/// The stands of a line counted from the left.
const Stand& from_left(const Course& course, std::size_t place) {
  return course.stands[course.leftward ? course.stands.size() - 1 - place : place];
}

const Item& item_of(const Course& course, const Stand& stand) { return course.items[stand.item]; }

/// Stands side by side in one place share it as a fan.
void spread_fans(const Fabric& fabric, const Course& course, double slot, std::vector<double>& target) {
  const std::size_t stands = course.stands.size();
  const auto width = [&](std::size_t i) { return from_left(course, i).slot * slot; };
  const auto item = [&](std::size_t i) -> const Item& { return item_of(course, from_left(course, i)); };
  for (std::size_t first = 0; first < stands;) {
    std::size_t last = first + 1;
    while (last < stands && shares_place(fabric, item(first), item(last))) ++last;
    double all = 0;
    for (std::size_t i = first; i < last; ++i) all += width(i);
    double reached = -all / 2;
    for (std::size_t i = first; i < last; ++i) {
      target[i] += reached + width(i) / 2;
      reached += width(i);
    }
    first = last;
  }
}

/// A turning chain that does not count stands close to its row.
bool is_turning(const Stand& stand) { return stand.column && stand.slot < 1; }

/// A picot of a row stands on the head of the stitch before it, where it takes up no room beside others.
class Picots {
public:
  Picots(const Course& course, bool row) : course_(course), row_(row) {}

  /// The stand that counts at a place from the left: of a picot that which it stands on; none beyond the
  /// ends.
  const Stand* under(std::size_t place) const {
    if (place >= course_.stands.size()) return nullptr;
    const Stand& stand = from_left(course_, place);
    return is_picot(place) ? host(place) : &stand;
  }
  bool stands_on(std::size_t place, std::size_t other) const {
    return is_picot(place) && host(place) == &from_left(course_, other);
  }
  /// How far apart a picot and what stands beside its stitch are, if that bears one too.
  double least_apart(std::size_t left) const {
    const std::size_t picot = course_.leftward ? left + 1 : left;
    const std::size_t next = course_.leftward ? left - 1 : left + 2;
    if (!is_picot(picot) || next >= course_.stands.size() || !is_picot(next)) return 0;
    const Stand &one = from_left(course_, picot), &other = from_left(course_, next);
    return std::max(one.right + other.left, one.left + other.right) + air_along;
  }

private:
  bool is_picot(std::size_t place) const {
    const Stand& stand = from_left(course_, place);
    return row_ && !stand.column && &stand != &course_.stands.front() &&
           course_.band.shapes[course_.band.shape_of[stand.item]]->on_heads;
  }
  const Stand* host(std::size_t place) const { return &from_left(course_, place) - 1; }

  const Course& course_;
  bool row_;
};

void string_gaps(const Course& course, const Room& room, Strung& strung) {
  const std::size_t stands = course.stands.size();
  const Picots picots(course, room.free_ends);
  begin_anew(stands, strung);
  for (std::size_t k = 0; k <= stands; ++k) {
    const Stand* before = k == 0 ? nullptr : picots.under(k - 1);
    const Stand* behind = picots.under(k);
    if (before && behind && (picots.stands_on(k, k - 1) || picots.stands_on(k - 1, k))) {
      strung.least.push_back(0), strung.wanted.push_back(0);
      continue;
    }
    const double wanted = (before ? before->slot : 0) + (behind ? behind->slot : 0);
    const double ink = (before ? before->right : 0) + (behind ? behind->left : 0);
    strung.least.push_back(std::max(ink + air_along, before && behind ? picots.least_apart(k - 1) : 0));
    const bool beside_turning = (before && is_turning(*before)) || (behind && is_turning(*behind));
    const double least = before && behind ? strung.least.back() : 0;
    strung.wanted.push_back(beside_turning && before && behind ? least + turning_air
                                                               : std::max(room.slot * wanted / 2, least));
  }
}

void string_springs(const Fabric& fabric, const Course& course, const Footing& footing, const Pulls& pulls,
                    Strung& strung) {
  const std::size_t stands = course.stands.size();
  for (std::size_t i = 0; i < stands; ++i) {
    const Stand& stand = from_left(course, i);
    const Item& item = item_of(course, stand);
    const std::optional<double> base = !stand.column ? base_of(fabric, item, footing) : std::nullopt;
    strung.target.push_back(base.value_or(0));
    strung.pull.push_back(!base ? 0 : is_shaping(fabric, item) ? pulls.shaping : pulls.plain);
  }
}

/// Heads of stitches that cross stand in their own order over the places that these share.
void uncross(const Fabric& fabric, const Course& course, const Footing& footing, Strung& strung) {
  std::vector<Seat> seats(strung.target.size());
  for (std::size_t i = 0; i < seats.size(); ++i)
    if (strung.pull[i] > 0) seats[i] = seat_of(fabric, item_of(course, from_left(course, i)), footing);
  for (const Crossing& crossing : crossings_of(seats)) {
    std::vector<double> sorted;
    for (std::size_t i = crossing.first; i < crossing.end; ++i)
      if (seats[i].at) sorted.push_back(*seats[i].at);
    std::sort(sorted.begin(), sorted.end());
    for (std::size_t i = crossing.end; i-- > crossing.first;)
      if (seats[i].at) strung.target[i] = sorted.back(), sorted.pop_back();
  }
}

/// An edge closed flat ends where the line beneath has its middle: it stands over its places, and is not
/// spread along the line.
void stand_over_places(const Fabric& fabric, const Course& course, Strung& strung) {
  const std::vector<double>& target = strung.target;
  const bool flat =
      !course.items.empty() && closes_flat(fabric, fabric.stitches[course.items.front().first].round);
  if (!flat || target.empty() || strung.pull.front() == 0 || strung.pull.back() == 0) return;
  strung.wanted.front() = target.front(), strung.wanted.back() = strung.length - target.back();
  for (std::size_t k = 1; k < target.size(); ++k) strung.wanted[k] = target[k] - target[k - 1];
}

/// A line that nothing draws anywhere has its middle at 0.
void hold_the_middle(Strung& strung) {
  for (const double pull : strung.pull)
    if (pull > 0) return;
  double width = 0, reached = 0;
  const std::size_t items = strung.target.size();
  for (std::size_t k = 1; k < items; ++k) width += strung.wanted[k];
  for (std::size_t i = 0; i < items; ++i) {
    reached += i == 0 ? 0 : strung.wanted[i];
    strung.target[i] = reached - width / 2;
    strung.pull[i] = 1;
  }
}

} // namespace

Footing::Footing(const Fabric& fabric, std::uint32_t part, std::uint32_t owner) {
  const fabric::Part& worked = fabric.parts[part];
  const bool chain = worked.foundation != fabric::none;
  if (!chain && worked.rounds == 0) return;
  const std::uint32_t first = chain ? worked.foundation : worked.first_round;
  const fabric::Round& last =
      fabric.rounds[worked.rounds > 0 ? worked.first_round + worked.rounds - 1 : worked.foundation];
  first_ = fabric.rounds[owner != fabric::none ? owner : first].first_stitch;
  x_.assign(last.first_stitch + last.count - first_, 0);
  known_.assign(x_.size(), 0);
}

void Footing::put(StitchId stitch, double x) {
  if (stitch < first_ || stitch - first_ >= x_.size()) return;
  x_[stitch - first_] = x;
  known_[stitch - first_] = 1;
}

std::optional<double> Footing::at(StitchId stitch) const {
  if (stitch < first_ || stitch - first_ >= x_.size() || !known_[stitch - first_]) return std::nullopt;
  return x_[stitch - first_];
}

std::optional<double> base_of(const Fabric& fabric, const Item& item, const Footing& footing) {
  double sum = 0;
  int count = 0;
  const auto add = [&](StitchId stitch) {
    const std::optional<double> x = footing.at(stitch);
    if (x) sum += *x, ++count;
  };
  for (const fabric::Leg& leg : legs_of(fabric, item)) {
    if (is_stitch(leg.into)) add(leg.into.of);
    if (is_gap(leg.into)) add(before_gap(fabric, leg.into)), add(leg.into.of);
    if (leg.into.what != fabric::On::space || leg.into.of >= fabric.arches.size()) continue;
    const fabric::Arch& arch = fabric.arches[leg.into.of];
    for (std::uint32_t i = 0; i < arch.count; ++i) add(arch.first_chain + i);
  }
  return count > 0 ? std::optional(sum / count) : std::nullopt;
}

Seat seat_of(const Fabric& fabric, const Item& item, const Footing& footing) {
  Seat seat{base_of(fabric, item, footing)};
  const fabric::Legs legs = legs_of(fabric, item);
  if (legs.size() == 1 && is_stitch(legs.begin()->into)) seat.into = legs.begin()->into.of;
  return seat;
}

Stand stand_of(const Reach& ink, double slot, std::uint32_t item) {
  return {item, 1, std::max(0.0, 0 - ink.low.x), std::max(0.0, ink.high.x), slot, false};
}

double least_length(const Course& course) {
  double length = air_along;
  for (const Stand& stand : course.stands) length += stand.left + stand.right + air_along;
  return length;
}

void lay_course(const Fabric& fabric, const Footing& footing, const Room& room, Slate& slate,
                Course& course) {
  Strung& strung = course.strung;
  strung.length = room.length;
  strung.free_ends = room.free_ends;
  string_gaps(course, room, strung);
  string_springs(fabric, course, footing, room.pulls, strung);
  uncross(fabric, course, footing, strung);
  if (room.free_ends)
    fan_out_of_places(fabric, footing, room, course), hold_the_middle(strung);
  else
    spread_fans(fabric, course, room.slot, strung.target), stand_over_places(fabric, course, strung);
  std::vector<char> at_least;
  relax(strung, at_least, slate, course.at);
}

double stand_at(const Course& course, std::size_t stand) {
  return course.at[course.leftward ? course.at.size() - 1 - stand : stand];
}

void keep_places(const Fabric& fabric, const Ring& ring, const Course& course, const Room& room,
                 Footing& footing) {
  const StitchId onto_last =
      fabric.rounds[ring.last_round].first_stitch - fabric.rounds[ring.round].first_stitch;
  const double way = stitches_run_leftward(course) ? -1 : 1;
  for (std::size_t i = 0; i < course.stands.size(); ++i) {
    const Stand& stand = course.stands[i];
    const Item& item = course.items[stand.item];
    for (std::uint32_t j = 0; !stand.column && j < item.count; ++j) {
      const double aside = static_cast<double>(j) - (static_cast<double>(item.count) - 1) / 2;
      footing.put(item.first + j + onto_last, stand_at(course, i) + way * aside * room.slot);
    }
    for (std::uint32_t j = 0; stand.column && j < stand.items; ++j)
      footing.put(course.items[stand.item + j].first + onto_last, stand_at(course, i));
  }
}

} // namespace whorl::layout
