#include "layout/room.hpp"

#include "layout/cut.hpp"
#include "layout/direction.hpp"
#include "layout/hole.hpp"
#include "layout/label.hpp"
#include "layout/obstacles.hpp"
#include "layout/sign.hpp"
#include "layout/stand.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace whorl::layout {
namespace {

constexpr double afarstep = 0.05, across_step = 0.05;
constexpr int steps_along = 7, steps_across = 4;
constexpr int patience = 3, steps_further = 4,
              steps_aside = 2;        ///< widening helps in most cases; two posts in one hole part in the end
constexpr double enough = 0.25;       ///< more air is not looked for
constexpr double dear_to_move = 0.02; ///< air that a whole W of moving must gain
constexpr double neighbourhood = 3;
constexpr double tallest = 4; ///< no symbol reaches further from its foot, but for stems drawn out
constexpr double line_width = 0.05;
constexpr int least_cuts = 12; ///< of a curve
constexpr double longest_piece = 2;
constexpr double push_step = 0.1;
constexpr int most_pushes = 200;

/// A straight piece of a line; its ends are square and stand over by half its width.
std::array<Point, 4> piece(Point a, Point b) {
  const double far = length(b - a);
  const Point on = far > 1e-9 ? (line_width / 2 / far) * (b - a) : Point{line_width / 2, 0};
  const Point aside{-on.y, on.x};
  return {a - on - aside, b + on - aside, b + on + aside, a - on + aside};
}

Point on_curve(const Point* p, double t) {
  const double u = 1 - t;
  return (u * u * u) * p[0] + (3 * u * u * t) * p[1] + (3 * u * t * t) * p[2] + (t * t * t) * p[3];
}

class Near {
public:
  Near(Point at, double within) : at_(at), within_(within) {}

  bool reaches(Point p, double more = 0) const {
    return dot(p - at_, p - at_) <= (within_ + more) * (within_ + more);
  }

  void add(const Convex& outline) { add(outline.data(), outline.size()); }
  void add(const std::array<Point, 4>& outline) { add(outline.data(), outline.size()); }

  /// A label or a drawn-out stem may be longer than the neighbourhood is wide.
  void add_always(Convex outline) { ink.push_back(std::move(outline)); }

  /// In pieces so short that none leads past without an end near by.
  void add_line(const Stroke& stroke) {
    const auto& points = stroke.points;
    const std::size_t step = stroke.curved ? 3 : 1;
    for (std::size_t i = 0; i + step < points.size(); i += step) {
      const auto at = [&](double t) {
        return stroke.curved ? on_curve(&points[i], t) : points[i] + t * (points[i + 1] - points[i]);
      };
      const double far = length(points[i + step] - points[i]);
      const int cuts = (stroke.curved ? least_cuts : 1) + static_cast<int>(far / longest_piece);
      for (int k = 0; k < cuts; ++k)
        add(piece(at(static_cast<double>(k) / cuts), at(static_cast<double>(k + 1) / cuts)));
    }
  }

  std::vector<Convex> ink;

private:
  void add(const Point* outline, std::size_t corners) {
    for (std::size_t i = 0; i < corners; ++i) {
      if (!reaches(nearest_on(outline[i], outline[i + 1 < corners ? i + 1 : 0]))) continue;
      ink.emplace_back(outline, outline + corners);
      return;
    }
  }

  /// The point of a side that is nearest: a long stem may pass by with both its ends far away.
  Point nearest_on(Point a, Point b) const {
    const Point side = b - a;
    const double far = dot(side, side);
    return far < 1e-12 ? a : a + std::clamp(dot(at_ - a, side) / far, 0.0, 1.0) * side;
  }

