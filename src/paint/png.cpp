#include "paint/at_once.hpp"
#include "paint/canvas.hpp"
#include "paint/owned.hpp"
#include "paint/paint.hpp"
#include "paint/png_coding.hpp"

#include <algorithm>
#include <cmath>
#include <set>
#include <utility>

namespace whorl::paint {
namespace {

constexpr double mm_per_inch = 25.4;

using Surface = Owned<cairo_surface_t, cairo_surface_destroy>;
using Canvas = Owned<cairo_t, cairo_destroy>;

double dots(double mm, double dots_per_inch) {
  constexpr double rounding = 1e-6; // 192 mm at ten dots a millimetre are 1920
  return std::max(1.0, std::ceil(mm * dots_per_inch / mm_per_inch - rounding));
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

/// Always the same stripes, however many are drawn at a time: the bytes do not depend on the machine.
constexpr int rows_a_stripe = 256;

struct Stripe {
  int top = 0, rows = 0; ///< in dots
  Packed packed;
  std::vector<std::string> missing_fonts;
};

std::vector<Stripe> stripes_of(int rows) {
  std::vector<Stripe> stripes;
  for (int top = 0; top < rows; top += rows_a_stripe)
    stripes.push_back({top, std::min(rows_a_stripe, rows - top), {}, {}});
  return stripes;
}

void draw_stripe(const drawing::Scene& scene, const Head& head, Stripe& stripe) {
  const Surface surface{cairo_image_surface_create(head.clear ? CAIRO_FORMAT_ARGB32 : CAIRO_FORMAT_RGB24,
                                                   static_cast<int>(head.width), stripe.rows)};
  const Canvas canvas{cairo_create(surface.get())};
  cairo_translate(canvas.get(), 0, -stripe.top);
  const double scale = head.dots_per_inch / mm_per_inch;
  const Manner manner{scale, Letters::as_outlines, scene.paper, stripe.top / scale,
                      (stripe.top + stripe.rows) / scale};
  stripe.missing_fonts = draw(canvas.get(), scene, manner);
  cairo_surface_flush(surface.get());
  const bool last = stripe.top + stripe.rows == static_cast<int>(head.height);
  if (cairo_status(canvas.get()) == CAIRO_STATUS_SUCCESS) stripe.packed = pack(surface.get(), last);
}

/// Every name once, sorted.
std::vector<std::string> missing_in(const std::vector<Stripe>& stripes) {
  std::set<std::string> names;
  for (const Stripe& stripe : stripes) names.insert(stripe.missing_fonts.begin(), stripe.missing_fonts.end());
  return {names.begin(), names.end()};
}

} // namespace

Painted png(const drawing::Scene& scene, double dots_per_inch) {
  Painted painted;
  painted.problem = problem_of(scene, dots_per_inch);
  if (!painted.problem.empty()) return painted;
  const Head head{static_cast<std::uint32_t>(dots(scene.width, dots_per_inch)),
                  static_cast<std::uint32_t>(dots(scene.height, dots_per_inch)), dots_per_inch, !scene.paper};
  std::vector<Stripe> stripes = stripes_of(static_cast<int>(head.height));
  at_once(stripes.size(), [&](std::size_t i) { draw_stripe(scene, head, stripes[i]); });
  painted.missing_fonts = missing_in(stripes);
  std::vector<Packed> packed;
  for (Stripe& stripe : stripes) packed.push_back(std::move(stripe.packed));
  painted.bytes = coded_as_png(head, std::move(packed));
  if (painted.bytes.empty()) painted.problem = "the picture could not be drawn";
  return painted;
}

} // namespace whorl::paint
