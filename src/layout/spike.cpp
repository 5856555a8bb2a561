#include "layout/spike.hpp"

#include "layout/direction.hpp"
#include "layout/items.hpp"
#include "layout/sign.hpp"
#include "layout/stand.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

namespace whorl::layout {
namespace {

using fabric::Fabric;
using fabric::StitchId;

constexpr double half_pen = 0.05;
constexpr double under_foot = 0.19; ///< a stem begins so far under the foot of a tall stitch …
constexpr double in_cross = 0.12;   ///< … and so far up between the arms of a cross
constexpr double over_head = 0.26;  ///< and ends so far from the head that it goes into
constexpr double least_air = 0.07, enough = 0.16;
constexpr double past_ring = 0.10;  ///< a stem turns so far above and below a ring that it passes
constexpr double dear_aside = 0.03; ///< air that a W out of the way must gain
constexpr double neighbourhood = 4.5;
constexpr double furthest_aside =
    1.1; ///< from the straight way; further round a stem is harder to follow than an arrow
constexpr std::size_t most_gaps = 4; ///< of a ring, that are tried
constexpr int steps_aside = 3;
constexpr double step_aside = 0.1;

Convex straight(Point a, Point b) {
  const Point on = half_pen * unit(b - a), aside{-on.y, on.x};
  return {a - on - aside, b + on - aside, b + on + aside, a - on + aside};
}

/// Where a stitch's round is among the rings, drawn alone; none.
std::optional<std::size_t> ring_alone(const std::vector<Ring>& rings, std::uint32_t round) {
  for (std::size_t i = 0; i < rings.size(); ++i)
    if (rings[i].round == round) return rings[i].last_round == round ? std::optional(i) : std::nullopt;
  return std::nullopt;
}

/// Whether the rings between two stand for one round each.
bool is_clear_between(const std::vector<Ring>& rings, std::size_t one, std::size_t other) {
  for (std::size_t i = std::min(one, other) + 1; i < std::max(one, other); ++i)
    if (rings[i].round != rings[i].last_round || rings[i].edging || rings[i].chain) return false;
  return true;
}

/// A way and the air round it.
struct Path {
  std::vector<Point> points;
  double air = 0, worth = -1;
};

class Stems {
public:
  Stems(const Fabric& fabric, const Extents& extents, Figure& figure)
      : fabric_(fabric), extents_(extents), figure_(figure) {}

  std::vector<std::uint32_t> add() {
    std::vector<std::uint32_t> failed;
    for (std::uint32_t i = 0; i < figure_.rings.size(); ++i)
      if (!add(i)) failed.push_back(i);
    return failed;
  }

private:
  bool add(std::uint32_t ring) {
    bool all = true;
    const Ring& it = figure_.rings[ring];
    for (std::uint32_t i = it.first_item; i < it.first_item + it.items; ++i)
      if (figure_.items[i].stem > 0) all = add(ring, figure_.items[i]) && all;
    return all;
  }

  bool add(std::uint32_t ring, const Item& item) {
    const std::optional<Point> foot = foot_of(item);
    if (!foot) return false;
    gather(ring, item, neighbourhood + length(*foot - item.foot));
    const bool floats = extent(extents_, item.key).floats;
    const Point start = item.foot + (floats ? in_cross : -under_foot) * item.up;
    Path way{{start}, 0, 0};
    const int step = figure_.form == Form::disc_inward ? 1 : -1;
    for (int k = 1; k <= item.stem; ++k) {
      const auto passed = static_cast<std::uint32_t>(static_cast<int>(ring) + k * step);
      if (!pass(figure_.rings[passed], *foot, way)) return false;
    }
    way.points.push_back(*foot);
    if (air_along(way.points, 0) < least_air) return false;
    for (std::size_t i = 1; i < way.points.size(); ++i)
      stems_.push_back(straight(way.points[i - 1], way.points[i]));
    Stroke stroke;
    stroke.line = Line::stem;
    stroke.points = std::move(way.points);
    stroke.ring = ring;
    figure_.strokes.push_back(std::move(stroke));
    return true;
  }

  /// Above the head of the stitch that an item goes into.
  std::optional<Point> foot_of(const Item& item) const {
    const StitchId of = legs_of(fabric_, item).begin()->into.of;
    const auto ring = ring_alone(figure_.rings, fabric_.stitches[of].round);
    if (!ring) return std::nullopt;
    const Ring& it = figure_.rings[*ring];
    for (std::uint32_t i = it.first_item; i < it.first_item + it.items; ++i) {
      const Item& base = figure_.items[i];
      if (base.first <= of && of < base.first + base.count)
        return figure_.tips[base.first_tip + of - base.first] + over_head * base.up;
    }
    return std::nullopt;
  }

