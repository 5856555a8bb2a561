#include "layout/rings.hpp"

#include "layout/ahead.hpp"
#include "layout/by_place.hpp"
#include "layout/stand.hpp"

#include <algorithm>
#include <utility>

namespace whorl::layout {
namespace {

using fabric::Fabric;

constexpr double first_further = 0.1, least_further = 0.04; ///< steps in which room is looked for
constexpr double most_further = 3;    ///< of a ring's own radius: further out there never is room
constexpr double dense_further = 0.1; ///< of it: one that must stand so much further out is dense in a place
constexpr double most_for_ends = 1.2; ///< all rings but a first, where but the gutter leaves no room …
constexpr std::size_t few_rings = 12; ///< … of a figure with no more than these …
constexpr std::size_t few_leaning = 24; ///< … or, where its gutter leans, than these
constexpr double most_aside = 0.55;     ///< radians: beyond it labels come to stand beside one another
constexpr double much_further = 1.2;    ///< where rings stand, it is worth looking ahead

/// Chains of a column that have no place of their own.
std::size_t chains_below(const Band& band) { return band.column.empty() ? 0 : band.column.size() - 1; }

/// Rings while they are laid.
class Laying {
public:
  Laying(const Fabric& fabric, bool open, const Turn& turn, Rungs& rungs, Core& core, Drawn& drawn)
      : fabric_(fabric), open_(open), turn_(turn), rungs_(rungs), core_(core), drawn_(drawn) {}

  void lay() {
    lay_all();
    if (ends_ == Ends::hold && pushed_out() > much_further && rungs_.bands.front().wants.empty())
      lay_looking_ahead();
  }

  void stand() {
    make_room();
    turn_upright();
    for (std::size_t i = 0; i < rungs_.bands.size(); ++i) {
      Ring& ring = drawn_.figure.rings[i];
      ring.first_item = static_cast<std::uint32_t>(drawn_.figure.items.size());
      ring.turned = drawn_.sizes[i].turned;
      set_size(drawn_.sizes[i], rungs_.bands[i], ring);
      stand_ring(fabric_, rungs_.items[i], rungs_.bands[i], drawn_.sizes[i], drawn_.laid[i].at, turn_,
                 drawn_.figure);
      ring.items = static_cast<std::uint32_t>(drawn_.figure.items.size()) - ring.first_item;
    }
  }

private:
  void lay_all() {
    drawn_.sizes = size_rings(rungs_.bands, core_, open_, turn_);
    drawn_.held = true;
    ends_ = Ends::hold;
    for_ends_ = {};
    bool pushed = false;
    for (std::size_t i = 0; i < rungs_.bands.size(); ++i) {
      if (pushed) drawn_.sizes[i] = size_further(i, 0);
      if (lay_by_places(i)) continue;
      const bool by_ends = has_room(i, 0, Ends::yield);
      const double further = further_for(i, most_for(i, by_ends));
      pushed = pushed || further > 0 || by_ends;
      if (by_ends && further == 0)
        i = yield_from(i) - 1;
      else if (further > 0)
        push_out(i, further, by_ends);
      else {
        lay_ring(i, drawn_.sizes[i], Ends::yield, drawn_.laid[i]);
        drawn_.held = false;
      }
    }
    find_plain_rings();
    if (yields_in_many()) return;
    for (const Laid& laid : drawn_.laid) drawn_.held = drawn_.held && laid.plain;
  }

  /// The feet are those of a ring laid outward, inward those of the ring inside it.
  void find_plain_rings() {
    std::vector<char>& plain = drawn_.plain;
    plain.assign(drawn_.laid.size(), drawn_.held);
    for (std::size_t i = 0; i < plain.size(); ++i)
      if (!drawn_.laid[i].plain) plain[turn_.inward && i > 0 ? i - 1 : i] = 0;
  }

  /// Whether it is a disc of very many rings, more than any sheet shows in a size to be worked from, whose
  /// gutter cannot lean as far as they ask: its last stitches stand where they can.
  bool yields_in_many() const { return ends_ == Ends::yield && !has_few_rings(); }

  bool has_few_rings() const {
    const bool leans = std::any_of(drawn_.sizes.begin(), drawn_.sizes.end(),
                                   [](const Size& size) { return size.turned != 0; });
    return rungs_.bands.size() <= (leans ? few_leaning : few_rings);
  }

