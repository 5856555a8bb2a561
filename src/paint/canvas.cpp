#include "paint/canvas.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace whorl::paint {
namespace {

using drawing::Path;
using drawing::Pen;
using drawing::Verb;
using layout::Point;

/// What the items are drawn with.
struct Brush {
  cairo_t* canvas;
  const drawing::Scene& scene;
  Lettering& lettering;
  const Manner& manner;
  std::vector<double> reaches; ///< of every symbol from its foot, at scale 1

  bool shows(double above, double below) const { return below >= manner.top && above <= manner.bottom; }
};

/// The farthest ink of a path from the origin.
double reach_of(const Path& path) {
  double reach = 0;
  for (const Point& point : path.points) reach = std::max(reach, std::hypot(point.x, point.y));
  return reach;
}

std::vector<double> reaches_of(const drawing::Scene& scene) {
  std::vector<double> reaches;
  for (const auto& symbol : scene.symbols) {
    double reach = 0;
    for (const Pen& pen : symbol.pens) reach = std::max(reach, reach_of(pen.path) + pen.stroke);
    reaches.push_back(reach);
  }
  return reaches;
}

bool shows(const Brush& brush, const Path& path, double width) {
  double above = 1e9, below = -1e9;
  for (const Point& point : path.points) above = std::min(above, point.y), below = std::max(below, point.y);
  return brush.shows(above - width, below + width);
}

void set_color(cairo_t* canvas, drawing::Color color) {
  const auto part = [color](int shift) { return ((color.rgb >> shift) & 0xFF) / 255.0; };
  cairo_set_source_rgb(canvas, part(16), part(8), part(0));
}

void trace(cairo_t* canvas, const Path& path) {
  const Point* next = path.points.data();
  for (const Verb verb : path.verbs) {
    switch (verb) {
    case Verb::move:
      cairo_move_to(canvas, next->x, next->y);
      ++next;
      break;
    case Verb::line:
      cairo_line_to(canvas, next->x, next->y);
      ++next;
      break;
    case Verb::curve:
      cairo_curve_to(canvas, next[0].x, next[0].y, next[1].x, next[1].y, next[2].x, next[2].y);
      next += 3;
      break;
    case Verb::close:
      cairo_close_path(canvas);
      break;
    }
  }
  assert(next == path.points.data() + path.points.size());
}

void stroke(cairo_t* canvas, double width, double dash) {
  cairo_set_line_width(canvas, width);
  cairo_set_dash(canvas, &dash, dash > 0 ? 1 : 0, 0);
  cairo_stroke(canvas);
}

bool are_drawn_alike(const Pen& one, const Pen& other) {
  return one.stroke > 0 && one.stroke == other.stroke && one.dash == other.dash;
}

void apply(cairo_t* canvas, const Pen& pen) {
  if (pen.stroke > 0)
    stroke(canvas, pen.stroke, pen.dash);
  else
    cairo_fill(canvas);
}

/// Pens of one width are one stroke: half the work, and half the PDF.
void draw_pens(cairo_t* canvas, const std::vector<Pen>& pens) {
  for (std::size_t i = 0; i < pens.size(); ++i) {
    trace(canvas, pens[i].path);
    if (i + 1 < pens.size() && are_drawn_alike(pens[i], pens[i + 1])) continue;
    apply(canvas, pens[i]);
  }
}

/// From a symbol's own coordinates (its foot at the origin, up is -y) to the sheet's.
cairo_matrix_t place_of(const drawing::Symbol& symbol) {
  const double cosine = -symbol.up.y * symbol.scale, sine = symbol.up.x * symbol.scale;
  cairo_matrix_t matrix;
  cairo_matrix_init(&matrix, cosine, sine, -sine, cosine, symbol.at.x, symbol.at.y);
  return matrix;
}

void draw_item(const Brush& brush, const drawing::Stroke& item) {
  if (!shows(brush, item.path, item.width)) return;
  set_color(brush.canvas, item.color);
  trace(brush.canvas, item.path);
  stroke(brush.canvas, item.width, item.dash);
}

void draw_item(const Brush& brush, const drawing::Fill& item) {
  if (!shows(brush, item.path, 0)) return;
  set_color(brush.canvas, item.color);
  trace(brush.canvas, item.path);
  cairo_fill(brush.canvas);
}

void draw_item(const Brush& brush, const drawing::Symbol& item) {
  assert(item.symbol < brush.scene.symbols.size());
  const double reach = brush.reaches[item.symbol] * item.scale;
  if (!brush.shows(item.at.y - reach, item.at.y + reach)) return;
  const cairo_matrix_t place = place_of(item);
  set_color(brush.canvas, item.color);
  cairo_save(brush.canvas);
  cairo_transform(brush.canvas, &place);
  draw_pens(brush.canvas, brush.scene.symbols[item.symbol].pens);
  cairo_restore(brush.canvas);
}

void draw_item(const Brush& brush, const drawing::Text& item) {
  constexpr double tallest = 3; // sizes that letters with their marks reach from the base line, in any script
  if (!brush.shows(item.at.y - tallest * item.size, item.at.y + tallest * item.size)) return;
  set_color(brush.canvas, item.color);
  brush.lettering.write(item);
}

void draw_items(const Brush& brush, const std::vector<drawing::Item>& items);

void draw_item(const Brush& brush, const drawing::Group& item) { draw_items(brush, item.items); }

void draw_items(const Brush& brush, const std::vector<drawing::Item>& items) {
  for (const drawing::Item& item : items)
    std::visit([&brush](const auto& drawn) { draw_item(brush, drawn); }, item);
}

/// A PDF without it grows with the square of the number of strokes.
void lay_paper(cairo_t* canvas) {
  set_color(canvas, drawing::ink::paper);
  cairo_paint(canvas);
}

void fix_pens(cairo_t* canvas) {
  cairo_set_antialias(canvas, CAIRO_ANTIALIAS_GRAY);
  cairo_set_line_cap(canvas, CAIRO_LINE_CAP_ROUND);
  cairo_set_line_join(canvas, CAIRO_LINE_JOIN_ROUND);
}

} // namespace

std::vector<std::string> draw(cairo_t* canvas, const drawing::Scene& scene, const Manner& manner) {
  if (manner.paper) lay_paper(canvas);
  fix_pens(canvas);
  cairo_scale(canvas, manner.units_per_mm, manner.units_per_mm);
  Lettering lettering{canvas, scene.language, manner.letters};
  draw_items({canvas, scene, lettering, manner, reaches_of(scene)}, scene.items);
  return lettering.missing();
}

} // namespace whorl::paint
