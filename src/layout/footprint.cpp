#include "layout/footprint.hpp"

#include "fabric/opening.hpp"
#include "layout/contour.hpp"
#include "layout/direction.hpp"
#include "layout/hole.hpp"
#include "layout/room.hpp"
#include "layout/sign.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace whorl::layout {
namespace {

using fabric::Fabric;

constexpr double beyond = 0.20;       ///< of a ring that has none beside it, or a break line
constexpr double beside_join = 0.08;  ///< of a line, about half-way from which the join line runs …
constexpr double off_join = 0.115;    ///< … which half-way is at least so far away
constexpr double after_break = 0.035; ///< of a line, below which the join line comes from a break
constexpr double past_loops = 0.88;   ///< outside heads with loops for another part
constexpr double arc_step = 0.15;     ///< W along an arc that is drawn as straight pieces
constexpr double name_air = 0.10;

/// The outlines of one figure. A place along a ring is an angle of a disc, an x of a strip.
class Outlining {
public:
  Outlining(const Fabric& fabric, const Figure& figure) : fabric_(fabric), figure_(figure) {}

  /// How its sides go from hole to hole of a disc: straight, or where that touches stitches round these,
  /// along the gaps between rings.
  enum class Sidewise : std::uint8_t { straight, stepped };

  /// One copy of a part; empty where the figure does not show its rounds. In a strip its sides leave out the
  /// lines that lead from one row to the next.
  std::vector<std::vector<Point>> outline(const fabric::Footprint& print, const fabric::Covering& stretch,
                                          Sidewise how) {
    if (!find_rings(print)) return {};
    const auto sides = sides_of(print, stretch);
    if (!sides) return {};
    if (!is_disc(figure_)) return pieces_of_outline(*sides);
    return {how == Sidewise::straight ? straight_outline(*sides) : round_outline(*sides)};
  }

  /// The middle of what a copy covers, at the height of its outermost ring.
  std::optional<Point> middle(const fabric::Footprint& print, const fabric::Covering& stretch) {
    if (!find_rings(print)) return std::nullopt;
    const auto sides = sides_of(print, stretch);
    if (!sides) return std::nullopt;
    return point(top(high_), (nearest(high_, sides->first) + nearest(high_, sides->last)) / 2);
  }

private:
  struct Sides {
    double first = 0, last = 0;
  };

  std::vector<Point> straight_outline(const Sides& sides) {
    std::vector<Point> points;
    go_along(bottom(low_), nearest(low_, sides.first), points);
    for (std::uint32_t at = low_; at <= high_; ++at) points.push_back(in_hole(at, sides.first));
    points.push_back(point(top(high_), last_ = nearest(high_, sides.first)));
    go_along(top(high_), nearest(high_, sides.last), points);
    for (std::uint32_t at = high_ + 1; at-- > low_;) points.push_back(in_hole(at, sides.last));
    points.push_back(point(bottom(low_), last_ = nearest(low_, sides.last)));
    go_along(bottom(low_), nearest(low_, sides.first), points);
    return points;
  }

  Point in_hole(std::uint32_t at, double place) const {
    return point((ring(at).inner + ring(at).outer) / 2, nearest(at, place));
  }

  std::vector<Point> round_outline(const Sides& sides) {
    std::vector<Point> points;
    for (std::uint32_t ring = low_; ring <= high_; ++ring) rise(ring, nearest(ring, sides.first), points);
    for (std::uint32_t ring = high_ + 1; ring-- > low_;) fall(ring, nearest(ring, sides.last), points);
    go_along(bottom(low_), nearest(low_, sides.first), points);
    return points;
  }

  std::vector<std::vector<Point>> pieces_of_outline(const Sides& sides) const {
    std::vector<std::vector<Point>> pieces;
    for (std::uint32_t at = low_; at <= high_; ++at) {
      const double one = nearest(at, sides.first), other = nearest(at, sides.last);
      const Point low_one = point(bottom(at), one), high_one = point(top(at), one);
      const Point low_other = point(bottom(at), other), high_other = point(top(at), other);
      if (low_ == high_)
        pieces.push_back({low_one, high_one, high_other, low_other, low_one});
      else if (at == low_)
        pieces.push_back({high_one, low_one, low_other, high_other});
      else if (at == high_)
        pieces.push_back({low_one, high_one, high_other, low_other});
      else
        pieces.insert(pieces.end(), {{low_one, high_one}, {low_other, high_other}});
    }
    return pieces;
  }

  const Ring& ring(std::uint32_t at) const { return figure_.rings[at]; }
  const Item& item(std::uint32_t at, std::uint32_t place) const {
    return figure_.items[ring(at).first_item + place];
  }

