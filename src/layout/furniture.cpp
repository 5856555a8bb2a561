#include "layout/furniture.hpp"

#include "layout/break_line.hpp"
#include "layout/sign.hpp"
#include "layout/turn.hpp"

#include <algorithm>
#include <utility>

namespace whorl::layout {
namespace {

/// Labels stand beside the first stitches, upright where the gutter leans too: their text begins beside the
/// pointer, on its height.
Point text_start(const Size& size, double width, Way way) {
  const Point pointer = on_circle(size.middle, pointer_angle(size), way);
  const double beside = pointer_room - pointer_length / 2;
  return {way == Way::anticlockwise ? pointer.x + beside : pointer.x - beside - width, pointer.y};
}

Label label_at(Point at, std::vector<Run> runs, double size, std::uint32_t ring, Tone tone) {
  Label label;
  label.at = at;
  label.box = line_box(at, line_width(runs), size);
  label.runs = std::move(runs);
  label.ring = ring;
  label.tone = tone;
  return label;
}

/// The corners of a zigzag across a break line.
void add_zigzag(double radius, double angle, Way way, std::vector<Point>& points) {
  const double sixth = ring_zigzag_long / 6 / radius;
  points.push_back(on_circle(radius, angle - 3 * sixth, way));
  points.push_back(on_circle(radius + zigzag_high, angle - sixth, way));
  points.push_back(on_circle(radius - zigzag_high, angle + sixth, way));
  points.push_back(on_circle(radius, angle + 3 * sixth, way));
}

void widen(const std::vector<Point>& points, Figure& figure) {
  for (const Point& point : points) {
    figure.low = {std::min(figure.low.x, point.x), std::min(figure.low.y, point.y)};
    figure.high = {std::max(figure.high.x, point.x), std::max(figure.high.y, point.y)};
  }
}

/// What stands behind the text on the side of the label that is turned away from the pointer.
void add_yarn_signs(const Lettering& text, const Size& size, std::uint32_t ring, Way way, Figure& figure) {
  const bool mirrored = way != Way::anticlockwise;
  for (Placed& sign : yarn_signs(text, text_start(size, text.width, way), mirrored, ring))
    figure.placed.push_back(std::move(sign));
}

} // namespace

void add_label(const Band& band, const Size& size, std::uint32_t ring, Way way, Figure& figure) {
  const Tone tone = figure.rings[ring].echo ? Tone::grey : Tone::ink;
  const Lettering& text = band.label;
  const auto line_at = [&](const std::vector<Run>& line, double above, double high) {
    const Point middle{0, above - letter_height * high / 2};
    return label_at(text_start(size, line_width(line), way) + middle, line, high, ring, tone);
  };
  figure.labels.push_back(line_at(text.first, 0, number_size));
  if (!text.below.empty()) figure.labels.push_back(line_at(text.below, text.second, second_size));
  add_yarn_signs(text, size, ring, way, figure);
  if (figure.rings[ring].owner) return;
  const double angle = pointer_angle(size);
  Pointer pointer;
  pointer.direction = along(angle, way);
  pointer.tip = on_circle(size.middle, angle, way) + (pointer_length / 2) * pointer.direction;
  pointer.ring = ring;
  pointer.tone = tone;
  figure.pointers.push_back(pointer);
}

void add_break_line(const Size& size, Way way, Figure& figure) {
  const double radius = size.outer + ring_break_middle;
  const double beside = arc_sine(size.gutter / 2 / radius), open = 2 * pi - 2 * beside;
  const double from = size.turned + beside;
  const double half = ring_zigzag_long / 2 / radius;
  Stroke line{Line::fold_break, {}, true};
  double at = from;
  for (int i = 0; i < ring_zigzags; ++i) {
    const double angle = from + open * (i + 0.5) / ring_zigzags;
    std::vector<Point> corners;
    add_zigzag(radius, angle, way, corners);
    curve_on(radius, at, angle - half, way, line.points);
    for (std::size_t j = 1; j < corners.size(); ++j) line_to(corners[j], line.points);
    at = angle + half;
  }
  curve_on(radius, at, from + open, way, line.points);
  figure.strokes.push_back(std::move(line));
}

void add_arrow(double radius, const Size& last, Way way, Figure& figure) {
  const double from = last.turned + arc_sine(std::min(1.0, last.gutter / 2 / radius)),
               to = from + arrow_long / radius;
  figure.strokes.push_back({Line::direction, circle_curve(radius, from, to, way), true});
  figure.strokes.push_back(arrow_head(on_circle(radius, to, way), along(to, way), outward(to, way)));
}

void add_gathering(double radius, Figure& figure) {
  figure.strokes.push_back({Line::gathering, circle_curve(radius, 0, 2 * pi, Way::anticlockwise), true});
}

void bound(double radius, Figure& figure) {
  figure.low = {-figure.half_core - radius, -radius};
  figure.high = {figure.half_core + radius, radius};
  for (const Label& label : figure.labels) widen(label.box, figure);
  for (const Stroke& stroke : figure.strokes) widen(stroke.points, figure);
  for (const Ground& ground : figure.grounds) widen(ground.outline, figure);
  for (const Placed& placed : figure.placed)
    for (const Convex& outline : outlines_of(placed)) widen(outline, figure);
}

} // namespace whorl::layout
