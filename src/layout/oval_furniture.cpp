#include "layout/oval_furniture.hpp"

#include "layout/contour.hpp"

#include <string>
#include <utility>

namespace whorl::layout {
namespace {

constexpr double break_middle = 0.575; ///< outside the heads of a folded ring
constexpr int zigzags = 8;
constexpr double zigzag_high = 0.20, zigzag_long = 0.48;
constexpr double arrow_from = 0.9, arrow_long = 2.6, barb_long = 0.42, barb_aside = 0.19;

void run_on(const Stadium& stadium, const Lap& lap, double from, double to, std::vector<Point>& points) {
  const std::vector<Point> curve = curve_on(stadium, lap, from, to);
  points.insert(points.end(), curve.begin() + (points.empty() ? 0 : 1), curve.end());
}

} // namespace

Stroke break_on(const Stadium& stadium, const Lap& heads, double from, double to) {
  const Lap lap = square_to(stadium, heads, heads.r + break_middle);
  const double begin = carried(stadium, heads, from, lap), end = carried(stadium, heads, to, lap);
  Stroke line{Line::fold_break, {}, true};
  double at = begin;
  for (int i = 0; i < zigzags; ++i) {
    const double middle = begin + (end - begin) * (i + 0.5) / zigzags;
    const auto off = [&](double along_line, double out) {
      const double place = middle + along_line * zigzag_long;
      return point_on(stadium, lap, place) + out * outward(stadium, lap, place);
    };
    run_on(stadium, lap, at, middle - zigzag_long / 2, line.points);
    line_to(off(-1.0 / 6, zigzag_high), line.points);
    line_to(off(1.0 / 6, -zigzag_high), line.points);
    line_to(off(0.5, 0), line.points);
    at = middle + zigzag_long / 2;
  }
  run_on(stadium, lap, at, end, line.points);
  return line;
}

std::vector<Stroke> arrow_on(const Stadium& stadium, const Lap& lap) {
  const double to = arrow_from + arrow_long;
  const Point tip = point_on(stadium, lap, to), on = along(stadium, lap, to);
  const Point back = tip - barb_long * on, aside = barb_aside * outward(stadium, lap, to);
  return {{Line::direction, curve_on(stadium, lap, arrow_from, to), true},
          {Line::direction, {back + aside, tip, back - aside}, false}};
}

} // namespace whorl::layout
