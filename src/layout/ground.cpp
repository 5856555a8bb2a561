#include "layout/ground.hpp"

#include "layout/contour.hpp"
#include "layout/hole.hpp"
#include "layout/turn.hpp"

#include <algorithm>
#include <array>

namespace whorl::layout {
namespace {

using fabric::Fabric;

constexpr double beyond = 0.15;     ///< of a ring that has none beside it
constexpr double furthest = 0.45;   ///< from a ring that stands apart from the next
constexpr double past_loops = 0.80; ///< outside heads with loops for another part
constexpr double overlap = 0.015;   ///< else hairlines show between two grounds
constexpr double half_stitch = 0.5;

std::uint8_t yarn_of(const Fabric& fabric, const Item& item) { return fabric.stitches[item.first].yarn; }

/// The yarn of all stitches of a round; 0: several.
std::uint8_t only_yarn(const Fabric& fabric, const fabric::Round& round) {
  if (round.count == 0) return 0;
  const std::uint8_t yarn = fabric.stitches[round.first_stitch].yarn;
  for (std::uint32_t i = 1; i < round.count; ++i)
    if (fabric.stitches[round.first_stitch + i].yarn != yarn) return 0;
  return yarn;
}

/// Items of one ring in one yarn, side by side.
struct Patch {
  std::uint32_t first = 0, last = 0; ///< in the ring
  std::uint8_t yarn = 0;
};

std::vector<Patch> patches_of(const Fabric& fabric, const Figure& figure, const Ring& ring,
                              std::uint8_t without) {
  std::vector<Patch> patches;
  for (std::uint32_t i = 0; i < ring.items; ++i) {
    const std::uint8_t yarn = yarn_of(fabric, figure.items[ring.first_item + i]);
    if (yarn == without) continue;
    if (!patches.empty() && patches.back().yarn == yarn && patches.back().last + 1 == i)
      patches.back().last = i;
    else
      patches.push_back({i, i, yarn});
  }
  return patches;
}

/// Lays grounds; rings are joined to the next where that is in the same yarn.
class Laying {
public:
  Laying(const Fabric& fabric, const std::vector<double>& edges, std::uint8_t main_yarn, Figure& figure)
      : fabric_(fabric), edges_(edges), figure_(figure), main_yarn_(main_yarn) {}

  void lay() {
    for (std::uint32_t i = 0; i < figure_.rings.size(); ++i)
      if (!figure_.rings[i].echo && !figure_.rings[i].edging)
        for (const Patch& patch : patches_of(fabric_, figure_, figure_.rings[i], main_yarn_)) lay(i, patch);
  }

private:
  void lay(std::uint32_t ring, const Patch& patch) {
    const double low = low_of(ring, patch.yarn), high = high_of(ring, patch.yarn);
    Ground ground;
    ground.yarn = patch.yarn;
    ground.ring = ring;
    ground.outline = is_disc(figure_)             ? sector(ring, patch, low, high)
                     : figure_.form == Form::oval ? stretch(ring, patch, low, high)
                                                  : oblong(ring, patch, low, high);
    figure_.grounds.push_back(std::move(ground));
  }

  bool joined(std::uint32_t inside, std::uint8_t yarn) const {
    const Ring &one = figure_.rings[inside], &next = figure_.rings[inside + 1];
    return !one.echo && !next.echo && !next.edging &&
           only_yarn(fabric_, fabric_.rounds[one.last_round]) == yarn &&
           only_yarn(fabric_, fabric_.rounds[next.round]) == yarn;
  }

  double high_of(std::uint32_t ring, std::uint8_t yarn) const {
    const double outer = figure_.rings[ring].outer;
    const bool loops = figure_.form != Form::disc_inward && keeps_loops(figure_, ring);
    if (ring + 1 >= figure_.rings.size() || figure_.rings[ring + 1].edging)
      return outer + (loops ? past_loops : beyond);
    const double half = (figure_.rings[ring + 1].inner - outer) / 2;
    if (joined(ring, yarn)) return outer + half + overlap;
    return outer + (loops ? past_loops : std::min(half, furthest));
  }

  double low_of(std::uint32_t ring, std::uint8_t yarn) const {
    const double inner = figure_.rings[ring].inner;
    const bool loops = figure_.form == Form::disc_inward && keeps_loops(figure_, ring);
    if (ring == 0) return inner - (loops ? past_loops : beyond);
    const double half = (inner - figure_.rings[ring - 1].outer) / 2;
    if (joined(ring - 1, yarn)) return inner - half;
    return inner - (loops ? past_loops : std::min(half, furthest));
  }

  const Item& item(std::uint32_t ring, std::uint32_t place) const {
    return figure_.items[figure_.rings[ring].first_item + place];
  }

