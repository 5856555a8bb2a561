#include "layout/lay.hpp"

#include "layout/items.hpp"
#include "layout/turn.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

namespace whorl::layout {
namespace {

using fabric::Fabric;
using fabric::StitchId;

constexpr double plain_pull = 0.08;
constexpr double shaping_pull = 4 * plain_pull; ///< of increases and decreases
constexpr double far_from_seat = 0.42;          ///< of the space between two seats
constexpr double crowded = 1.4; ///< slots: where some stitches stand off their seats so much more than others

std::optional<double> seat_of(const Seats& seats, StitchId stitch) {
  const std::size_t at = stitch - seats.first;
  if (stitch < seats.first || at >= seats.given.size() || seats.given[at] == 0) return std::nullopt;
  return seats.sum[at] / seats.given[at];
}

/// The mean of some seats.
struct Mean {
  double sum = 0;
  std::uint32_t count = 0;

  void add(std::optional<double> value) {
    if (value) sum += *value, ++count;
  }
  std::optional<double> value() const { return count > 0 ? std::optional(sum / count) : std::nullopt; }
};

/// Outward an item is joined to what its legs go into, inward by its own tops.
std::optional<double> wanted_seat(const Fabric& fabric, const Ring& ring, const Item& item,
                                  const Seats& seats, const Turn& turn) {
  Mean mean;
  if (turn.inward) {
    const StitchId onto_last =
        fabric.rounds[ring.last_round].first_stitch - fabric.rounds[ring.round].first_stitch;
    for (StitchId i = 0; i < item.count; ++i) mean.add(seat_of(seats, item.first + i + onto_last));
  } else {
    for (const fabric::Leg& leg : legs_of(fabric, item))
      if (is_stitch(leg.into))
        mean.add(seat_of(seats, leg.into.of));
      else if (is_gap(leg.into))
        mean.add(seat_of(seats, before_gap(fabric, leg.into))), mean.add(seat_of(seats, leg.into.of));
  }
  return mean.value();
}

} // namespace

void find_wanted(const Fabric& fabric, const Ring& ring, const std::vector<Item>& items, const Turn& turn,
                 Seats& seats) {
  seats.wanted.clear();
  for (const Item& item : items) seats.wanted.push_back(wanted_seat(fabric, ring, item, seats, turn));
}

namespace {

void spread_fan(const Band& band, std::size_t first, std::size_t last, double slot,
                std::vector<double>& target) {
  double width = 0;
  for (std::size_t i = first; i < last; ++i) width += slot_of(band, i);
  double reached = -width / 2;
  for (std::size_t i = first; i < last; ++i) {
    const double own = slot_of(band, i);
    target[i] += (reached + own / 2) * slot;
    reached += own;
  }
}

void spread_fans(const Fabric& fabric, const std::vector<Item>& items, const Band& band, const Size& size,
                 std::vector<double>& target) {
  for (std::size_t first = 0; first < items.size();) {
    std::size_t last = first + 1;
    while (last < items.size() && shares_place(fabric, items[first], items[last])) ++last;
    if (last > first + 1) spread_fan(band, first, last, size.slot, target);
    first = last;
  }
}

} // namespace

void string_gaps(const Band& band, const Size& size, Strung& strung) {
  strung.length = 2 * pi * size.middle;
  const std::size_t items = band.shape_of.size();
  begin_anew(items, strung);
  const auto slot = [&](std::size_t i) { return slot_of(band, i); };
  const auto wedge = [&](std::size_t i) -> const Wedge& { return size.wedges[band.shape_of[i]]; };
  for (std::size_t k = 0; k <= items; ++k) {
    const double before = k == 0 ? 0 : slot(k - 1) / 2, behind = k == items ? 0 : slot(k) / 2;
    const bool beside_gutter = k == 0 || k == items;
    strung.wanted.push_back(size.slot * (before + behind) + (beside_gutter ? size.half_gutter : 0));
    if (k == 0)
      strung.least.push_back(size.middle * size.from_gutter);
    else if (k == items)
      strung.least.push_back(size.middle * size.to_gutter);
    else
      strung.least.push_back(size.middle * (wedge(k - 1).after + wedge(k).before) + size.air);
  }
}

namespace {

double open_arc(const Size& size) { return 2 * pi * size.middle - 2 * size.half_gutter; }

/// Where a seat lies along a ring that is turned as the one that offers it.
double place_of(double seat, const Size& size) { return size.half_gutter + seat * open_arc(size); }

void string_springs(const Fabric& fabric, const std::vector<Item>& items, const Size& size,
                    const Seats& seats, Strung& strung) {
  const double turned = (size.turned - seats.turned) * size.middle;
  for (std::size_t i = 0; i < items.size(); ++i) {
    const std::optional<double> seat = seats.wanted[i];
    strung.target.push_back(place_of(seat.value_or(0), size) - turned);
    strung.pull.push_back(!seat ? 0 : is_shaping(fabric, items[i]) ? shaping_pull : plain_pull);
  }
}

bool strays(const Laid& laid, double limit) {
  for (std::size_t i = 0; i < laid.at.size(); ++i)
    if (laid.strung.pull[i] > 0 && std::abs(laid.at[i] - laid.strung.target[i]) > limit) return true;
  return false;
}

/// Guesses the gaps that come to stand at their least from those of the ring inside, when it had been drawn
/// to its places as often. Where it was not, they are left as they are.
void guess_at_least(const Laid* inside, Laid& laid) {
  const Strung& strung = laid.strung;
  const std::size_t items = strung.target.size();
  if (inside == nullptr || inside->drawn < laid.drawn || inside->at_least.empty()) return;
  laid.now_at_least.resize(items + 1);
  const double scale = inside->strung.length / strung.length;
  std::size_t there = 0;
  for (std::size_t k = 0; k <= items; ++k) {
    const double from = k == 0 ? 0 : strung.target[k - 1], to = k == items ? strung.length : strung.target[k];
    const double middle = (from + to) / 2 * scale;
    while (there < inside->at.size() && inside->at[there] < middle) ++there;
    laid.now_at_least[k] = (inside->at_least[there] >> laid.drawn & 1) != 0;
  }
}

void note_at_least(Laid& laid) {
  laid.at_least.resize(laid.now_at_least.size(), 0);
  for (std::size_t k = 0; k < laid.at_least.size(); ++k)
    laid.at_least[k] =
        static_cast<std::uint8_t>(laid.at_least[k] | (laid.now_at_least[k] != 0) << laid.drawn);
}

void relax(Laid& laid) { relax(laid.strung, laid.now_at_least, laid.slate, laid.at); }

/// Lets a ring settle with springs twice as strong so many times; whether that holds it on its seats.
class Settling {
public:
  Settling(Laid& laid, double limit) : laid_(laid), limit_(limit) {}

