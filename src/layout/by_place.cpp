#include "layout/by_place.hpp"

#include "layout/items.hpp"
#include "layout/own_place.hpp"
#include "layout/turn.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace whorl::layout {
namespace {

using fabric::Fabric;

constexpr int most_times = 8;
constexpr double strongest = 16; ///< spring, of one between neighbours
constexpr std::size_t most_held = 60; ///< more items are drawn to their places and not held

/// Points of a symbol seen from the middle of the disc: angles from its ray, in order of work, and how far
/// out.
struct Seen {
  std::vector<double> angle, far;
};

Seen seen_from_middle(std::vector<Point> points, Point otherwise, double foot, bool against,
                      const Turn& turn) {
  if (points.empty()) points.push_back(otherwise);
  const double side = turn.hand == Hand::right ? -1 : 1;
  std::stable_sort(points.begin(), points.end(),
                   [side](Point a, Point b) { return side * a.x < side * b.x; });
  if (against) std::reverse(points.begin(), points.end());
  Seen seen;
  for (const Point p : points) {
    const double across = turn.inward ? foot - p.y : foot + p.y;
    seen.far.push_back(std::sqrt(across * across + p.x * p.x));
    seen.angle.push_back(arc_sine(side * p.x / std::max(seen.far.back(), 1e-9)));
  }
  return seen;
}

/// What all symbols of a ring look like from the middle.
struct Looks {
  std::vector<Seen> feet, tips;
};

Looks looks_of(const RingLaid& laid, const Turn& turn) {
  Looks looks;
  for (std::size_t i = 0; i < laid.band.shapes.size(); ++i) {
    const SymbolExtent& shape = *laid.band.shapes[i];
    const double foot = laid.size.wedges[i].foot;
    looks.feet.push_back(seen_from_middle(shape.feet, {0, 0}, foot, laid.band.against, turn));
    looks.tips.push_back(seen_from_middle(shape.tips, {0, shape.height}, foot, laid.band.against, turn));
  }
  return looks;
}

/// The heads of a ring as they stand, counted along a contour of this radius.
std::vector<Head> heads_of(const Fabric& fabric, const RingLaid& laid, const std::vector<double>& at,
                           const Looks& looks, double radius) {
  std::vector<Head> heads;
  const fabric::StitchId onto_last =
      fabric.rounds[laid.ring.last_round].first_stitch - fabric.rounds[laid.ring.round].first_stitch;
  for (std::size_t i = 0; i < laid.items.size(); ++i) {
    const Seen& tips = looks.tips[laid.band.shape_of[i]];
    for (std::uint32_t j = 0; j < laid.items[i].count; ++j) {
      const std::size_t tip = std::min<std::size_t>(j, tips.angle.size() - 1);
      heads.push_back({radius * (at[i] / laid.size.middle + tips.angle[tip]), tips.far[tip],
                       laid.items[i].first + j + onto_last, i});
    }
  }
  return heads;
}

std::vector<Foot> feet_of(const Fabric& fabric, const RingLaid& laid, const Looks& looks, double radius) {
  std::vector<std::vector<double>> arcs;
  for (const Seen& feet : looks.feet) {
    arcs.push_back(feet.angle);
    for (double& arc : arcs.back()) arc *= radius;
  }
  std::vector<const std::vector<double>*> from_ray;
  for (const std::uint32_t shape : laid.band.shape_of) from_ray.push_back(&arcs[shape]);
  return layout::feet_of(fabric, laid.items, from_ray);
}

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

/// A head as seen from the middle, and which of its ring's items it belongs to.
struct SeenHead {
  double angle = 0, far = 1;
  std::size_t item = 0;
};

/// The heads of a ring, in the order of its round's stitches; none where some are no plain places.
std::vector<SeenHead> plain_heads(const Fabric& fabric, const RingLaid& laid, const std::vector<double>& at,
                                  const Looks& looks) {
  const fabric::Round& round = fabric.rounds[laid.ring.round];
  std::vector<SeenHead> heads(round.count);
  std::size_t known = 0;
  for (std::size_t i = 0; i < laid.items.size(); ++i) {
    const Item& item = laid.items[i];
    if ((fabric.stitches[item.first].flags & fabric::counts) == 0) return {};
    const Seen& tips = looks.tips[laid.band.shape_of[i]];
    for (std::uint32_t j = 0; j < item.count; ++j) {
      const std::size_t place = item.first + j - round.first_stitch;
      const std::size_t tip = std::min<std::size_t>(j, tips.angle.size() - 1);
      if (place >= heads.size()) return {};
      heads[place] = {at[i] / laid.size.middle + tips.angle[tip], tips.far[tip], i};
      ++known;
    }
  }
  if (known != heads.size() || laid.ring.against) return {};
  return heads;
}

/// Whether what is at an angle is nearest to the n-th.
bool is_by(const std::vector<SeenHead>& heads, std::size_t n, double angle) {
  const SeenHead own = heads[n], before = n > 0 ? heads[n - 1] : heads.back(),
                 behind = n + 1 < heads.size() ? heads[n + 1] : heads.front();
  const double from = n > 0 ? before.angle : before.angle - 2 * pi;
  const double to = n + 1 < heads.size() ? behind.angle : behind.angle + 2 * pi;
  return (angle - own.angle) * own.far < (to - angle) * behind.far &&
         (own.angle - angle) * own.far < (angle - from) * before.far;
}

/// Items at either end of a ring that stand as near to the gutter as they may, one against the other: they
/// cannot move toward it.
struct Wedged {
  std::size_t front = 0, back = 0; ///< those before `front`, and from `back` on