  /// Between a patch and what stands before it or behind it: an angle.
  double before(std::uint32_t ring, std::uint32_t place) const {
    const Ring& it = figure_.rings[ring];
    if (place == 0) return it.turned + edges_[ring];
    if (place == it.items) return it.turned + 2 * pi - edges_[ring];
    return it.turned + (item(ring, place - 1).at + item(ring, place).at) / 2 / it.middle;
  }

  std::vector<Point> sector(std::uint32_t ring, const Patch& patch, double low, double high) const {
    const Way way = figure_.clockwise ? Way::clockwise : Way::anticlockwise;
    const double from = before(ring, patch.first), to = before(ring, patch.last + 1);
    std::vector<Point> outline = circle_curve(high, from, to, way);
    std::vector<Point> back = circle_curve(low, from, to, way);
    std::reverse(back.begin(), back.end());
    line_to(back.front(), outline);
    outline.insert(outline.end(), back.begin() + 1, back.end());
    line_to(outline.front(), outline);
    return outline;
  }

  /// Along an oval.
  std::vector<Point> stretch(std::uint32_t ring, const Patch& patch, double low, double high) const {
    const Stadium stadium = stadium_of(figure_);
    const Lap lap = lap_of(figure_.rings[ring]);
    const double from = place_before(ring, patch.first), to = place_before(ring, patch.last + 1);
    const auto side = [&](double r) {
      const Lap edge = square_to(stadium, lap, r);
      return curve_on(stadium, edge, carried(stadium, lap, from, edge), carried(stadium, lap, to, edge));
    };
    std::vector<Point> outline = side(high), back = side(low);
    std::reverse(back.begin(), back.end());
    line_to(back.front(), outline);
    outline.insert(outline.end(), back.begin() + 1, back.end());
    line_to(outline.front(), outline);
    return outline;
  }

  double place_before(std::uint32_t ring, std::uint32_t place) const {
    if (place == 0) return std::max(0.0, item(ring, 0).at - half_stitch);
    const std::uint32_t items = figure_.rings[ring].items;
    if (place < items) return (item(ring, place - 1).at + item(ring, place).at) / 2;
    return item(ring, items - 1).at + half_stitch;
  }

  double between(std::uint32_t ring, std::uint32_t place) const {
    const Ring& line = figure_.rings[ring];
    const double on = line.leftward ? -half_stitch : half_stitch;
    if (place == 0) return item(ring, 0).foot.x - on;
    if (place == line.items) return item(ring, place - 1).foot.x + on;
    return (item(ring, place - 1).foot.x + item(ring, place).foot.x) / 2;
  }

  std::vector<Point> oblong(std::uint32_t ring, const Patch& patch, double low, double high) const {
    const double from = between(ring, patch.first), to = between(ring, patch.last + 1);
    std::vector<Point> outline;
    outline.reserve(13);
    outline.push_back({from, low});
    for (const Point corner : {Point{to, low}, Point{to, high}, Point{from, high}, Point{from, low}})
      line_to(corner, outline);
    return outline;
  }

  const Fabric& fabric_;
  const std::vector<double>& edges_;
  Figure& figure_;
  std::uint8_t main_yarn_;
};

} // namespace

std::vector<Point> straight_curves(const std::vector<Point>& corners) {
  std::vector<Point> curves;
  for (std::size_t i = 0; i <= corners.size() && !corners.empty(); ++i) {
    const Point to = corners[i % corners.size()];
    if (i > 0) {
      const Point from = curves.back();
      curves.push_back(from + (1.0 / 3) * (to - from));
      curves.push_back(from + (2.0 / 3) * (to - from));
    }
    curves.push_back(to);
  }
  return curves;
}

std::uint8_t main_yarn(const Fabric& fabric) {
  std::array<std::size_t, 256> stitches{};
  for (const fabric::Stitch& stitch : fabric.stitches) ++stitches[stitch.yarn];
  const auto most = std::max_element(stitches.begin(), stitches.end());
  return *most == 0 ? std::uint8_t{1} : static_cast<std::uint8_t>(most - stitches.begin());
}

std::uint8_t changed_yarn(const Fabric& fabric, std::uint32_t round, std::uint8_t main_yarn) {
  const fabric::Round& worked = fabric.rounds[round];
  const bool first = fabric.parts[worked.part].first_round == round;
  if (!first && (round == 0 || fabric.rounds[round - 1].count == 0)) return 0;
  const std::uint8_t yarn = only_yarn(fabric, worked);
  const std::uint8_t before = first ? main_yarn : fabric.stitches[worked.first_stitch - 1].yarn;
  return yarn != before ? yarn : std::uint8_t{0};
}

void add_grounds(const Fabric& fabric, const std::vector<double>& edges, std::uint8_t main_yarn,
                 Figure& figure) {
  Laying(fabric, edges, main_yarn, figure).lay();
}

} // namespace whorl::layout