  /// How much further out a ring may stand. Once one of them is dense in a place, near the gutter or not, all
  /// stand as far out as they must.
  double most_for(std::size_t i, bool by_ends) {
    const double most = most_further * drawn_.sizes[i].outer;
    if (!by_ends || dense_) return most;
    const bool is_first = for_ends_.further == 0, few = has_few_rings();
    const double dense = dense_further * drawn_.sizes[i].outer;
    dense_ = (is_first || few) && !has_room(i, dense, Ends::hold) && has_room(i, most, Ends::hold);
    if (dense_) return most;
    if (!few) return 0;
    return is_first ? std::max(most_for_ends, dense) : most_for_ends - for_ends_.further;
  }

  /// From the first ring on that stands further out for the gutter alone, at the latest from this, rings
  /// yield to it, where each would have to stand further out than the one before. Returns where laying goes
  /// on.
  std::size_t yield_from(std::size_t i) {
    ends_ = Ends::yield;
    drawn_.held = drawn_.held && yields_in_many();
    const std::size_t first = for_ends_.further > 0 ? for_ends_.first : i;
    for (std::size_t k = first; k < i; ++k) rungs_.bands[k].further = 0;
    return first;
  }

  /// Lays all once more, so that rings leave room for what stands on them; if that is no smaller, it is
  /// undone.
  void lay_looking_ahead() {
    const std::vector<double> furthers = take_furthers();
    const std::vector<Size> sizes = drawn_.sizes;
    const std::vector<Laid> laid = drawn_.laid;
    look_ahead(fabric_, drawn_.figure.rings, sizes, turn_, rungs_);
    lay_all();
    if (drawn_.sizes.back().outer < sizes.back().outer) return;
    for (std::size_t i = 0; i < rungs_.bands.size(); ++i)
      rungs_.bands[i].wants.clear(), rungs_.bands[i].further = furthers[i];
    drawn_.sizes = sizes, drawn_.laid = laid;
  }

  double pushed_out() const {
    double sum = 0;
    for (const Band& band : rungs_.bands) sum += band.further;
    return sum;
  }

  std::vector<double> take_furthers() {
    std::vector<double> taken;
    for (Band& band : rungs_.bands) taken.push_back(std::exchange(band.further, 0));
    return taken;
  }

  RingLaid ring(std::size_t i, const Size& size) const {
    return {drawn_.figure.rings[i], rungs_.items[i], rungs_.bands[i], size};
  }

  RingPair beside(std::size_t i, const RingLaid& inside, const RingLaid& ring) const {
    return {inside, drawn_.laid[i - 1], ring};
  }

  /// Turns all so that the gutter, where it leans, leans to both sides of 12 o'clock alike, but that the
  /// label outermost stands above the one inside it.
  void turn_upright() {
    double low = 0, high = 0;
    for (const Size& size : drawn_.sizes)
      low = std::min(low, size.turned), high = std::max(high, size.turned);
    turn_all(-(low + high) / 2);
    const double last = pointer_angle(drawn_.sizes.back());
    turn_all(std::clamp(last, -most_aside, most_aside) - last);
  }

  void turn_all(double by) {
    for (Size& size : drawn_.sizes) size.turned += by;
  }

  double turn_for(std::size_t i) const {
    if (i == 0) return 0;
    const Size& size = drawn_.sizes[i];
    const Ring &ring = drawn_.figure.rings[i], &inside = drawn_.figure.rings[i - 1];
    if (ring.owner || inside.owner || ring.against || inside.against || size.tall || drawn_.sizes[i - 1].tall)
      return drawn_.sizes[i - 1].turned;
    const double turned = turn_of(rungs_.bands[i], size, seats_);
    return std::clamp(turned, -rungs_.most_turned, rungs_.most_turned);
  }

  /// Whether a ring of this size has room for all by their places.
  bool lay_ring(std::size_t i, const Size& size, Ends ends, Laid& laid) const {
    const Laid* inside = i > 0 ? &drawn_.laid[i - 1] : nullptr;
    layout::lay_ring(fabric_, rungs_.items[i], rungs_.bands[i], size, seats_, turn_, inside, laid);
    return i == 0 || hold_by_places(fabric_, beside(i, ring(i - 1, drawn_.sizes[i - 1]), ring(i, size)),
                                    turn_, ends, laid);
  }

