#include "drawing/symbol.hpp"

#include "drawing/composing.hpp"
#include "drawing/outline.hpp"
#include "drawing/stitch_shape.hpp"
#include "drawing/type.hpp"

#include <algorithm>
#include <cmath>

namespace whorl::drawing {
namespace {

using layout::Base;

constexpr double loop_under_cross = 0.16, loop_under_foot = 0.30, loop_under_each = 0.24;
constexpr double over_hook = 0.36;                        ///< where a stem leaves the hook round a post
constexpr double over_ground = 0.60, each_further = 0.22; ///< of a spike: one round down, and each more
constexpr double middle_of_cross = 0.40;
constexpr double stem_in_cross = 0.12,
                 stem_under_foot = 0.19; ///< of a spike whose stem leads to its own foot

std::vector<Point> different_feet(const Composing& drawing) {
  std::vector<Point> feet = drawing.out.extent.feet;
  feet.erase(std::unique(feet.begin(), feet.end()), feet.end());
  return feet;
}

/// How much higher a stitch stands that does not go into a top.
double lift_of(const layout::SymbolKey& key) {
  if (key.base == Base::top) return 0;
  return key.base == Base::below ? over_ground + each_further * (std::max<int>(1, key.down) - 1) : over_hook;
}

void lift(Composed& symbol, double by) {
  for (Pen& pen : symbol.pens)
    for (Point& p : pen.path.points) p.y += by;
  for (Point& tip : symbol.extent.tips) tip.y += by;
}

/// Under each foot the hook round a post, or the long stem of a spike with an arrowhead for each round.
void draw_base(Composing& drawing, const layout::SymbolKey& key, double lifted, bool crosses) {
  for (const Point& foot : different_feet(drawing)) {
    const Point ground{foot.x, 0}, joint{foot.x, lifted + (crosses ? middle_of_cross : foot.y)};
    if (key.base == Base::below && key.down == 0) {
      drawing.stretch("stem", ground,
                      {foot.x, lifted + (crosses ? stem_in_cross : foot.y - stem_under_foot)});
      continue;
    }
    if (key.base == Base::below) {
      drawing.stretch("stem", ground, joint);
      for (int i = 0; i < std::max<int>(1, key.down); ++i) drawing.put("below", {{foot.x, i * each_further}});
      continue;
    }
    drawing.put(key.base == Base::front_post ? "hook-front" : "hook-back", {ground});
    if (crosses) drawing.stretch("stem", {foot.x, over_hook}, joint);
  }
}

void draw_loops(Composing& drawing, const stitch::Shape& shape, std::uint8_t loops, bool crosses) {
  if (loops == stitch::both || loops == stitch::no_loop) return;
  if (shape.front_loops_only && loops == stitch::front) return;
  const std::vector<Point> feet = different_feet(drawing);
  double under = loop_under_foot;
  if (feet.size() > 1)
    under = loop_under_each;
  else if (crosses)
    under = loop_under_cross;
  const char* mark = loops == stitch::back ? "cap" : loops == stitch::front ? "cup" : "third";
  for (const Point& foot : feet) drawing.put(mark, {{foot.x, 0.0 - under}});
}

/// What the pens from `first` on ink, as convex pieces.
std::vector<layout::Convex> ink_of(const std::vector<Pen>& pens, std::size_t first, std::size_t last) {
  std::vector<layout::Convex> ink;
  for (std::size_t i = first; i < last; ++i) append_ink(ink, pens[i]);
  return ink;
}

/// A spindle is one piece: nothing stands between its legs.
void merge(std::vector<layout::Convex>& ink) {
  std::vector<Point> corners;
  for (const layout::Convex& piece : ink) corners.insert(corners.end(), piece.begin(), piece.end());
  ink = {convex_around(corners, 0)};
}

/// The ink as convex pieces and how wide it is; how deep, where pens from `marks` on are marks of loops. The
/// first `body` pens are above what stands on the ground.
void measure(Composed& composed, std::size_t body, std::size_t marks, bool spindle) {
  layout::SymbolExtent& extent = composed.extent;
  const std::vector<Pen>& pens = composed.pens;
  extent.ink = ink_of(pens, 0, body);
  if (spindle) merge(extent.ink);
  for (layout::Convex& piece : ink_of(pens, body, marks)) extent.ink.push_back(std::move(piece));
  for (layout::Convex& piece : ink_of(pens, marks, pens.size())) {
    for (const Point& point : piece) extent.below = std::max(extent.below, 0.0 - point.y);
    extent.ink.push_back(std::move(piece));
  }
  double reach = 0;
  for (const layout::Convex& piece : extent.ink)
    for (const Point& point : piece) reach = std::max(reach, std::abs(point.x));
  extent.width = 2 * reach;
}

layout::Widths label_widths(bool bold, bool italic) {
  return {advance_widths(Typeface::sans, bold, italic), text_width(Typeface::sans, bold, italic, "0")};
}

} // namespace

std::vector<Pen> put(const Mark& mark, Point at, Point up, double scale) {
  const std::vector<Mark> marks{mark};
  Composing drawing{marks, {}, {}};
  drawing.put(mark.name, upright(at, up, scale));
  for (Pen& pen : drawing.out.pens) {
    pen.stroke *= scale;
    pen.dash *= scale;
  }
  return drawing.out.pens;
}

std::vector<Pen> in_millimetres(std::vector<Pen> pens, double millimetres) {
  for (Pen& pen : pens) {
    pen.stroke *= millimetres;
    pen.dash *= millimetres;
    for (Point& p : pen.path.points) p = {p.x * millimetres, 0.0 - p.y * millimetres};
  }
  return pens;
}

namespace {

/// A single crochet that the pattern tells apart from the plain one has the other of its two signs.
Style style_for(const stitch::StitchKind& kind, Style style) {
  const stitch::StitchKind& plain = stitch::single_crochet();
  const bool apart = kind.own && kind.name != plain.name && kind.moves == plain.moves;
  if (apart) style.single = style.single == Style::Single::plus ? Style::Single::cross : Style::Single::plus;
  return style;
}

} // namespace

Composed compose(const stitch::StitchKind& kind, const layout::SymbolKey& key, const std::vector<Mark>& marks,
                 const Style& style, double height) {
  const stitch::Shape shape = stitch::shape_of(kind);
  const int n = std::max<int>(1, key.in_one);
  const double lifted = shape.legs > 0 ? lift_of(key) : 0;
  const bool within = key.base != Base::below && is_stretched(shape) && !shape.feet_joined;
  const double own = own_height(shape) + (within ? 0 : lifted);
  Composing drawing{marks, style_for(kind, style), {}};
  layout::SymbolExtent& extent = drawing.out.extent;
  extent.height = height > 0 && is_stretched(shape) ? height : own;
  extent.slot = std::max({1, kind.makes, shape.feet_joined ? 1 : kind.takes});
  draw_stitch(drawing, shape, n, extent.height - lifted);
  if (shape.legs == 1) extent.slot = std::max(extent.slot, static_cast<double>(n * kind.makes));
  extent.floats = is_single(shape) && !shape.feet_joined;
  extent.stretches =
      is_stretched(shape) && shape.legs == 1 && !shape.feet_joined && n == 1 && key.base == layout::Base::top;
  const std::size_t body = drawing.out.pens.size();
  const bool crosses = extent.floats && extent.feet.size() == 1;
  if (lifted > 0) lift(drawing.out, lifted), draw_base(drawing, key, lifted, crosses && n == 1);
  const std::size_t unmarked = drawing.out.pens.size();
  draw_loops(drawing, shape, key.loops, crosses);
  measure(drawing.out, body, unmarked, shape.feet_joined && n == 1);
  return std::move(drawing.out);
}

layout::Extents extents_of(const fabric::Fabric& fabric, const std::vector<Mark>& marks, const Style& style) {
  layout::Extents extents;
  for (const layout::SymbolKey& key : layout::symbols_of(fabric))
    extents.symbols.emplace_back(key, compose(fabric.kinds[key.kind], key, marks, style).extent);
  extents.regular = label_widths(false, false);
  extents.bold = label_widths(true, false);
  extents.italic = label_widths(false, true);
  return extents;
}

} // namespace whorl::drawing