  bool find_rings(const fabric::Footprint& print) {
    low_ = high_ = fabric::none;
    for (std::uint32_t i = 0; i < figure_.rings.size(); ++i) {
      const Ring& one = ring(i);
      const bool covered = !one.echo && !one.chain && !one.edging && one.items > 1 &&
                           one.round >= print.first_round && one.last_round <= print.last_round;
      if (!covered) continue;
      if (low_ == fabric::none) low_ = i;
      high_ = i;
    }
    return low_ != fabric::none;
  }

  /// The ring whose stitches are counted, else the one next to it that the figure shows.
  std::uint32_t counted_ring(const fabric::Footprint& print) const {
    for (std::uint32_t i = low_; i <= high_; ++i)
      if (ring(i).round == print.on_round) return i;
    const auto away = [&](std::uint32_t at) {
      const std::uint32_t round = ring(at).round;
      return round > print.on_round ? round - print.on_round : print.on_round - round;
    };
    return away(high_) < away(low_) ? high_ : low_;
  }

  std::optional<Sides> sides_of(const fabric::Footprint& print, const fabric::Covering& stretch) const {
    const std::uint32_t on = counted_ring(print);
    const std::uint64_t here = fabric_.rounds[ring(on).round].makes;
    const std::uint64_t there = std::max(1U, fabric_.rounds[print.on_round].makes);
    const auto first = static_cast<std::uint32_t>(stretch.first * here / there);
    const auto last = static_cast<std::uint32_t>((stretch.last * here + there - 1) / there);
    const auto one = place_behind(on, first), other = place_behind(on, last);
    if (!one || !other || *one == *other) return std::nullopt;
    return Sides{*one, *other};
  }

  double place_of(std::uint32_t at, const Item& one) const {
    return is_disc(figure_) ? ring(at).turned + one.at / ring(at).middle : one.foot.x;
  }

  /// Between a symbol of a ring and the one before it.
  double before(std::uint32_t at, std::uint32_t place) const {
    return (place_of(at, item(at, place - 1)) + place_of(at, item(at, place))) / 2;
  }

  /// Behind so many stitches of a ring, at the end of a symbol; none before the first and behind the last.
  std::optional<double> place_behind(std::uint32_t at, std::uint32_t stitches) const {
    std::uint32_t told = 0;
    for (std::uint32_t i = 0; i + 1 < ring(at).items; ++i) {
      const Item& one = item(at, i);
      for (std::uint32_t j = 0; j < one.count; ++j) told += fabric::has_top(fabric_, one.first + j) ? 1 : 0;
      if (told >= stitches && stitches > 0) return before(at, i + 1);
    }
    return std::nullopt;
  }

  /// The hole of a ring that lies nearest to a place.
  double nearest(std::uint32_t at, double place) const {
    double found = before(at, 1);
    for (std::uint32_t i = 2; i < ring(at).items; ++i)
      if (const double other = before(at, i); std::abs(other - place) < std::abs(found - place))
        found = other;
    return found;
  }

  bool has_loops_on(std::uint32_t at, bool outside) const {
    return keeps_loops(figure_, at) && outside == (side_of_heads(figure_) > 0);
  }

  /// Between a ring and the one outside it.
  double top(std::uint32_t at) const {
    const double outer = ring(at).outer;
    if (has_loops_on(at, true)) return outer + past_loops;
    if (at + 1 >= figure_.rings.size() || ring(at).last_before_break) return outer + beyond;
    if (has_loops_on(at + 1, false)) return outer + beyond;
    if (!is_disc(figure_)) return outer + beside(at);
    return (outer + ring(at + 1).inner) / 2;
  }

  double bottom(std::uint32_t at) const {
    const double inner = ring(at).inner;
    if (has_loops_on(at, false)) return inner - past_loops;
    const bool broken = at > 0 && ring(at - 1).last_before_break;
    if (broken && !is_disc(figure_)) return inner - after_break;
    if (at == 0 || broken) return inner - beyond;
    return is_disc(figure_) ? top(at - 1) : inner - beside(at - 1);
  }

  /// From a line of a strip towards the next, on both sides of the join line half-way between them.
  double beside(std::uint32_t lower) const {
    return std::min(beside_join, (ring(lower + 1).inner - ring(lower).outer) / 2 - off_join);
  }

  Point point(double height, double place) const {
    if (!is_disc(figure_)) return {place, height};
    return on_circle(height, place, figure_.clockwise ? Way::clockwise : Way::anticlockwise);
  }

  /// Along a ring's gap, from the last of the points.
  void go_along(double height, double to, std::vector<Point>& points) {
    const double from = points.empty() ? to : last_;
    const double far = is_disc(figure_) ? height * std::abs(to - from) : 0;
    const int pieces = std::clamp(static_cast<int>(far / arc_step), 1, 400);
    for (int i = points.empty() ? pieces : 1; i <= pieces; ++i)
      points.push_back(point(height, from + (to - from) * i / pieces));
    last_ = to;
  }