  /// Lays a ring; whether it is by its places.
  bool lay_by_places(std::size_t i) {
    drawn_.laid.resize(i);
    if (i > 0)
      find_seats_inside(i - 1);
    else
      seats_ = {};
    find_wanted(fabric_, drawn_.figure.rings[i], rungs_.items[i], turn_, seats_);
    drawn_.sizes[i].turned = turn_for(i);
    Laid laid;
    if (i > 0) hand_on(rungs_.keep_problems, drawn_.laid[i - 1], laid);
    const bool held = lay_ring(i, drawn_.sizes[i], ends_, laid);
    drawn_.laid.push_back(std::move(laid));
    return held;
  }

  /// How much further out a ring must stand; 0: there is no room before `most`.
  double further_for(std::size_t i, double most) {
    double low = 0, high = first_further;
    while (high < most && !has_room(i, high, ends_)) low = high, high *= 2;
    if (high >= most) return 0;
    while (high - low > least_further + high / 16) {
      const double half = (low + high) / 2;
      (has_room(i, half, ends_) ? high : low) = half;
    }
    return high;
  }

  Size size_further(std::size_t i, double further) {
    Band& band = rungs_.bands[i];
    const double before = band.further;
    band.further += further;
    Size size = size_ring(rungs_.bands[i - 1], drawn_.sizes[i - 1], band, turn_);
    size.turned = drawn_.sizes[i].turned;
    band.further = before;
    return size;
  }

  bool has_room(std::size_t i, double further, Ends ends) {
    const Size size = size_further(i, further);
    std::vector<double> at = drawn_.laid[i].at;
    for (double& one : at) one *= size.middle / drawn_.sizes[i].middle;
    return has_room_by_places(fabric_, beside(i, ring(i - 1, drawn_.sizes[i - 1]), ring(i, size)), turn_,
                              ends, at);
  }

  void push_out(std::size_t i, double further, bool by_ends) {
    if (by_ends && for_ends_.further == 0) for_ends_.first = i;
    if (by_ends) for_ends_.further += further;
    drawn_.sizes[i] = size_further(i, further);
    rungs_.bands[i].further += further;
    lay_ring(i, drawn_.sizes[i], ends_, drawn_.laid[i]);
  }

  void find_seats_inside(std::size_t i) {
    const fabric::Round& outside = fabric_.rounds[drawn_.figure.rings[i + 1].last_round];
    find_seats(fabric_, drawn_.figure.rings[i], rungs_.items[i], rungs_.bands[i], drawn_.sizes[i],
               drawn_.laid[i].at, turn_, outside, seats_);
  }

  static void set_size(const Size& size, const Band& band, Ring& ring) {
    ring.inner = size.inner;
    ring.outer = size.outer;
    ring.middle = size.middle;
    ring.last_before_break = band.break_outside;
  }

  /// Keeps the figure's lists from growing bit by bit.
  void make_room() {
    std::size_t items = 0;
    for (const std::vector<Item>& ring : rungs_.items) items += ring.size();
    for (const Band& band : rungs_.bands) items += chains_below(band);
    drawn_.figure.items.reserve(items);
    drawn_.figure.feet.reserve(items + items / 4);
    drawn_.figure.tips.reserve(items + items / 4);
  }

  const Fabric& fabric_;
  bool open_;
  Turn turn_;
  Rungs& rungs_;
  Core& core_;
  Drawn& drawn_;
  Seats seats_; ///< that the ring inside the one being laid offers
  Ends ends_ = Ends::hold;
  struct ForEnds {
    std::size_t first = 0; ///< the first ring that stands further out for the gutter alone
    double further = 0;    ///< how much all do
  };
  ForEnds for_ends_;
  bool dense_ = false; ///< it is no plain disc
};

} // namespace

void lay_rings(const Fabric& fabric, bool open, const Turn& turn, Rungs& rungs, Core& core, Drawn& drawn) {
  Laying laying(fabric, open, turn, rungs, core, drawn);
  laying.lay();
  laying.stand();
}

} // namespace whorl::layout
