#include "layout/oval_ring.hpp"

#include "layout/hold.hpp"
#include "layout/obstacles.hpp"
#include "layout/oval_label.hpp"
#include "layout/sign.hpp"
#include "layout/stand.hpp"
#include "layout/straight.hpp"
#include "layout/turn.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace whorl::layout {
namespace {

constexpr double air_along = 0.12;   ///< between neighbours
constexpr double least_air = 0.08;   ///< between any two inks
constexpr double air_across = 0.08;  ///< between the inks of a ring and the next
constexpr double label_air = 0.10;   ///< between labels
constexpr double label_aside = 0.30; ///< between a label and the stitches beside it
constexpr double least_slot = 0.96;
constexpr double fullness = 0.985;
constexpr double step = 0.02;
constexpr int most_steps = 2000, most_widenings = 30, most_turns = 3;
constexpr int steps_to_places = 60;    ///< a ring is pushed out further for all to stand by their places
constexpr double far_from_seat = 0.55; ///< half-way to the next
constexpr double pointer_side = 0.36;  ///< from a pointer's middle to the text beside it
constexpr double before_first = 0.30, behind_last = 0.45; ///< what the label takes of the round, at least
constexpr double chain_pitch = 0.72;                      ///< of chains one above the other
constexpr double dot_aside = 0.42; ///< from the middle of a starting chain to that of the dot
constexpr double dot_reach = 0.16;
constexpr double cut_from = 0.28, cut_to = 0.88, cut_side = 0.30; ///< the mark outside a last stitch

const SymbolExtent& shape_at(const OvalRing& ring, std::uint32_t item) {
  return *ring.band.shapes[ring.band.shape_of[item]];
}

double pitch_of(const OvalRing& ring, const Stand& column) {
  return std::max(chain_pitch, (ring.size.outer - ring.size.inner) / column.items);
}

/// The stand in which an item is; past the last: the dot.
std::size_t stand_with(const OvalRing& ring, std::uint32_t item) {
  const std::uint32_t chains = ring.stands.front().items;
  return item < chains ? 0 : item - chains + 1;
}

double before_of(const Stand& stand, Way way) { return way == Way::anticlockwise ? stand.right : stand.left; }
double behind_of(const Stand& stand, Way way) { return way == Way::anticlockwise ? stand.left : stand.right; }

class Fitting {
public:
  Fitting(const Extents& extents, const Stadium& stadium, const Around& around, OvalRing& ring)
      : extents_(extents), stadium_(stadium), around_(around), ring_(ring) {
    height_ = ring.band.height;
    if (ring.stands.front().column) height_ = std::max(height_, chain_pitch * ring.stands.front().items);
  }

  void fit() {
    int least = 0;
    while (least < most_steps && !fits(ring_.inner + least * step)) ++least;
    for (int i = least; !ring_.held && i < least + steps_to_places; i += 10)
      if (fits(ring_.inner + i * step) && ring_.held) return;
    most_only_ = !ring_.held;
    if (most_only_)
      while (!fits(ring_.inner + least * step) && least < most_steps) ++least;
  }

private:
  bool fits(double inner) {
    Size& size = ring_.size;
    size.inner = inner;
    size.outer = inner + height_;
    size.middle = middle_of(inner, height_);
    length_ = length_of(stadium_, size.middle);
    double slots = 0;
    for (const Stand& stand : ring_.stands) slots += stand.slot;
    size.slot = (length_ - before_first - behind_last) / std::max(1.0, slots);
    if (size.slot < least_slot || !clears_inside()) return false;
    begin();
    return clears_labels() && settles();
  }

  bool clears_inside() {
    Size& size = ring_.size;
    size.wedges.clear();
    size.low = size.inner;
    size.high = size.outer;
    const Turn turn{false, stadium_.way == Way::clockwise ? Hand::left : Hand::right};
    for (const SymbolExtent* shape : ring_.band.shapes) {
      size.wedges.push_back(wedge_of(*shape, foot_radius(*shape, size.inner, height_, turn), turn));
      size.low = std::min(size.low, size.wedges.back().low);
      size.high = std::max(size.high, size.wedges.back().high);
    }
    return size.low - ring_.band.room_at_feet >= around_.high + air_across;
  }

