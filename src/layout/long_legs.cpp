#include "layout/long_legs.hpp"

#include "layout/direction.hpp"
#include "layout/hole.hpp"
#include "layout/items.hpp"
#include "layout/room.hpp"
#include "layout/sign.hpp"
#include "layout/stand.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <optional>
#include <span>
#include <utility>

namespace whorl::layout {
namespace {

using fabric::Fabric;
using fabric::StitchId;

constexpr double half_pen = 0.05;
constexpr double beside_foot = 0.20; ///< a line begins so far from the foot …
constexpr double most_beside = 0.80; ///< … or, past its mark, no further
/// … and ends so far aside of the head that it leads to, and outside it: where one is not free, the next.
constexpr Point ends[] = {{0, 0.26},     {0, 0.20},     {0, 0.34},     {0.12, 0.26},  {-0.12, 0.26},
                          {0.12, 0.20},  {-0.12, 0.20}, {0.24, 0.26},  {-0.24, 0.26}, {0.12, 0.34},
                          {-0.12, 0.34}, {0.24, 0.20},  {-0.24, 0.20}, {0.24, 0.34},  {-0.24, 0.34},
                          {0.36, 0.26},  {-0.36, 0.26}, {0.36, 0.16},  {-0.36, 0.16}};
/// Or it leads between the rounds, at such a height over the head …
constexpr double over_head[] = {0.20, 0.15, 0.26, 0.34, 0.42};
/// … or beneath the foot, where something lies between the two: a break line, the outline of a part sewn on.
constexpr double beneath_foot[] = {0.20, 0.12, 0.28, 0.36, 0.05};
constexpr double least_air = 0.06;
constexpr double one_foot = 0.35;      ///< feet of a group that stand no further apart have one line
constexpr std::int64_t neighbours = 6; ///< to either side, that a foot may be nearer to than to its own place
constexpr std::uint32_t many_legs = 3; ///< two feet are always by their own places

bool has_many_legs(const Item& item) { return item.count == 1 && item.feet >= many_legs; }

/// The tops of a figure's stitches.
class DrawnTops {
public:
  DrawnTops(const Fabric& fabric, const Figure& figure) : figure_(figure), of_(fabric.stitches.size()) {
    for (const Ring& ring : figure.rings)
      for (std::uint32_t round = ring.round; round <= ring.last_round; ++round)
        add(fabric.rounds[round].first_stitch - fabric.rounds[ring.round].first_stitch, ring);
  }

  struct Head {
    Point at, up;
  };
  std::optional<Head> of(StitchId stitch) const {
    if (stitch >= of_.size() || of_[stitch].item == fabric::none) return std::nullopt;
    return Head{figure_.tips[of_[stitch].tip], figure_.items[of_[stitch].item].up};
  }

private:
  void add(StitchId on, const Ring& ring) {
    for (std::uint32_t k = ring.first_item; k < ring.first_item + ring.items; ++k)
      for (std::uint32_t j = 0; j < figure_.items[k].count; ++j)
        of_[figure_.items[k].first + on + j] = {k, figure_.items[k].first_tip + j};
  }

  struct Where {
    std::uint32_t item = fabric::none, tip = 0;
  };
  const Figure& figure_;
  std::vector<Where> of_;
};

class Lengthening {
public:
  Lengthening(const Fabric& fabric, const Extents& extents, Lines which, Figure& figure)
      : fabric_(fabric), extents_(extents), which_(which), figure_(figure), heads_(fabric, figure) {}

  std::vector<int> lengthen(const std::vector<char>& plain) {
    const Lines asked = which_;
    for (std::uint32_t ring = 0; ring < figure_.rings.size(); ++ring) {
      const Ring& it = figure_.rings[ring];
      which_ = ring < plain.size() && plain[ring] ? Lines::of_many_legs : asked;
      for (std::uint32_t k = it.first_item; !it.echo && k < it.first_item + it.items; ++k)
        if (wants_lines(figure_.items[k])) lengthen(ring, figure_.items[k]);
    }
    return std::move(crowded_);
  }

private:
  bool wants_lines(const Item& item) const {
    const bool stays = item.stem > 0 || item.key.base == Base::below ||
                       (fabric_.stitches[item.first].flags & fabric::joins) != 0;
    return !stays && (which_ == Lines::of_every_foot || has_many_legs(item));
  }

  void lengthen(std::uint32_t ring, const Item& item) {
    std::uint32_t foot = item.first_foot;
    const Point* before = nullptr; // of feet in one place and point the line of the first is for all
    Point stood;
    fabric::Place into;
    for (const fabric::Leg& leg : legs_of(fabric_, item)) {
      if (foot == item.first_foot + item.feet) return;
      Point& at = figure_.feet[foot++];
      if (before != nullptr && at == stood && leg.into == into) {
        at = *before;
        continue;
      }
      stood = at, before = &at, into = leg.into;
      if (leg.into == led_.into && length(at - led_.from) < one_foot) {
        at = led_.to;
        continue;
      }
      if (!is_stitch(leg.into) || fabric_.stitches[leg.into.of].round == figure_.rings[ring].round) continue;
      if (!is_in_fan(ring, leg.into) && !is_by_its_place(leg.into.of, at, way_out(at, item.up)))
        lead_from(ring, leg.into, item, at);
    }
  }

