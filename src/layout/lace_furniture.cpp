#include "layout/lace_furniture.hpp"

#include "layout/break_line.hpp"
#include "layout/cut.hpp"
#include "layout/direction.hpp"
#include "layout/figure.hpp"
#include "layout/flag.hpp"
#include "layout/furniture.hpp"
#include "layout/lace_ground.hpp"
#include "layout/placed.hpp"
#include "layout/section.hpp"

#include <algorithm>

namespace whorl::layout {
namespace {

constexpr int arrow_pieces = 12;

std::vector<Convex> ink_of_ring(const Extents& extents, const Lace& lace, std::size_t ring) {
  return layout::ink_of_ring(extents, contour_of(lace, lace.figure.rings[ring]), lace.rings[ring]);
}

double edge_of(const Extents& extents, const Lace& lace) {
  double edge = 0;
  for (std::size_t i = 0; i < lace.rings.size(); ++i)
    for (const Convex& piece : ink_of_ring(extents, lace, i))
      for (const Point& p : piece) edge = std::max(edge, length(p));
  return edge;
}

/// It begins where the last round does.
void add_arrow(const Extents& extents, Lace& lace) {
  const Rounded& contour = lace.contour;
  double r = 0;
  for (const Convex& piece : layout::ink_of_ring(extents, contour, lace.rings.back()))
    for (const Point& p : piece) r = std::max(r, spot_of(contour, p).r);
  r += arrow_gap;
  const LaceRing& last = lace.rings.back();
  const double from = carried(contour, last.r, last.at.front(), r),
               to = from + arrow_long / length_of(contour, r);
  Stroke shaft{Line::direction, {}, false};
  for (int i = 0; i <= arrow_pieces; ++i)
    shaft.points.push_back(point_on(contour, r, from + (to - from) * i / arrow_pieces));
  lace.figure.strokes.push_back(std::move(shaft));
  const Point tip = point_on(contour, r, to), out = outward(contour, to);
  const Point on = contour.way == Way::anticlockwise ? Point{0 - out.y, out.x} : Point{out.y, 0 - out.x};
  lace.figure.strokes.push_back(arrow_head(tip, on, out));
}

/// A motif reaches no further than its ink and what it is begun with.
void bound_ink(const Extents& extents, Lace& lace) {
  Figure& figure = lace.figure;
  const auto reach = [&figure](Point p) {
    figure.low = {std::min(figure.low.x, p.x), std::min(figure.low.y, p.y)};
    figure.high = {std::max(figure.high.x, p.x), std::max(figure.high.y, p.y)};
  };
  bound(0, figure);
  const double core = centre_reach(figure);
  reach({-core, -core}), reach({core, core});
  for (std::size_t i = 0; i < lace.rings.size(); ++i)
    for (const Convex& piece : ink_of_ring(extents, lace, i))
      for (const Point& p : piece) reach(p);
}

} // namespace

Rounded contour_of(const Lace& lace, const Ring& ring) {
  const bool clockwise = (lace.contour.way == Way::clockwise) != ring.against;
  return {lace.contour.corners, clockwise ? Way::clockwise : Way::anticlockwise, lace.contour.corner,
          lace.contour.ahead};
}

std::vector<int> furnish_lace(const fabric::Fabric& fabric, const Extents& extents, const Page& page,
                              int again, Lace& lace) {
  Figure& figure = lace.figure;
  const double outside = edge_of(extents, lace);
  figure.centre_radius = figure.rings.front().inner;
  if (!is_turned(figure) && figure.form != Form::sector) add_arrow(extents, lace);
  add_cut(fabric, extents, figure);
  std::vector<int> crowded = add_posts(fabric, extents, figure, again);
  for (const int ring : add_ticks(fabric, extents, outside, figure, again)) crowded.push_back(ring);
  for (const int ring : add_flags(fabric, extents, figure, again)) crowded.push_back(ring);
  add_front(fabric, extents, page, outside, figure);
  add_lace_grounds(fabric, extents, page.main_yarn, lace);
  bound_ink(extents, lace);
  return crowded;
}

} // namespace whorl::layout