  bool clears_labels() {
    constexpr double furthest = 1.5, step_further = 0.25;
    ring_.label_further = 0;
    while (!clears_labels_here())
      if ((ring_.label_further += step_further) > furthest || !is_aside(ring_.lap)) return false;
    return true;
  }

  bool clears_labels_here() {
    std::vector<Convex> own = label_ink(ring_, stadium_);
    if (air_between(own, around_.labels, label_air) < label_air) return false;
    if (air_between(own, around_.stitches, label_air) < label_air) return false;
    labels_ = {};
    labels_.add(std::move(own)), labels_.add(around_.labels);
    return true;
  }

  /// Turns the ring on until its stitches ask for no more.
  void begin() {
    ring_.lap = square_to(stadium_, around_.begins, ring_.size.middle);
    for (int i = 0; i < most_turns; ++i) {
      string();
      ring_.lap.lead = std::clamp(ring_.lap.lead - asked_on(), 0 - stadium_.half, pi * ring_.lap.r);
    }
  }

  /// How much further on than it does the ring should stand.
  double asked_on() {
    ring_.at = relax(ring_.strung);
    double asked = 0, pull = 0;
    for (std::size_t i = 0; i < ring_.at.size(); ++i) {
      asked += ring_.strung.pull[i] * (ring_.strung.target[i] - ring_.at[i]);
      pull += ring_.strung.pull[i];
    }
    return pull > 0 ? asked / pull : 0;
  }

  /// Relaxes the ring, and where ink comes too near to other ink gives it more room.
  bool settles() {
    string();
    for (int i = 0; i < most_widenings; ++i) {
      double least = 0;
      for (const double gap : ring_.strung.least) least += gap;
      if (least > fullness * length_) return false;
      hold_near();
      ring_.held = hold_by_places();
      if (!widen()) return true;
    }
    return false;
  }

  void string() {
    Strung& strung = ring_.strung = {};
    strung.length = length_;
    const std::vector<Stand>& stands = ring_.stands;
    for (std::size_t k = 0; k <= stands.size(); ++k) {
      const Stand* before = k == 0 ? nullptr : &stands[k - 1];
      const Stand* behind = k == stands.size() ? nullptr : &stands[k];
      const double ink =
          (before ? behind_of(*before, stadium_.way) : 0) + (behind ? before_of(*behind, stadium_.way) : 0);
      const double slots = (before ? before->slot : 0) + (behind ? behind->slot : 0);
      strung.least.push_back(ink + air_along);
      strung.wanted.push_back(ring_.size.slot * slots / 2 + (!before   ? before_first
                                                             : !behind ? behind_last
                                                                       : 0));
    }
    for (std::size_t i = 0; i < stands.size(); ++i) {
      strung.target.push_back(carried(stadium_, seats_lap, ring_.wanted[i].value_or(0), ring_.lap));
      strung.pull.push_back(ring_.wanted[i] ? ring_.pull[i] : 0);
    }
    spread_fans();
  }

  /// What is worked side by side into one place shares it.
  void spread_fans() {
    for (std::size_t first = 0; first < ring_.stands.size();) {
      std::size_t last = first + 1;
      while (last < ring_.stands.size() && ring_.wanted[first] && ring_.wanted[first] == ring_.wanted[last])
        ++last;
      double width = 0;
      for (std::size_t i = first; i < last; ++i) width += ring_.stands[i].slot * ring_.size.slot;
      double reached = -width / 2;
      for (std::size_t i = first; i < last; ++i) {
        const double own = ring_.stands[i].slot * ring_.size.slot;
        ring_.strung.target[i] += reached + own / 2;
        reached += own;
      }
      first = last;
    }
  }

