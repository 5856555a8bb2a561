#include "layout/edging.hpp"

#include "layout/room.hpp"
#include "layout/sign.hpp"

#include <algorithm>

namespace whorl::layout {
namespace {

constexpr double label_air = 0.16, label_step = 0.15, label_reach = 9;

double far_from(const Convex& box, Point p) {
  return distance(box, {p, p + Point{1e-6, 0}, p + Point{0, 1e-6}});
}

/// Whether a box stands outside all rounds round an outline.
bool is_outside(const Surround& outline, double outermost, const Convex& box) {
  return std::all_of(box.begin(), box.end(),
                     [&](Point corner) { return away_from(outline, corner) >= outermost; });
}

/// The free place for a line of letters, outside all rounds, that is nearest to a point.
Point free_place(const Extents& extents, const Straight& drawn, Point near, double width) {
  const std::vector<Convex> ink = ink_near(drawn.figure, extents, near, label_reach + width);
  const double high = letter_height * number_size, outermost = drawn.figure.rings.back().outer;
  const int steps = static_cast<int>(label_reach / label_step);
  double least = 1e300;
  Point found = near;
  for (int i = -steps; i <= steps; ++i)
    for (int j = -steps; j <= steps; ++j) {
      const Point at = near + Point{i * label_step - width / 2, j * label_step - high / 2};
      const Convex box = line_box(at, width, number_size);
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
    const Point at = free_place(extents, drawn, pointer->tip, line_width(runs));
    figure.labels.push_back(straight_label(at, std::move(runs), i, Tone::ink));
  }
}

} // namespace whorl::layout
