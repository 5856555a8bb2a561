#include "layout/by_place.hpp"

#include "layout/draw_near.hpp"
#include "layout/hold.hpp"
#include "layout/turn.hpp"

#include <algorithm>

namespace whorl::layout {
namespace {

using fabric::Fabric;

/// The moves of heads that would bring the feet that stand already into the cells of their places.
std::vector<Move> moves_of_heads(const std::vector<Foot>& feet, const Tops& heads,
                                 const std::vector<double>& inside_at, double scale, std::size_t items) {
  Leeways ways(items);
  for (const Foot& foot : feet) {
    const std::optional<Tops::Cell> cell = heads.cell_of(foot.into);
    if (!cell) continue;
    const double stands = foot.from_item + scale * middle_of(foot, inside_at), into = into_cell(*cell);
    const double sink = stands <= cell->low ? stands - cell->low - into : std::max(0.0, stands - cell->low);
    const double rise =
        stands >= cell->high ? stands - cell->high + into : std::min(0.0, stands - cell->high);
    const auto move = [&](const Head* one, const Head* other, double by, bool up) {
      const bool within = one != nullptr && other != nullptr && one->item == other->item;
      if (!within && by == 0) return;
      for (const Head* head : {one, other})
        if (head != nullptr && (within || (up ? by > 0 : by < 0)))
          up ? ways.rise(head->item, by) : ways.sink(head->item, by);
    };
    move(cell->before, cell->first, sink, false);
    move(cell->last, cell->behind, rise, true);
  }
  return ways.moves();
}

/// Bounds of items for what is asked of two heads side by side: that the middle between them, as near to the
/// one as to the other, is no higher, or no lower, than a foot.
class MiddleBounds {
public:
  MiddleBounds(const std::vector<double>& at, Bounds& bounds) : at_(at), bounds_(bounds) {}

  void sink(const Head* before, const Head* own, double to) { bind(before, own, to, false); }
  void rise(const Head* own, const Head* behind, double to) { bind(own, behind, to, true); }

private:
  void bind(const Head* one, const Head* other, double to, bool up) {
    if (one == nullptr || other == nullptr || one->at > other->at) return; // the gutter is between them
    const double both = one->far + other->far;
    const double sum = both * to - one->far * from_item(*one) - other->far * from_item(*other);
    if (one->item == other->item)
      up ? bounds_.rise(one->item, sum / both) : bounds_.sink(one->item, sum / both);
    else if (one->item + 1 == other->item)
      up ? bounds_.rise_with_before(other->item, {one->far, other->far}, sum)
         : bounds_.sink_with_before(other->item, {one->far, other->far}, sum);
  }

  double from_item(const Head& head) const { return head.at - at_[head.item]; }

  const std::vector<double>& at_;
  Bounds& bounds_;
};

/// Between which the items of a ring stand when their heads are by the feet that stand already.
Bounds bounds_of_heads(const std::vector<Foot>& feet, const Tops& heads, const std::vector<double>& inside_at,
                       double scale, const std::vector<double>& at) {
  Bounds bounds(at.size());
  MiddleBounds middles(at, bounds);
  for (const Foot& foot : feet) {
    const std::optional<Tops::Cell> cell = heads.cell_of(foot.into);
    if (!cell) continue;
    const double stands = foot.from_item + scale * middle_of(foot, inside_at), into = into_cell(*cell);
    middles.sink(cell->before, cell->first, stands - into);
    middles.rise(cell->last, cell->behind, stands + into);
  }
  return bounds;
}

/// What two rings look like to each other.
class Sight {
public:
  Sight(const Fabric& fabric, const RingPair& rings, const Turn& turn)
      : fabric_(fabric), rings_(rings), turn_(turn), turned_at_(inside_as_turned(rings)),
        feet_seen_(feet_seen(turn.inward ? rings.inside : rings.ring, turn)),
        tips_seen_(tips_seen(turn.inward ? rings.ring : rings.inside, turn)) {}