  /// Where stitches would slide off their seats, the springs are made stronger.
  void hold_near() {
    for (std::size_t i = 0; i < ring_.stands.size(); ++i)
      ring_.strung.pull[i] = ring_.wanted[i] ? ring_.pull[i] : 0;
    ring_.at = relax(ring_.strung);
    for (int i = 0; i < 6 && strays(); ++i) {
      for (double& pull : ring_.strung.pull) pull *= 2;
      ring_.at = relax(ring_.strung);
    }
  }

  bool hold_by_places() {
    std::vector<Head> heads = around_.heads;
    for (Head& head : heads) head.at = carried(stadium_, seats_lap, head.at, ring_.lap);
    const std::vector<Tops> rounds{Tops(*around_.fabric, std::move(heads), length_)};
    if (!most_only_) return hold_feet(ring_.feet, rounds, ring_.strung, ring_.at);
    ring_.not_held = hold_most_feet(ring_.feet, rounds, ring_.strung, ring_.at);
    return ring_.not_held == 0;
  }

  bool strays() const {
    for (std::size_t i = 0; i < ring_.at.size(); ++i)
      if (ring_.strung.pull[i] > 0 && std::abs(ring_.at[i] - ring_.strung.target[i]) > far_from_seat)
        return true;
    return false;
  }

  /// More room where ink is too near; whether any was missing.
  bool widen() {
    const std::size_t stands = ring_.stands.size();
    ink_.assign(stands, {});
    bool missing = false;
    for (std::size_t i = 0; i < stands; ++i) {
      for (const std::size_t next : {i + 1, i + 2})
        if (next < stands && !are_clear(i, next))
          missing |= add(next, least_air - air_between(ink_at(i), ink_at(next), least_air));
      if (is_clear_of_labels(i)) continue;
      missing |= add(2 * i >= stands ? stands : 0, label_aside - labels_.air_around(ink_at(i), label_aside));
    }
    return missing;
  }

  /// Whether something other than symbols of one slot stands there.
  bool has_more(std::size_t stand) const {
    const bool first = stand == 0, last = stand + 1 == ring_.stands.size();
    return ring_.stands[stand].column || (first && ring_.joined) || (last && ring_.cut);
  }

  /// Whether the room on their rays alone keeps the ink of two stands apart: the gap where it is narrowest,
  /// at the inner edge of an end.
  bool are_clear(std::size_t one, std::size_t other) const {
    if (has_more(one) || has_more(other)) return false;
    const double gap = ring_.at[other] - ring_.at[one], turned = gap / ring_.lap.r;
    const double narrowest = gap * ring_.size.low / ring_.lap.r * (1 - turned * turned / 24);
    const double ink =
        behind_of(ring_.stands[one], stadium_.way) + before_of(ring_.stands[other], stadium_.way);
    return narrowest - ink >= least_air;
  }

  bool is_clear_of_labels(std::size_t stand) const {
    if (has_more(stand)) return false;
    const Stand& it = ring_.stands[stand];
    const double up = (ring_.size.high + ring_.size.low) / 2 - ring_.lap.r;
    const double high = (ring_.size.high - ring_.size.low) / 2, wide = std::max(it.left, it.right);
    const Point middle =
        point_on(stadium_, ring_.lap, ring_.at[stand]) + up * outward(stadium_, ring_.lap, ring_.at[stand]);
    return !labels_.may_be_near(middle, std::sqrt(high * high + wide * wide) + label_aside);
  }

  bool add(std::size_t gap, double shortfall) {
    if (shortfall <= 1e-6) return false;
    ring_.strung.least[gap] = std::max(ring_.strung.least[gap], size_of(gap)) + shortfall + 0.01;
    return true;
  }

  double size_of(std::size_t gap) const {
    return (gap == ring_.at.size() ? length_ : ring_.at[gap]) - (gap == 0 ? 0 : ring_.at[gap - 1]);
  }

