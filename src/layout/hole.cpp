#include "layout/hole.hpp"

#include "fabric/opening.hpp"
#include "layout/contour.hpp"
#include "layout/direction.hpp"
#include "layout/stadium.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace whorl::layout {
namespace {

using fabric::Fabric;

constexpr double outside_last =
    0.62;                           ///< from the heads of a last ring to the middle of what stands beyond it
constexpr double past_loops = 0.75; ///< and past the loops drawn there
constexpr double half_stitch = 0.5;

Point middle(Point a, Point b) { return 0.5 * (a + b); }

/// Before the first stitch or behind the last: in a disc the gutter's middle.
Spot beside_all(const Figure& figure, const Ring& ring, const std::vector<Spot>& heads, bool behind) {
  const bool inward = figure.form == Form::disc_inward;
  if (figure.form == Form::sector) {
    const Spot& end = behind ? heads.back() : heads.front();
    const double aside = ring.against == behind ? half_stitch : -half_stitch;
    return {end.at + aside * Point{end.up.y, 0 - end.up.x}, end.up};
  }
  if (is_disc(figure)) {
    const Point out = outward(ring.turned, stadium_of(figure).way);
    return {(inward ? ring.inner : ring.outer) * out, (inward ? -1.0 : 1.0) * out};
  }
  if (figure.form == Form::oval) {
    const Stadium stadium = stadium_of(figure);
    const Lap lap = square_to(stadium, lap_of(ring), ring.outer);
    return {point_on(stadium, lap, 0), outward(stadium, lap, 0)};
  }
  const double on = ring.leftward == behind ? -half_stitch : half_stitch;
  const Spot& end = behind ? heads.back() : heads.front();
  return {end.at + Point{on, 0}, end.up};
}

/// The middles between the feet of a ring's neighbours.
std::vector<Point> holes_at_feet(const Figure& figure, const Ring& ring) {
  std::vector<Point> holes;
  const auto foot = [&figure](const Item& item, bool last) {
    if (item.feet == 0) return item.foot;
    return figure.feet[item.first_foot + (last ? item.feet - 1 : 0)];
  };
  for (std::uint32_t i = 1; i < ring.items; ++i) {
    const Item &one = figure.items[ring.first_item + i - 1], &other = figure.items[ring.first_item + i];
    holes.push_back(middle(foot(one, true), foot(other, false)));
  }
  return holes;
}

/// The nearest of some points within a stitch and a half; else the point itself.
Point nearest_of(const std::vector<Point>& points, Point to) {
  double least = 1.5;
  Point found = to;
  for (const Point p : points)
    if (length(p - to) < least) least = length(p - to), found = p;
  return found;
}

/// A point moved to half-way between two rings, or between two lines.
Point half_way(const Figure& figure, const Ring& ring, const Ring& next, Point p) {
  const bool out = next.inner > ring.inner;
  const double to = out ? (ring.outer + next.inner) / 2 : (ring.inner + next.outer) / 2;
  if (!goes_round(figure)) return {p.x, to};
  const Point core = core_under(stadium_of(figure), p);
  return core + to * unit(p - core);
}

/// The ring that is worked into this one, if the figure has it.
const Ring* next_ring(const Figure& figure, std::uint32_t ring) {
  const std::uint32_t next = ring + static_cast<std::uint32_t>(side_of_heads(figure));
  if (next >= figure.rings.size() || figure.rings[next].echo || figure.rings[next].edging) return nullptr;
  return &figure.rings[next];
}

} // namespace

bool keeps_loops(const Figure& figure, std::uint32_t ring) {
  return std::any_of(figure.placed.begin(), figure.placed.end(), [ring](const Placed& placed) {
    return (placed.sign == Sign::free_loop || is_joined(placed.sign)) && placed.ring == ring;
  });
}

bool is_disc(const Figure& figure) {
  return figure.form == Form::disc || figure.form == Form::disc_inward || figure.form == Form::motif ||
         figure.form == Form::sector;
}

bool goes_round(const Figure& figure) { return is_disc(figure) || figure.form == Form::oval; }

Stadium stadium_of(const Figure& figure) {
  return {figure.half_core, figure.clockwise ? Way::clockwise : Way::anticlockwise};
}

Lap lap_of(const Ring& ring) { return {ring.middle, ring.lead}; }

std::vector<Spot> heads_of(const Fabric& fabric, const Figure& figure, std::uint32_t ring) {
  const Ring& it = figure.rings[ring];
  std::vector<std::pair<fabric::StitchId, Spot>> heads;
  for (std::uint32_t i = it.first_item; i < it.first_item + it.items; ++i) {
    const Item& item = figure.items[i];
    for (std::uint32_t j = 0; j < item.count; ++j)
      if (fabric::has_top(fabric, item.first + j))
        heads.push_back({item.first + j, {figure.tips[item.first_tip + j], item.up}});
  }
  std::stable_sort(heads.begin(), heads.end(),
                   [](const auto& a, const auto& b) { return a.first < b.first; });
  std::vector<Spot> spots;
  for (const auto& head : heads) spots.push_back(head.second);
  return spots;
}

std::uint32_t ring_of(const Figure& figure, std::uint32_t round) {
  for (std::uint32_t i = 0; i < figure.rings.size(); ++i) {
    const Ring& ring = figure.rings[i];
    if (!ring.echo && ring.round <= round && round <= ring.last_round) return i;
  }
  return fabric::none;
}

int side_of_heads(const Figure& figure) { return figure.form == Form::disc_inward ? -1 : 1; }

Spot hole_after(const Fabric& fabric, const Figure& figure, std::uint32_t ring, std::uint32_t after) {
  const std::vector<Spot> heads = heads_of(fabric, figure, ring);
  const Ring& own = figure.rings[ring];
  const bool between = after > 0 && after < heads.size();
  if (heads.empty()) return {};
  Spot spot = between ? Spot{middle(heads[after - 1].at, heads[after].at),
                             unit(heads[after - 1].up + heads[after].up)}
                      : beside_all(figure, own, heads, after > 0);
  const Ring* worked_in = next_ring(figure, ring);
  if (worked_in != nullptr && between)
    spot.at = middle(spot.at, nearest_of(holes_at_feet(figure, *worked_in), spot.at));
  return beyond_head(figure, ring, spot);
}

Spot beyond_head(const Figure& figure, std::uint32_t ring, const Spot& head) {
  Spot spot = head;
  if (const Ring* worked_in = next_ring(figure, ring))
    spot.at = half_way(figure, figure.rings[ring], *worked_in, head.at);
  else
    spot.at = head.at + (outside_last + (keeps_loops(figure, ring) ? past_loops : 0)) * head.up;
  return spot;
}

} // namespace whorl::layout
