#include "layout/long_legs.hpp"

#include "layout/direction.hpp"
#include "layout/hole.hpp"
#include "layout/items.hpp"
#include "layout/room.hpp"
#include "layout/sign.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace whorl::layout {
namespace {

using fabric::Fabric;
using fabric::StitchId;

constexpr double half_pen = 0.05;
constexpr double beside_foot = 0.20; ///< a line begins so far from the foot …
constexpr double most_beside = 0.80; ///< … or, past its mark, no further …
constexpr double over_head = 0.26;   ///< … and ends so far from the head that it leads to
constexpr double least_air = 0.06;
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
  Lengthening(const Fabric& fabric, const Extents& extents, Figure& figure)
      : fabric_(fabric), extents_(extents), figure_(figure), heads_(fabric, figure) {}

  void lengthen() {
    for (std::uint32_t ring = 0; ring < figure_.rings.size(); ++ring) {
      const Ring& it = figure_.rings[ring];
      for (std::uint32_t k = it.first_item; !it.echo && k < it.first_item + it.items; ++k)
        if (has_many_legs(figure_.items[k])) lengthen(ring, figure_.items[k]);
    }
  }

private:
  void lengthen(std::uint32_t ring, const Item& item) {
    std::uint32_t foot = item.first_foot;
    for (const fabric::Leg& leg : legs_of(fabric_, item)) {
      if (foot == item.first_foot + item.feet) return;
      Point& at = figure_.feet[foot++];
      if (is_stitch(leg.into) && !is_by_its_place(leg.into.of, at, item)) lead(ring, leg.into.of, at);
    }
  }

  bool is_by_its_place(StitchId place, Point foot, const Item& item) const {
    const auto own = heads_.of(place);
    if (!own) return true;
    const Point out = goes_round(figure_) && figure_.form != Form::oval ? unit(foot) : item.up;
    const fabric::Round& round = fabric_.rounds[fabric_.stitches[place].round];
    double straight = 1e9, aside = 1e9;
    for (const StitchId other : {place - 1, place + 1}) {
      if (other < round.first_stitch || other >= round.first_stitch + round.count) continue;
      const auto head = heads_.of(other);
      if (!head || (fabric_.stitches[other].flags & fabric::counts) == 0) continue;
      straight = std::min(straight, length(head->at - foot));
      aside = std::min(aside, std::abs(cross(out, head->at - foot)));
    }
    return length(own->at - foot) < straight || std::abs(cross(out, own->at - foot)) < aside;
  }

  void lead(std::uint32_t ring, StitchId place, Point& foot) {
    const auto head = heads_.of(place);
    const Point to = head->at + over_head * head->up;
    const std::optional<Point> from = start_of(foot, to);
    if (!from) return;
    Stroke stroke;
    stroke.line = Line::stem;
    stroke.points = {*from, to};
    stroke.ring = ring;
    figure_.strokes.push_back(std::move(stroke));
    foot = to;
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

  double air_round(Point from, Point to) const {
    const Point on = half_pen * unit(to - from), aside{-on.y, on.x};
    const Convex line{from - on - aside, to + on - aside, to + on + aside, from - on + aside};
    double air = 1;
    for (const Convex& ink : ink_near(figure_, extents_, 0.5 * (from + to), length(to - from) / 2 + 1))
      air = std::min(air, distance(line, ink));
    return air;
  }

  const Fabric& fabric_;
  const Extents& extents_;
  Figure& figure_;
  DrawnTops heads_;
};

} // namespace

void lengthen_legs(const Fabric& fabric, const Extents& extents, Figure& figure) {
  if (std::any_of(figure.items.begin(), figure.items.end(), has_many_legs))
    Lengthening(fabric, extents, figure).lengthen();
}

} // namespace whorl::layout
