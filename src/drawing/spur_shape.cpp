#include "drawing/spur_shape.hpp"

#include "drawing/stitch_shape.hpp"

#include <algorithm>

namespace whorl::drawing {

using layout::Point;

namespace {

namespace size {
constexpr double foot = 0.16, oval_half = 0.16, pitch = 0.68;
constexpr double beside = 0.12;                 ///< air between a chain and the stitch in it
constexpr double stitch = 0.80;                 ///< of a stitch of the round, so that bars keep apart
constexpr double tallest = 4.2, smallest = 0.5; ///< a long one is drawn smaller
} // namespace size

/// A stitch by itself, lying with its foot at `at` and its head to the right.
void put_lying(Composing& drawing, const stitch::Shape& shape, Point at, double scale) {
  Composing one{drawing.marks, drawing.style, {}};
  draw_stitch(one, shape, 1, own_height(shape));
  for (Pen pen : one.out.pens) {
    for (Point& p : pen.path.points) p = at + scale * Point{p.y, 0.0 - p.x};
    drawing.out.pens.push_back(std::move(pen));
  }
}

double tallest_of(const std::vector<stitch::Shape>& stitches) {
  double height = 0;
  for (const stitch::Shape& shape : stitches) height = std::max(height, own_height(shape));
  return height;
}

} // namespace

void draw_spur(Composing& drawing, const stitch::Shape& shape) {
  const double natural = size::pitch * shape.picot;
  const double scale = std::max(size::smallest, std::min(1.0, size::tallest / natural));
  const double reach =
      scale * (2 * size::oval_half + size::beside + size::stitch * tallest_of(shape.back)) + size::beside;
  const double axis = scale * size::oval_half - reach / 2;
  const auto chain_at = [&](double chain) {
    return Point{axis, size::foot + scale * size::pitch * (chain + 0.5)};
  };
  for (int i = 0; i < shape.picot; ++i) drawing.put("oval", {chain_at(i), {0, scale}, {0.0 - scale, 0}});
  const int skipped = shape.picot - static_cast<int>(shape.back.size()); // at the hook
  double chain = shape.picot - 1 - std::clamp(skipped, 0, 1 + shape.back.front().height / 3);
  for (const stitch::Shape& stitch : shape.back) {
    const Point beside{scale * (size::oval_half + size::beside), 0};
    put_lying(drawing, stitch, chain_at(chain) + beside, scale * size::stitch);
    chain -= 1;
  }
  drawing.out.extent.height = size::foot + scale * natural;
  drawing.out.extent.tips = {{0, drawing.out.extent.height}};
  drawing.out.extent.on_heads = true;
  drawing.out.extent.slot = reach;
}

} // namespace whorl::drawing