  void rise(std::uint32_t at, double place, std::vector<Point>& points) {
    go_along(bottom(at), place, points);
    points.push_back(point(top(at), place));
  }

  void fall(std::uint32_t at, double place, std::vector<Point>& points) {
    go_along(top(at), place, points);
    points.push_back(point(bottom(at), place));
  }

  const Fabric& fabric_;
  const Figure& figure_;
  std::uint32_t low_ = fabric::none, high_ = fabric::none; ///< rings of the footprint at hand
  double last_ = 0;                                        ///< the place of the last point
};

bool may_have(const Figure& figure) {
  return figure.form == Form::disc || figure.form == Form::disc_inward || figure.form == Form::strip;
}

template <class Each> void for_each_copy(const Fabric& fabric, const Figure& figure, Each each) {
  if (!may_have(figure)) return;
  for (const fabric::Footprint& print : fabric.footprints)
    if (fabric.rounds[print.first_round].part == figure.part)
      for (const fabric::Covering& stretch : print.stitches) each(print, stretch);
}

/// Whether a line keeps off the stitches that it goes between.
bool is_clear(const Figure& figure, const Extents& extents, const std::vector<Point>& line) {
  constexpr double half_pen = 0.0225, air = 0.02, near = 0.6;
  for (std::size_t i = 1; i < line.size(); ++i) {
    const Point a = line[i - 1], b = line[i], middle = 0.5 * (a + b);
    const std::vector<Convex> ink = ink_near(figure, extents, middle, near + length(b - a) / 2);
    const Convex piece{a, b};
    for (const Convex& other : ink)
      if (distance(piece, other) < half_pen + air) return false;
  }
  return true;
}

/// The outlines of a copy of a part; none where stitches stand too close for one to go between them.
std::vector<std::vector<Point>> clear_outline(const Fabric& fabric, const Figure& figure,
                                              const Extents& extents, const fabric::Footprint& print,
                                              const fabric::Covering& stretch) {
  for (const auto how : {Outlining::Sidewise::straight, Outlining::Sidewise::stepped}) {
    std::vector<std::vector<Point>> lines = Outlining(fabric, figure).outline(print, stretch, how);
    if (std::all_of(lines.begin(), lines.end(),
                    [&](const std::vector<Point>& line) { return is_clear(figure, extents, line); }))
      return lines;
  }
  return {};
}

/// Whether the outline of a copy was drawn.
bool shows(const Fabric& fabric, const Figure& figure, const fabric::Footprint& print,
           const fabric::Covering& stretch) {
  for (const auto how : {Outlining::Sidewise::straight, Outlining::Sidewise::stepped}) {
    const std::vector<std::vector<Point>> lines = Outlining(fabric, figure).outline(print, stretch, how);
    const auto is_first = [&](const Stroke& stroke) {
      return stroke.line == Line::footprint && !lines.empty() && stroke.points == lines.front();
    };
    if (std::any_of(figure.strokes.begin(), figure.strokes.end(), is_first)) return true;
  }
  return false;
}

/// A name on the ray of a point, with a tick that leads to it.
Placed name_at(const Figure& figure, Point middle, double edge, const Run& text) {
  Point up{0, 1}, at{middle.x, edge};
  if (is_disc(figure)) {
    const double far = std::max(1e-9, std::sqrt(middle.x * middle.x + middle.y * middle.y));
    up = (1 / far) * middle;
    at = edge * up;
  }
  Placed name{Sign::sewn, at, up, text, {}, 0};
  name.text_at = at + (tick_length + name_air + half_room(text, up)) * up;
  return name;
}

} // namespace

void add_footprints(const Fabric& fabric, const Extents& extents, Figure& figure) {
  std::vector<Stroke> strokes;
  for_each_copy(fabric, figure, [&](const fabric::Footprint& print, const fabric::Covering& stretch) {
    for (std::vector<Point>& points : clear_outline(fabric, figure, extents, print, stretch))
      strokes.push_back({Line::footprint, std::move(points), false, 0});
  });
  figure.strokes.insert(figure.strokes.end(), strokes.begin(), strokes.end());
}

void add_footprint_names(const Fabric& fabric, const Extents& extents, double edge, Figure& figure) {
  std::vector<Placed> names;
  for_each_copy(fabric, figure, [&](const fabric::Footprint& print, const fabric::Covering& stretch) {
    const auto middle = Outlining(fabric, figure).middle(print, stretch);
    if (!middle || !shows(fabric, figure, print, stretch)) return;
    Run text{fabric.parts[print.part].name, Face::italic, sign_text, 0, 0};
    text.width = text.size * text_width(extents, text.face, text.text);
    names.push_back(name_at(figure, *middle, edge, text));
  });
  for (Placed& name : names) {
    push_out(figure, extents, name.up, name);
    figure.placed.push_back(std::move(name));
  }
}

} // namespace whorl::layout