  bool draw(Laid& laid) const {
    return draw_to_places(fabric_, feet(laid.at), heads(laid.at), turn_, &rings_.inside_laid, laid);
  }
  void draw_nearer(Laid& laid) const {
    layout::draw_nearer(fabric_, feet(laid.at), heads(laid.at), turn_, &rings_.inside_laid, laid);
  }

  void find_feet() {
    feet_ = feet_of(fabric_, turn_.inward ? rings_.inside : rings_.ring, feet_seen_, radius());
  }

  Tops tops(const std::vector<double>& at) const {
    const Standing standing = heads(at);
    return Tops(fabric_, heads_of(fabric_, standing.ring, standing.at, tips_seen_, radius()),
                2 * pi * radius());
  }

  std::vector<Move> moves(const Tops& tops, const std::vector<double>& at) const {
    return turn_.inward ? moves_of_heads(feet_, tops, inside_at(), scale(), at.size())
                        : moves_of_feet(feet_, tops, at);
  }

  Bounds bounds(const Strung& strung, const std::vector<double>& at) const {
    if (turn_.inward) return bounds_of_heads(feet_, tops(at), inside_at(), scale(), at);
    Bounds bounds(at.size());
    bound_feet(feet_, tops(at), strung, at, bounds);
    return bounds;
  }

private:
  /// The ring with the feet, and that with the heads, when the outer one stands so.
  Standing feet(const std::vector<double>& at) const {
    return turn_.inward ? Standing{rings_.inside, inside_at(), feet_seen_}
                        : Standing{rings_.ring, at, feet_seen_};
  }
  Standing heads(const std::vector<double>& at) const {
    return turn_.inward ? Standing{rings_.ring, at, tips_seen_}
                        : Standing{rings_.inside, inside_at(), tips_seen_};
  }

  /// The places of the ring inside, counted from the gutter of the other; none where both gutters stand
  /// alike.
  static std::vector<double> inside_as_turned(const RingPair& rings) {
    if (rings.ring.size.turned == rings.inside.size.turned) return {};
    std::vector<double> at = rings.inside_laid.at;
    const double by = (rings.ring.size.turned - rings.inside.size.turned) * rings.inside.size.middle;
    for (double& one : at) one -= by;
    return at;
  }

  const std::vector<double>& inside_at() const {
    return turned_at_.empty() ? rings_.inside_laid.at : turned_at_;
  }

  double radius() const { return rings_.ring.size.middle; }
  double scale() const { return radius() / rings_.inside.size.middle; }

  const Fabric& fabric_;
  const RingPair& rings_;
  const Turn& turn_;
  std::vector<double> turned_at_;
  std::vector<Seen> feet_seen_, tips_seen_;
  std::vector<Foot> feet_;
};

} // namespace

bool hold_by_places(const Fabric& fabric, const RingPair& rings, const Turn& turn, Ends ends, Laid& laid) {
  if ((turn.inward ? rings.inside : rings.ring).ring.echo) return true;
  Sight sight(fabric, rings, turn);
  if (ends == Ends::yield) {
    sight.draw_nearer(laid);
    return true;
  }
  laid.plain = sight.draw(laid);
  if (laid.plain) return true;
  sight.find_feet();
  Bounds bounds = sight.bounds(laid.strung, laid.at);
  if (!bounds.fit(laid.strung)) return false;
  Tops tops = sight.tops(laid.at);
  const auto asked = [&] {
    if (turn.inward) tops = sight.tops(laid.at);
    return sight.moves(tops, laid.at);
  };
  if (!settle_by_places(asked, laid.strung, laid.at, laid.now_at_least))
    bounds.stand(laid.strung, laid.at), hold_there(laid.strung, laid.at);
  return true;
}

bool has_room_by_places(const Fabric& fabric, const RingPair& rings, const Turn& turn, Ends ends,
                        const std::vector<double>& at) {
  Sight sight(fabric, rings, turn);
  sight.find_feet();
  Strung strung;
  string_gaps(rings.ring.band, rings.ring.size, strung);
  return sight.bounds(strung, at).fit(strung, ends);
}

} // namespace whorl::layout