  void lead_from(std::uint32_t ring, const fabric::Place& into, const Item& item, Point& foot) {
    const Point from = foot;
    lead(ring, into.of, item, foot);
    if (!(foot == from)) led_ = {into, from, foot};
  }

  /// Of three and more in one place, whose middle is by it, none is asked for itself.
  bool is_in_fan(std::uint32_t ring, const fabric::Place& into) {
    constexpr std::size_t most_asked_alone = 2;
    if (which_ == Lines::of_many_legs) return false;
    if (feet_of_ != ring || feet_.empty()) gather_feet(ring);
    const auto by_place = [](const Taker& one, const Taker& other) { return one.place < other.place; };
    const auto [first, last] = std::equal_range(feet_.begin(), feet_.end(), Taker{into.of, {}, {}}, by_place);
    const auto many = static_cast<std::size_t>(last - first);
    if (many <= most_asked_alone) return false;
    Point middle, up;
    for (auto one = first; one != last; ++one)
      middle = middle + (1.0 / static_cast<double>(many)) * one->foot, up = up + one->up;
    return is_by_its_place(into.of, middle, way_out(middle, unit(up)));
  }

  /// The feet of a ring, in the order of their places.
  void gather_feet(std::uint32_t ring) {
    const Ring& it = figure_.rings[ring];
    feet_of_ = ring;
    feet_.clear();
    for (std::uint32_t k = it.first_item; k < it.first_item + it.items; ++k) {
      const Item& item = figure_.items[k];
      std::uint32_t foot = item.first_foot;
      for (const fabric::Leg& leg : legs_of(fabric_, item))
        if (foot < item.first_foot + item.feet) feet_.push_back({leg.into.of, figure_.feet[foot++], item.up});
    }
    std::stable_sort(feet_.begin(), feet_.end(),
                     [](const Taker& one, const Taker& other) { return one.place < other.place; });
  }

  /// How far something is from a head: straight, and aside of the way out, where it is on the same side.
  struct Distance {
    double straight = 1e9, aside = 1e9;
  };

  Distance distance_to(const DrawnTops::Head& head, Point foot, Point out) const {
    const Point away = head.at - foot;
    return {length(away), dot(out, way_out(head.at, head.up)) > 0 ? std::abs(cross(out, away)) : 1e9};
  }

  /// Upright on a line, from the middle of a disc, square to the contours of an oval.
  Point way_out(Point at, Point up) const {
    return goes_round(figure_) && figure_.form != Form::oval ? unit(at) : up;
  }

  bool is_by_its_place(StitchId place, Point foot, Point out) const {
    const auto own = heads_.of(place);
    if (!own) return true;
    const Distance to_own = distance_to(*own, foot, out);
    Distance least;
    const fabric::Round& round = fabric_.rounds[fabric_.stitches[place].round];
    const std::int64_t many = round.count, number = std::int64_t{place} - round.first_stitch;
    for (std::int64_t on = std::max(-neighbours, -many); on <= std::min(neighbours, many); ++on) {
      const auto other = static_cast<StitchId>(round.first_stitch + (number + on + many) % many);
      const auto head = heads_.of(other);
      if (!head || other == place || (fabric_.stitches[other].flags & fabric::counts) == 0) continue;
      const Distance to = distance_to(*head, foot, out);
      least = {std::min(least.straight, to.straight), std::min(least.aside, to.aside)};
    }
    return to_own.straight < least.straight || to_own.aside < least.aside;
  }

  void lead(std::uint32_t ring, StitchId place, const Item& item, Point& foot) {
    const auto head = heads_.of(place);
    for (const Point beside : ends) {
      const Point to = head->at + beside.y * head->up + beside.x * Point{head->up.y, 0 - head->up.x};
      const std::optional<Point> from =
          is_by_its_place(place, to, way_out(to, item.up)) ? start_of(foot, to) : std::optional<Point>();
      if (from) return add({*from, to}, ring, item, foot);
    }
    if (lead_between(ring, place, item, foot, head->at, head->up, over_head)) return;
    if (lead_between(ring, place, item, foot, at_height_of(foot, head->at), -1 * head->up, beneath_foot))
      return;
    note_crowded(ring, fabric_.stitches[place].round);
  }

  /// Leads between the rounds, so far from a point by its place.
  bool lead_between(std::uint32_t ring, StitchId place, const Item& item, Point& foot, Point at, Point up,
                    std::span<const double> levels) {
    for (const double over : levels)
      for (const double start : {0.0, 0.2, 0.4, 0.6, 0.1, 0.3}) {
        const std::vector<Point> way = way_between(foot, at + over * up, start);
        if (!is_free(way) || !is_by_its_place(place, way.back(), way_out(way.back(), item.up))) continue;
        add(way, ring, item, foot);
        return true;
      }
    return false;
  }