  /// What a stem may not touch: the stitches about it, what is placed, and other stems.
  void gather(std::uint32_t ring, const Item& item, double within) {
    ink_ = {};
    const std::uint32_t reach = item.stem + 1U;
    for (std::uint32_t r = ring > reach ? ring - reach : 0; r <= ring + reach && r < figure_.rings.size();
         ++r) {
      const Ring& it = figure_.rings[r];
      for (std::uint32_t i = it.first_item; i < it.first_item + it.items; ++i) {
        const Item& other = figure_.items[i];
        if (length(other.foot - item.foot) > within) continue;
        for (Convex& piece : ink_of(extents_, other)) ink_.push_back(std::move(piece));
      }
    }
    for (const Placed& placed : figure_.placed)
      for (Convex& outline : outlines_of(placed)) ink_.push_back(std::move(outline));
    for (const Convex& stem : stems_)
      if (length(stem[0] - item.foot) <= within) ink_.push_back(stem);
  }

  /// Air along the pieces of a way from point `from` on.
  double air_along(const std::vector<Point>& points, std::size_t from) const {
    double air = enough;
    for (std::size_t i = from + 1; i < points.size(); ++i) {
      const Convex piece = straight(points[i - 1], points[i]);
      for (const Convex& other : ink_) {
        air = std::min(air, distance(piece, other));
        if (air <= 0) return 0;
      }
    }
    return air;
  }

  /// Leads a way through the gap of a ring in which it has most air, not far from the straight way to its
  /// foot.
  bool pass(const Ring& ring, Point foot, Path& way) const {
    const Point from = way.points.back();
    struct Gap {
      Point middle, up;
      double half = 0, far = 0;
    };
    std::vector<Gap> gaps;
    for (std::uint32_t i = ring.first_item + 1; i < ring.first_item + ring.items; ++i) {
      const Item &one = figure_.items[i - 1], &other = figure_.items[i];
      const Point up = unit(one.up + other.up);
      const Point middle = 0.5 * (body_of(one) + body_of(other));
      if (length(middle - from) > neighbourhood) continue;
      const double all = dot(foot - from, up), t = all < 0 ? dot(middle - from, up) / all : 0;
      const double far = length(middle - (from + t * (foot - from)));
      if (far > furthest_aside) continue;
      gaps.push_back({middle, up, (ring.outer - ring.inner) / 2 + past_ring, far});
    }
    std::stable_sort(gaps.begin(), gaps.end(), [](const Gap& a, const Gap& b) { return a.far < b.far; });
    if (gaps.size() > most_gaps) gaps.resize(most_gaps);
    Path best;
    for (const Gap& gap : gaps) try_gap(gap.middle, gap.up, gap.half, gap.far, way, best);
    if (best.air < least_air) return false;
    way = std::move(best);
    return true;
  }

  void try_gap(Point middle, Point up, double half, double far, const Path& way, Path& best) const {
    const Point aside{up.y, -up.x};
    for (int i = -steps_aside; i <= steps_aside; ++i)
      for (int j = -steps_aside; j <= steps_aside; ++j) {
        Path tried{way.points, 0, 0};
        tried.points.push_back(middle + half * up + i * step_aside * aside);
        tried.points.push_back(middle - half * up + j * step_aside * aside);
        tried.air = air_along(tried.points, way.points.size() - 1);
        const double bent = step_aside * (std::abs(i) + std::abs(j));
        tried.worth = tried.air - dear_aside * (far + bent);
        if (tried.air >= least_air && tried.worth > best.worth + 1e-9) best = std::move(tried);
      }
  }

  static Point body_of(const Item& item) { return item.foot + item.height / 2 * item.up; }

  const Fabric& fabric_;
  const Extents& extents_;
  Figure& figure_;
  std::vector<Convex> ink_, stems_;
};

} // namespace

void give_stems(const Fabric& fabric, const std::vector<Ring>& rings, std::size_t i,
                std::vector<Item>& items) {
  for (Item& item : items) {
    const fabric::Legs legs = legs_of(fabric, item);
    if (item.key.base != Base::below || item.count != 1 || legs.size() != 1 || item.key.down == 0) continue;
    const auto base = ring_alone(rings, fabric.stitches[legs.begin()->into.of].round);
    const std::size_t far = item.key.down + std::size_t{1};
    if (!base || rings[i].round != rings[i].last_round || (*base > i ? *base - i : i - *base) != far)
      continue;
    if (!is_clear_between(rings, *base, i)) continue;
    item.stem = item.key.down;
    item.key.base = Base::top;
    item.key.down = 0;
  }
}

std::vector<std::uint32_t> rings_at_bends(const Figure& figure) {
  std::vector<std::uint32_t> rings;
  for (std::uint32_t i = 0; i < figure.rings.size(); ++i) {
    const Ring& ring = figure.rings[i];
    for (std::uint32_t k = ring.first_item; k < ring.first_item + ring.items; ++k) {
      const std::uint32_t stem = figure.items[k].stem;
      if (stem == 0) continue;
      const bool inward = figure.form == Form::disc_inward;
      for (const std::uint32_t bend : {inward ? i : i - 1, inward ? i + stem : i - 1 - stem})
        if (std::find(rings.begin(), rings.end(), bend) == rings.end()) rings.push_back(bend);
    }
  }
  return rings;
}

std::vector<std::uint32_t> add_stems(const Fabric& fabric, const Extents& extents, Figure& figure) {
  const bool any =
      std::any_of(figure.items.begin(), figure.items.end(), [](const Item& item) { return item.stem > 0; });
  return any ? Stems(fabric, extents, figure).add() : std::vector<std::uint32_t>();
}

} // namespace whorl::layout
