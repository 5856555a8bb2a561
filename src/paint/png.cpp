#include "paint/canvas.hpp"
#include "paint/owned.hpp"
#include "paint/paint.hpp"
#include "paint/png_coding.hpp"

#include <algorithm>
#include <cmath>

namespace whorl::paint {
namespace {

constexpr double mm_per_inch = 25.4;

using Surface = Owned<cairo_surface_t, cairo_surface_destroy>;
using Canvas = Owned<cairo_t, cairo_destroy>;

double dots(double mm, double dots_per_inch) {
  return std::max(1.0, std::ceil(mm * dots_per_inch / mm_per_inch));
}

bool has_size(double number) { return std::isfinite(number) && number > 0; }

bool fits(const drawing::Scene& scene, double dots_per_inch) {
  const double across = dots(scene.width, dots_per_inch), down = dots(scene.height, dots_per_inch);
  return across <= most_dots_a_side && down <= most_dots_a_side && across * down <= most_dots;
}

/// The most whole dots per inch at which the sheet still fits; 0: none.
int most_dots_per_inch(const drawing::Scene& scene) {
  const double a_side = most_dots_a_side / std::max(scene.width, scene.height);
  const double in_all = std::sqrt(most_dots / scene.width / scene.height);
  int found = static_cast<int>(std::min({a_side, in_all, 1000.0}) * mm_per_inch);
  while (found > 0 && !fits(scene, found)) --found;
  return found;
}

std::string whole(double number) { return std::to_string(std::llround(number)); }

std::string by(double across, double down) { return whole(across) + " x " + whole(down); }

std::string too_large(const drawing::Scene& scene, double dots_per_inch) {
  const std::string says = "the sheet is " + by(scene.width, scene.height) + " mm; at " +
                           whole(dots_per_inch) + " dots per inch that is " +
                           by(dots(scene.width, dots_per_inch), dots(scene.height, dots_per_inch)) +
                           " dots, too many for one PNG";
  const int most = most_dots_per_inch(scene);
  return most > 0 ? says + "; at most " + std::to_string(most) + " dots per inch can be drawn" : says;
}

std::string problem_of(const drawing::Scene& scene, double dots_per_inch) {
  if (!has_size(scene.width) || !has_size(scene.height)) return "the sheet has no size";
  if (!has_size(dots_per_inch)) return "dots per inch must be more than 0";
  return fits(scene, dots_per_inch) ? "" : too_large(scene, dots_per_inch);
}

Surface blank(const drawing::Scene& scene, double dots_per_inch) {
  return Surface{cairo_image_surface_create(scene.paper ? CAIRO_FORMAT_RGB24 : CAIRO_FORMAT_ARGB32,
                                            static_cast<int>(dots(scene.width, dots_per_inch)),
                                            static_cast<int>(dots(scene.height, dots_per_inch)))};
}

} // namespace

Painted png(const drawing::Scene& scene, double dots_per_inch) {
  Painted painted;
  painted.problem = problem_of(scene, dots_per_inch);
  if (!painted.problem.empty()) return painted;
  const Surface surface = blank(scene, dots_per_inch);
  const Canvas canvas{cairo_create(surface.get())};
  painted.missing_fonts = draw(canvas.get(), scene, {dots_per_inch / mm_per_inch, Letters::as_outlines, scene.paper});
  cairo_surface_flush(surface.get());
  if (cairo_status(canvas.get()) == CAIRO_STATUS_SUCCESS)
    painted.bytes = coded_as_png(surface.get(), dots_per_inch);
  if (painted.bytes.empty()) painted.problem = "the picture could not be drawn";
  return painted;
}

} // namespace whorl::paint