  Point at_;
  double within_;
};

Convex disc(double radius) {
  constexpr double near = 0.41421356237309503; // tangent of a sixteenth of a turn
  const double r = radius, n = radius * near;
  return {{r, -n}, {r, n}, {n, r}, {-n, r}, {-r, n}, {-r, -n}, {-n, -r}, {n, -r}};
}

/// What stands in the middle of a disc.
std::vector<Convex> centre_ink(const Figure& figure) {
  constexpr double ring = 0.67, chain = 0.62, end = 0.36;
  if (figure.centre == Centre::magic_ring || figure.centre == Centre::chain_ring) return {disc(ring)};
  if (figure.centre == Centre::second_chain) return {disc(chain)};
  if (figure.centre == Centre::gathered) return {disc(end)};
  std::vector<Convex> ink;
  double y = figure.centre_text.size() > 1 ? 0.1 : -0.3;
  for (const Run& line : figure.centre_text) {
    const double drop = 0.22 * line.size;
    Convex box = line_box({-line.width / 2, y}, line.width, line.size);
    box[0].y -= drop, box[1].y -= drop;
    ink.push_back(std::move(box));
    y -= 0.9;
  }
  return ink;
}

Point aside_of(Point up) { return {up.y, -up.x}; }

/// Whether a stitch of a ring may stand so near to a point.
bool may_be_near(const Figure& figure, const Ring& ring, Point at, double within) {
  constexpr double spare = 1;
  if (figure.form == Form::oval || figure.form == Form::motif || figure.form == Form::sector || ring.edging ||
      figure.bent)
    return true;
  const double height = goes_round(figure) ? length(at) : at.y;
  return ring.inner - height <= within + spare && height - ring.outer <= within + spare;
}

} // namespace

std::vector<Convex> ink_near(const Figure& figure, const Extents& extents, Point at, double within) {
  Near near(at, within);
  for (const Ring& ring : figure.rings) {
    if (!may_be_near(figure, ring, at, within + tallest)) continue;
    for (std::uint32_t i = ring.first_item; i < ring.first_item + ring.items; ++i) {
      const Item& item = figure.items[i];
      if (near.reaches(item.foot, std::max(tallest, item.height + 1)))
        for (Convex& part : ink_of(extents, item))
          item.height > tallest ? near.add_always(std::move(part)) : near.add(part);
    }
  }
  for (const Label& label : figure.labels) near.add_always(label.box);
  for (const Pointer& pointer : figure.pointers) near.add(outline_of(pointer));
  for (const Stroke& stroke : figure.strokes) near.add_line(stroke);
  for (Convex& outline : centre_ink(figure)) near.add_always(std::move(outline));
  if (!(figure.cut == Cut{})) near.add_always(outline_of(figure.cut));
  for (const Placed& placed : figure.placed)
    for (const Convex& outline : outlines_of(placed)) near.add(outline);
  return std::move(near.ink);
}

double air_around(const Placed& placed, const std::vector<Convex>& ink, double most) {
  double air = most;
  for (const Convex& own : outlines_of(placed))
    for (const Convex& other : ink) air = std::min(air, distance(own, other));
  return air;
}

bool is_clear(const Figure& figure, const Extents& extents, const Placed& placed) {
  constexpr double reach = 1.5; // of a sign, with the air round it
  return air_around(placed, ink_near(figure, extents, placed.at, reach), enough) >= sign_air;
}

bool settle_sign(const Figure& figure, const Extents& extents, Point up, int again, Placed& placed) {
  Obstacles near;
  near.add(ink_near(figure, extents, placed.at, neighbourhood));
  const auto air_round = [&near](const Placed& there) { return near.air_around(outlines_of(there), enough); };
  const Point along = aside_of(up);
  const Placed from = placed;
  double best = air_round(from), air = best;
  const int longer = std::max(0, again - patience);
  const int far_along = steps_along + longer * steps_further,
            far_across = steps_across + longer * steps_aside;
  for (int i = -far_along; i <= far_along; ++i)
    for (int j = -far_across; j <= far_across; ++j) {
      const double far = i * afarstep * i * afarstep + j * across_step * j * across_step;
      if (enough - dear_to_move * far <= best + 1e-9) continue;
      const Placed there = moved(from, i * afarstep * along + j * across_step * up);
      const double found = air_round(there);
      if (found - dear_to_move * far > best + 1e-9)
        best = found - dear_to_move * far, air = found, placed = there;
    }
  return air >= sign_air;
}

void push_out(const Figure& figure, const Extents& extents, Point direction, Placed& placed) {
  for (int i = 0; i < most_pushes; ++i) {
    const std::vector<Convex> ink = ink_near(figure, extents, placed.at, neighbourhood);
    if (air_around(placed, ink, enough) >= sign_air) return;
    placed = moved(placed, push_step * direction);
  }
}

} // namespace whorl::layout
