#include "layout/oval_furniture.hpp"

#include "layout/break_line.hpp"
#include "layout/contour.hpp"

#include <string>
#include <utility>

namespace whorl::layout {
namespace {

constexpr double arrow_from = 0.9; ///< from where the last round begins

void run_on(const Stadium& stadium, const Lap& lap, double from, double to, std::vector<Point>& points) {
  const std::vector<Point> curve = curve_on(stadium, lap, from, to);
  points.insert(points.end(), curve.begin() + (points.empty() ? 0 : 1), curve.end());
}

} // namespace

Stroke break_on(const Stadium& stadium, const Lap& heads, double from, double to) {
  const Lap lap = square_to(stadium, heads, heads.r + ring_break_middle);
  const double begin = carried(stadium, heads, from, lap), end = carried(stadium, heads, to, lap);
  Stroke line{Line::fold_break, {}, true};
  double at = begin;
  for (int i = 0; i < ring_zigzags; ++i) {
    const double middle = begin + (end - begin) * (i + 0.5) / ring_zigzags;
    const auto off = [&](double along_line, double out) {
      const double place = middle + along_line * ring_zigzag_long;
      return point_on(stadium, lap, place) + out * outward(stadium, lap, place);
    };
    run_on(stadium, lap, at, middle - ring_zigzag_long / 2, line.points);
    line_to(off(-1.0 / 6, zigzag_high), line.points);
    line_to(off(1.0 / 6, -zigzag_high), line.points);
    line_to(off(0.5, 0), line.points);
    at = middle + ring_zigzag_long / 2;
  }
  run_on(stadium, lap, at, end, line.points);
  return line;
}

std::vector<Stroke> arrow_on(const Stadium& stadium, const Lap& lap) {
  const double to = arrow_from + arrow_long;
  return {{Line::direction, curve_on(stadium, lap, arrow_from, to), true},
          arrow_head(point_on(stadium, lap, to), along(stadium, lap, to), outward(stadium, lap, to))};
}

} // namespace whorl::layout