  const std::vector<Convex>& ink_at(std::size_t stand) {
    std::vector<Convex>& ink = ink_[stand];
    if (!ink.empty()) return ink;
    const Stand& it = ring_.stands[stand];
    for (std::uint32_t j = 0; j < it.items; ++j)
      add_ink(stood_on(extents_, stadium_, ring_, it.item + j), it.item + j, ink);
    if (stand == 0 && ring_.joined) {
      const auto dot = static_cast<std::uint32_t>(ring_.items.size() - 1);
      add_ink(stood_on(extents_, stadium_, ring_, dot), dot, ink);
    }
    if (stand + 1 == ring_.stands.size() && ring_.cut) add_cut(it.item, ink);
    return ink;
  }

  void add_ink(const Item& item, std::uint32_t number, std::vector<Convex>& ink) const {
    for (const Convex& piece : shape_at(ring_, number).ink) ink.push_back(stood(item, piece));
  }

  void add_cut(std::uint32_t number, std::vector<Convex>& ink) const {
    const Item item = stood_on(extents_, stadium_, ring_, number);
    const double low = item.height + cut_from, high = item.height + cut_to;
    ink.push_back(
        stood(item, Convex{{-cut_side, low}, {cut_side, low}, {cut_side, high}, {-cut_side, high}}));
  }

  const Extents& extents_;
  const Stadium& stadium_;
  const Around& around_;
  OvalRing& ring_;
  bool most_only_ = false; ///< not all have room by their own places
  double height_ = 0, length_ = 0;
  Obstacles labels_;
  std::vector<std::vector<Convex>> ink_; ///< of the stands, where it was asked for
};

} // namespace

void set_oval_stands(const Extents& extents, std::uint32_t chains, bool counting, Hand hand, OvalRing& ring) {
  if (chains > 0) ring.stands.push_back(column_of(extent(extents, ring.items.front().key), chains));
  if (chains > 0 && counting) ring.stands.front().slot = 1;
  const std::size_t end = ring.items.size() - (ring.joined ? 1 : 0);
  Reaches reaches;
  for (auto i = chains; i < end; ++i)
    ring.stands.push_back(stand_of(reaches.of(shape_at(ring, i)), ring.band.slot[ring.band.shape_of[i]], i));
  if (!ring.joined) return;
  Stand& first = ring.stands.front();
  double& side = hand == Hand::right ? first.right : first.left;
  side += first.column ? dot_aside + dot_reach - side : air_along + 2 * dot_reach;
}

void lay_oval_ring(const Extents& extents, const Stadium& stadium, const Around& around, OvalRing& ring) {
  Fitting(extents, stadium, around, ring).fit();
}

Item stood_on(const Extents& extents, const Stadium& stadium, const OvalRing& ring, std::uint32_t number) {
  Item item = ring.items[number];
  const SymbolExtent& plain = extent(extents, item.key);
  const Size& size = ring.size;
  const double centre = (size.inner + size.outer) / 2;
  const bool dot = ring.joined && number + 1 == ring.items.size();
  const std::size_t stand = dot ? 0 : stand_with(ring, number);
  const Stand& first = ring.stands.front();
  const double side = before_of(first, stadium.way);
  item.height = shape_at(ring, number).height;
  item.at = ring.at[stand] - (dot ? side - dot_reach : 0);
  item.up = outward(stadium, ring.lap, item.at);
  const auto on_ray = [&](double r) {
    return point_on(stadium, ring.lap, item.at) + (r - size.middle) * item.up;
  };
  if (dot) {
    const double high = first.column ? (first.items - 1) / 2.0 * pitch_of(ring, first) : 0;
    item.foot = on_ray(centre + high - plain.height / 2);
  } else if (ring.stands[stand].column) {
    const double high = (number - (first.items - 1) / 2.0) * pitch_of(ring, first);
    const Point middle = on_ray(centre + high);
    item.up = -1.0 * along(stadium, ring.lap, item.at);
    item.foot = middle - plain.height / 2 * item.up;
  } else {
    item.foot = on_ray(size.wedges[ring.band.shape_of[number]].foot);
  }
  return item;
}

} // namespace whorl::layout
