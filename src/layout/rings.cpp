#include "layout/rings.hpp"

#include "layout/by_place.hpp"
#include "layout/stand.hpp"

#include <algorithm>

namespace whorl::layout {
namespace {

using fabric::Fabric;

constexpr double first_further = 0.1, least_further = 0.04, most_further = 1.2;

/// Chains of a column that have no place of their own.
std::size_t chains_below(const Band& band) { return band.column.empty() ? 0 : band.column.size() - 1; }

/// Rings while they are laid.
class Laying {
public:
  Laying(const Fabric& fabric, bool open, const Turn& turn, Rungs& rungs, Core& core, Drawn& drawn)
      : fabric_(fabric), open_(open), turn_(turn), rungs_(rungs), core_(core), drawn_(drawn) {}

  void lay() {
    size();
    for (std::size_t i = 0; i < rungs_.bands.size(); ++i) {
      const double further = lay_by_places(i);
      if (further > 0) push_out(i, further);
    }
  }

  void stand() {
    make_room();
    for (std::size_t i = 0; i < rungs_.bands.size(); ++i) {
      Ring& ring = drawn_.figure.rings[i];
      ring.first_item = static_cast<std::uint32_t>(drawn_.figure.items.size());
      set_size(drawn_.sizes[i], rungs_.bands[i], ring);
      stand_ring(fabric_, rungs_.items[i], rungs_.bands[i], drawn_.sizes[i], drawn_.laid[i].at, turn_,
                 drawn_.figure);
    }
  }

private:
  void size() { drawn_.sizes = size_rings(rungs_.bands, core_, open_, turn_); }

  RingLaid ring(std::size_t i, const Size& size) const {
    return {drawn_.figure.rings[i], rungs_.items[i], rungs_.bands[i], size};
  }

  /// Whether a ring of this size has room for all by their places.
  bool lay_ring(std::size_t i, const Size& size, Laid& laid) const {
    const Laid* inside = i > 0 ? &drawn_.laid[i - 1] : nullptr;
    laid = layout::lay_ring(fabric_, drawn_.figure.rings[i], rungs_.items[i], rungs_.bands[i], size, seats_,
                            turn_, inside);
    return i == 0 ||
           hold_by_places(fabric_, ring(i - 1, drawn_.sizes[i - 1]), inside->at, ring(i, size), turn_, laid);
  }

  /// Lays a ring; how much further out it must stand, 0: it is by its places, or never will be.
  double lay_by_places(std::size_t i) {
    drawn_.laid.resize(i);
    seats_ = i > 0 ? seats_inside(i - 1) : Seats{};
    Laid laid;
    const bool held = lay_ring(i, drawn_.sizes[i], laid);
    drawn_.laid.push_back(std::move(laid));
    return held ? 0 : further_for(i);
  }

  double further_for(std::size_t i) {
    double low = 0, high = first_further;
    while (high < most_further && !has_room(i, high)) low = high, high *= 2;
    if (high >= most_further) return 0;
    while (high - low > least_further + high / 16) {
      const double half = (low + high) / 2;
      (has_room(i, half) ? high : low) = half;
    }
    return high;
  }

  Size size_further(std::size_t i, double further) {
    Band& band = rungs_.bands[i];
    const double before = band.further;
    band.further += further;
    const Size size = size_ring(rungs_.bands[i - 1], drawn_.sizes[i - 1], band, turn_);
    band.further = before;
    return size;
  }

  bool has_room(std::size_t i, double further) {
    Laid laid;
    return lay_ring(i, size_further(i, further), laid);
  }

  void push_out(std::size_t i, double further) {
    rungs_.bands[i].further += further;
    for (std::size_t k = i; k < drawn_.sizes.size(); ++k)
      drawn_.sizes[k] = size_ring(rungs_.bands[k - 1], drawn_.sizes[k - 1], rungs_.bands[k], turn_);
    lay_ring(i, drawn_.sizes[i], drawn_.laid[i]);
  }

  Seats seats_inside(std::size_t i) const {
    const fabric::Round& outside = fabric_.rounds[drawn_.figure.rings[i + 1].last_round];
    return seats_of(fabric_, drawn_.figure.rings[i], rungs_.items[i], rungs_.bands[i], drawn_.sizes[i],
                    drawn_.laid[i].at, turn_, &outside);
  }

  static void set_size(const Size& size, const Band& band, Ring& ring) {
    ring.inner = size.inner;
    ring.outer = size.outer;
    ring.middle = size.middle;
    ring.last_before_break = band.break_outside;
    ring.items = static_cast<std::uint32_t>(band.shape_of.size() + chains_below(band));
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
};

} // namespace

void lay_rings(const Fabric& fabric, bool open, const Turn& turn, Rungs& rungs, Core& core, Drawn& drawn) {
  Laying laying(fabric, open, turn, rungs, core, drawn);
  laying.lay();
  laying.stand();
}

} // namespace whorl::layout
