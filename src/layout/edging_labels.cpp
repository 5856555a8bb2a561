#include "layout/edging.hpp"

#include "layout/room.hpp"
#include "layout/sign.hpp"

#include <algorithm>

namespace whorl::layout {
namespace {

constexpr double label_air = 0.28, label_step = 0.15, label_reach = 9;

double far_from(const Convex& box, Point p) {
  return distance(box, {p, p + Point{1e-6, 0}, p + Point{0, 1e-6}});
}

/// Whether a box stands outside all rounds round an outline.
bool is_outside(const Surround& outline, double outermost, const Convex& box) {
  return std::all_of(box.begin(), box.end(),
                     [&](Point corner) { return away_from(outline, corner) >= outermost; });
}

/// The free place for a line of letters and the signs behind it, outside all rounds, that is nearest to a
/// point.
Point free_place(const Extents& extents, const Straight& drawn, Point near, double width, double high) {
  const std::vector<Convex> ink = ink_near(drawn.figure, extents, near, label_reach + width);
  const double outermost = drawn.figure.rings.back().outer;
  const int steps = static_cast<int>(label_reach / label_step);
  double least = 1e300;
  Point found = near;
  for (int i = -steps; i <= steps; ++i)
    for (int j = -steps; j <= steps; ++j) {
      const Point at = near + Point{i * label_step - width / 2, j * label_step - high / 2};
      const Convex box = line_box(at, width, high / letter_height);
      const double far = far_from(box, near);
      if (far >= least || !is_outside(drawn.outline, outermost, box)) continue;
      const bool clear = std::all_of(ink.begin(), ink.end(),
                                     [&](const Convex& other) { return distance(box, other) >= label_air; });
      if (clear) least = far, found = at;
    }
  return found;
}

} // namespace

void add_edging_labels(const Extents& extents, Straight& drawn) {
  constexpr double second_space = 0.20;
  Figure& figure = drawn.figure;
  for (std::uint32_t i = 0; i < figure.rings.size(); ++i) {
    if (!figure.rings[i].edging) continue;
    const auto pointer = std::find_if(figure.pointers.begin(), figure.pointers.end(),
                                      [i](const Pointer& one) { return one.ring == i; });
    std::vector<Run> runs = drawn.courses[i].band.label.first;
    double width = line_width(runs) + second_space;
    for (Run run : drawn.courses[i].band.label.below) {
      run.x = width;
      width += run.width;
      runs.push_back(run);
    }
    Lettering signs;
    signs.width = line_width(runs);
    signs.flag = drawn.courses[i].band.label.flag;
    signs.attached = drawn.courses[i].band.label.attached;
    put_signs_behind(signs);
    const double letters = letter_height * number_size, high = signs.flag > 0 ? 2 * flag_reach : letters;
    const Point low = free_place(extents, drawn, pointer->tip, signs.width, high),
                at = low + Point{0, (high - letters) / 2};
    figure.labels.push_back(straight_label(at, std::move(runs), i, Tone::ink));
    for (Placed& sign : yarn_signs(signs, at + Point{0, letters / 2}, false, i))
      figure.placed.push_back(std::move(sign));
  }
}

} // namespace whorl::layout