  bool holds(int doubled) {
    const double stronger = std::ldexp(1.0, doubled - laid_.doubled);
    for (double& pull : laid_.strung.pull) pull *= stronger;
    laid_.doubled = doubled;
    relax(laid_);
    return !strays(laid_, limit_);
  }

private:
  Laid& laid_;
  double limit_;
};

/// A round whose increases crowd in one place would slide off its seats: there the springs are made stronger.
/// Mostly as often as for the ring inside it, so that is tried first.
void settle(Laid& laid, double limit, int inside) {
  constexpr int most = 6;
  Settling settling(laid, limit);
  bool holds = settling.holds(std::max(0, inside - 1));
  while (holds && laid.doubled > 0) holds = settling.holds(laid.doubled - 1);
  while (!holds && laid.doubled < most) holds = settling.holds(laid.doubled + 1);
}

} // namespace

void relax_drawn(const Laid* inside, Laid& laid) {
  ++laid.drawn;
  guess_at_least(inside, laid);
  relax(laid);
  note_at_least(laid);
}

void hand_on(bool keeps_problem, Laid& inside, Laid& laid) {
  std::swap(inside.slate, laid.slate);
  std::swap(inside.now_at_least, laid.now_at_least);
  if (!keeps_problem) hand_on(inside.strung, laid.strung);
}

void lay_ring(const Fabric& fabric, const std::vector<Item>& items, const Band& band, const Size& size,
              const Seats& seats, const Turn& turn, const Laid* inside, Laid& laid) {
  laid.doubled = laid.drawn = 0;
  laid.plain = true;
  laid.at_least.clear(), laid.now_at_least.clear();
  string_gaps(band, size, laid.strung);
  string_springs(fabric, items, size, seats, laid.strung);
  if (!turn.inward) spread_fans(fabric, items, band, size, laid.strung.target);
  const double seat_width =
      open_arc(size) / static_cast<double>(std::max<std::size_t>(1, seats.given.size()));
  guess_at_least(inside, laid);
  settle(laid, far_from_seat * seat_width, inside != nullptr ? inside->doubled : 0);
  note_at_least(laid);
}

double turn_of(const Band& band, const Size& size, const Seats& seats) {
  double even = size.half_gutter, least = 1e9, most = -1e9;
  for (std::size_t i = 0; i < seats.wanted.size(); ++i) {
    const double half = slot_of(band, i) * size.slot / 2;
    even += half;
    const std::optional<double> seat = seats.wanted[i];
    const double off = place_of(seat.value_or(0), size) - even;
    if (seat) least = std::min(least, off), most = std::max(most, off);
    even += half;
  }
  const bool alike = least <= most && most - least < crowded * size.slot;
  return seats.turned + (alike ? (least + most) / 2 / size.middle : 0);
}

namespace {

void give(Seats& seats, StitchId stitch, double at) {
  const std::size_t place = stitch - seats.first;
  if (stitch < seats.first || place >= seats.given.size()) return;
  seats.sum[place] += at;
  ++seats.given[place];
}

void begin_seats(const fabric::Round& round, Seats& seats) {
  seats.first = round.first_stitch;
  seats.sum.assign(round.count, 0), seats.given.assign(round.count, 0);
}

/// The different stitches that an item's legs go into.
void find_bases(const Fabric& fabric, const Item& item, std::vector<StitchId>& bases) {
  bases.clear();
  for (const fabric::Leg& leg : legs_of(fabric, item))
    if (is_stitch(leg.into) && std::find(bases.begin(), bases.end(), leg.into.of) == bases.end())
      bases.push_back(leg.into.of);
}

double side_by_side(std::size_t place, std::size_t places) {
  return static_cast<double>(place) - (static_cast<double>(places) - 1) / 2;
}

} // namespace

void find_seats(const Fabric& fabric, const Ring& ring, const std::vector<Item>& items, const Band& band,
                const Size& size, const std::vector<double>& at, const Turn& turn,
                const fabric::Round& outside, Seats& seats) {
  begin_seats(turn.inward ? outside : fabric.rounds[ring.last_round], seats);
  seats.turned = size.turned;
  const double open = open_arc(size);
  const StitchId onto_last =
      fabric.rounds[ring.last_round].first_stitch - fabric.rounds[ring.round].first_stitch;
  std::vector<StitchId> joined;
  joined.reserve(8);
  for (std::size_t i = 0; i < items.size(); ++i) {
    joined.clear();
    if (i == 0 && !turn.inward)
      for (std::size_t j = 0; j + 1 < band.column.size(); ++j)
        give(seats, band.column[j].first + onto_last, (at[i] - size.half_gutter) / open);
    if (turn.inward)
      find_bases(fabric, items[i], joined);
    else
      for (StitchId j = 0; j < items[i].count; ++j) joined.push_back(items[i].first + j + onto_last);
    if (ring.against) std::reverse(joined.begin(), joined.end());
    for (std::size_t j = 0; j < joined.size(); ++j)
      give(seats, joined[j], (at[i] + side_by_side(j, joined.size()) * size.slot - size.half_gutter) / open);
  }
}

} // namespace whorl::layout
