#include "plain_page.hpp"

#include <cairo.h>

#include <cmath>

namespace {

using namespace whorl::drawing;

void color(cairo_t* canvas, Color color) {
  cairo_set_source_rgb(canvas, (color.rgb >> 16 & 255) / 255.0, (color.rgb >> 8 & 255) / 255.0,
                       (color.rgb & 255) / 255.0);
}

void trace(cairo_t* canvas, const Path& path) {
  const Point* at = path.points.data();
  for (const Verb verb : path.verbs) {
    if (verb == Verb::move) cairo_move_to(canvas, at->x, at->y);
    if (verb == Verb::line) cairo_line_to(canvas, at->x, at->y);
    if (verb == Verb::curve) cairo_curve_to(canvas, at[0].x, at[0].y, at[1].x, at[1].y, at[2].x, at[2].y);
    if (verb == Verb::close) cairo_close_path(canvas);
    at += verb == Verb::curve ? 3 : verb == Verb::close ? 0 : 1;
  }
}

void ink(cairo_t* canvas, double stroke) {
  if (stroke > 0) {
    cairo_set_line_width(canvas, stroke);
    cairo_stroke(canvas);
  } else {
    cairo_fill(canvas);
  }
}

struct Painter {
  cairo_t* canvas;
  const Scene& scene;

  void operator()(const Stroke& item) const {
    color(canvas, item.color);
    trace(canvas, item.path);
    ink(canvas, item.width);
  }
  void operator()(const Fill& item) const {
    color(canvas, item.color);
    trace(canvas, item.path);
    ink(canvas, 0);
  }
  void operator()(const Symbol& item) const {
    cairo_matrix_t place;
    cairo_matrix_init(&place, -item.up.y * item.scale, item.up.x * item.scale, -item.up.x * item.scale,
                      -item.up.y * item.scale, item.at.x, item.at.y);
    cairo_save(canvas);
    cairo_transform(canvas, &place);
    color(canvas, item.color);
    for (const Pen& pen : scene.symbols[item.symbol].pens) {
      trace(canvas, pen.path);
      ink(canvas, pen.stroke);
    }
    cairo_restore(canvas);
  }
  void operator()(const Text&) const {}
  void operator()(const Group& group) const {
    for (const Item& item : group.items) std::visit(*this, item);
  }
};

cairo_status_t append(void* bytes, const unsigned char* more, unsigned count) {
  static_cast<std::string*>(bytes)->append(reinterpret_cast<const char*>(more), count);
  return CAIRO_STATUS_SUCCESS;
}

} // namespace

std::string plain_page(const whorl::drawing::Scene& scene, double dots_per_inch) {
  const double dots_per_mm = dots_per_inch / 25.4;
  cairo_surface_t* surface =
      cairo_image_surface_create(CAIRO_FORMAT_ARGB32, static_cast<int>(std::ceil(scene.width * dots_per_mm)),
                                 static_cast<int>(std::ceil(scene.height * dots_per_mm)));
  cairo_t* canvas = cairo_create(surface);
  cairo_set_source_rgb(canvas, 1, 1, 1);
  cairo_paint(canvas);
  cairo_scale(canvas, dots_per_mm, dots_per_mm);
  cairo_set_line_cap(canvas, CAIRO_LINE_CAP_ROUND);
  cairo_set_line_join(canvas, CAIRO_LINE_JOIN_ROUND);
  const Painter painter{canvas, scene};
  for (const Item& item : scene.items) std::visit(painter, item);
  std::string bytes;
  cairo_surface_write_to_png_stream(surface, append, &bytes);
  cairo_destroy(canvas);
  cairo_surface_destroy(surface);
  return bytes;
}