  /// There is too little room inside the outer one of two rings.
  void note_crowded(std::uint32_t ring, std::uint32_t round) {
    const std::uint32_t other = ring_of(figure_, round);
    if (other == fabric::none) return;
    const auto inside = static_cast<int>(std::max(ring, other)) - 1;
    if (std::find(crowded_.begin(), crowded_.end(), inside) == crowded_.end()) crowded_.push_back(inside);
  }

  void add(std::vector<Point> way, std::uint32_t ring, const Item& item, Point& foot) {
    if (may_join(item, foot, way.front())) way.insert(way.begin(), foot);
    foot = way.back();
    Stroke stroke;
    stroke.line = Line::stem;
    stroke.points = std::move(way);
    stroke.ring = ring;
    figure_.strokes.push_back(std::move(stroke));
  }

  /// Whether a line to a place may begin at the end of the leg itself: that is no cross, has no mark beneath,
  /// and nothing else is near.
  bool may_join(const Item& item, Point foot, Point start) const {
    if (extent(extents_, item.key).below > 0) return false;
    const std::vector<Convex> own = ink_of(extents_, item);
    const bool ends_there = std::any_of(own.begin(), own.end(), [foot](const Convex& piece) {
      return distance(piece, Convex{foot}) <= 0;
    });
    return ends_there && air_round(foot, start, own) >= least_air;
  }

  /// Over a place, as high as a foot stands.
  Point at_height_of(Point foot, Point place) const {
    if (!goes_round(figure_)) return {place.x, foot.y};
    const Point core = on_core(place);
    return core + length(foot - on_core(foot)) * unit(place - core);
  }

  /// A way between the rounds, at the height of the point that it leads to.
  std::vector<Point> way_between(Point foot, Point to, double start) const {
    constexpr double step = 0.5;
    const bool round = goes_round(figure_);
    const double far = length(to - foot), level = round ? length(to - on_core(to)) : to.y;
    const int steps = 1 + static_cast<int>(far / step);
    std::vector<Point> way;
    for (int k = 0; k <= steps; ++k) {
      const double on = start / std::max(far, 1e-9), t = on + (1 - on) * k / steps;
      const Point between = foot + t * (to - foot), core = on_core(between);
      way.push_back(round ? core + level * unit(between - core) : Point{between.x, level});
    }
    return way;
  }

  /// What the rings go round is nearest here.
  Point on_core(Point p) const { return {std::clamp(p.x, -figure_.half_core, figure_.half_core), 0}; }

  bool is_free(const std::vector<Point>& way) const {
    for (std::size_t i = 1; i < way.size(); ++i)
      if (air_round(way[i - 1], way[i]) < least_air) return false;
    return way.size() > 1;
  }

  /// Where a line to a place begins: beside the foot, or the loop mark beneath it.
  std::optional<Point> start_of(Point foot, Point to) const {
    const double far = length(to - foot);
    for (double on = beside_foot; on <= most_beside && on + beside_foot < far; on += beside_foot / 2) {
      const Point from = foot + (on / far) * (to - foot);
      if (air_round(from, to) >= least_air) return from;
    }
    return std::nullopt;
  }

  double air_round(Point from, Point to, const std::vector<Convex>& own = {}) const {
    const Point on = half_pen * unit(to - from), aside{-on.y, on.x};
    const Convex line{from - on - aside, to + on - aside, to + on + aside, from - on + aside};
    double air = 1;
    for (const Convex& ink : ink_near(figure_, extents_, 0.5 * (from + to), length(to - from) / 2 + 1))
      if (std::find(own.begin(), own.end(), ink) == own.end()) air = std::min(air, distance(line, ink));
    return air;
  }

  const Fabric& fabric_;
  const Extents& extents_;
  Lines which_;
  Figure& figure_;
  DrawnTops heads_;
  struct Taker {
    StitchId place = 0;
    Point foot, up;
  };
  struct Led {
    fabric::Place into;
    Point from{1e9, 1e9}, to;
  };
  Led led_; ///< the last foot from which a line leads: one beside it in the same place shares it
  std::vector<int> crowded_;
  std::uint32_t feet_of_ = 0;
  std::vector<Taker> feet_; ///< of that ring, before any line led on from them
};

} // namespace

std::vector<int> lengthen_legs(const Fabric& fabric, const Extents& extents, Lines which, Figure& figure,
                               const std::vector<char>& plain) {
  if (which == Lines::of_every_foot || std::any_of(figure.items.begin(), figure.items.end(), has_many_legs))
    return Lengthening(fabric, extents, which, figure).lengthen(plain);
  return {};
}

} // namespace whorl::layout