  explicit Wedged(const std::vector<char>& at_least) {
    const std::size_t items = at_least.empty() ? 0 : at_least.size() - 1;
    while (front < items && at_least[front]) ++front;
    for (back = items; back > 0 && at_least[back];) --back;
  }
  bool holds(std::size_t item, double way) const { return way < 0 ? item < front : item >= back; }
};

/// A ring, where its items stand, and what they look like from the middle.
struct Standing {
  const RingLaid& ring;
  const std::vector<double>& at;
  const Looks& looks;
};

/// The items of the ring being laid that must move to bring feet to their own places, and can. None at all:
/// this cannot be told so simply.
std::optional<std::vector<std::size_t>> misplaced(const Fabric& fabric, const Standing& feet,
                                                  const Standing& tops, const Wedged& wedged,
                                                  bool feet_move) {
  const std::vector<SeenHead> heads = plain_heads(fabric, tops.ring, tops.at, tops.looks);
  const fabric::StitchId first = fabric.rounds[tops.ring.ring.last_round].first_stitch;
  std::vector<std::size_t> found;
  for (std::size_t i = 0; i < feet.ring.items.size(); ++i) {
    const Seen& seen = feet.looks.feet[feet.ring.band.shape_of[i]];
    std::size_t foot = 0;
    for (const fabric::Leg& leg : legs_of(fabric, feet.ring.items[i])) {
      const std::size_t place = leg.into.of - first;
      if (!is_stitch(leg.into) || leg.into.of < first || place >= heads.size()) return std::nullopt;
      const double angle =
          feet.at[i] / feet.ring.size.middle + seen.angle[std::min(foot++, seen.angle.size() - 1)];
      if (is_by(heads, place, angle)) continue;
      const double way = (heads[place].angle - angle) * (feet_move ? 1 : -1);
      const std::size_t item = feet_move ? i : heads[place].item;
      if (!wedged.holds(item, way)) found.push_back(item);
    }
  }
  return found;
}

/// Mostly a ring is by its places, or is so when the springs of the few items that are not are made stronger;
/// false: that does not help, or cannot be told. Of large rings it is not asked whether it helped.
bool draw_to_places(const Fabric& fabric, const Standing& inside, const Standing& ring, const Turn& turn,
                    Laid& laid) {
  const auto draw = [](double& pull) { pull = std::max(pull, std::min(8 * pull, strongest)); };
  const bool large = ring.ring.items.size() > most_held;
  for (int times = large ? 1 : 2;; --times) {
    const auto items = misplaced(fabric, turn.inward ? inside : ring, turn.inward ? ring : inside,
                                 Wedged(laid.at_least), !turn.inward);
    if (!items || items->empty()) return items.has_value();
    if (times == 0) return false;
    for (const std::size_t item : *items) draw(laid.strung.pull[item]);
    laid.at = relax(laid.strung, laid.at_least);
    if (large) return true;
  }
}

} // namespace

bool hold_by_places(const Fabric& fabric, const RingLaid& inside, const std::vector<double>& inside_at,
                    const RingLaid& ring, const Turn& turn, Laid& laid) {
  const RingLaid& feet = turn.inward ? inside : ring;
  if (feet.ring.echo) return true;
  const Looks inner = looks_of(inside, turn), own = looks_of(ring, turn);
  if (draw_to_places(fabric, {inside, inside_at, inner}, {ring, laid.at, own}, turn, laid)) return true;
  if (ring.items.size() > most_held) return true;
  const double radius = ring.size.middle;
  const std::vector<Foot> standing = feet_of(fabric, feet, turn.inward ? inner : own, radius);
  Holding holding(laid.strung, laid.at, laid.at_least);
  Progress progress;
  const auto tops = [&] {
    return turn.inward ? Tops(fabric, heads_of(fabric, ring, laid.at, own, radius), laid.strung.length)
                       : Tops(fabric, heads_of(fabric, inside, inside_at, inner, radius), laid.strung.length);
  };
  Tops heads = tops();
  for (int i = 0; i < most_times; ++i) {
    const std::vector<Move> moves =
        turn.inward ? moves_of_heads(standing, heads, inside_at, radius / inside.size.middle, laid.at.size())
                    : moves_of_feet(standing, heads, laid.at);
    if (moves.empty()) return true;
    if (!progress.goes_on(moves)) return false;
    holding.move(moves);
    if (turn.inward) heads = tops();
  }
  return false;
}

} // namespace whorl::layout
