#include "paint/canvas.hpp"
#include "paint/owned.hpp"
#include "paint/paint.hpp"
#include "paint/pdf_catalog.hpp"

#include <cairo-pdf.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

namespace whorl::paint {
namespace {

constexpr double points_per_mm = 72 / 25.4;

using Surface = Owned<cairo_surface_t, cairo_surface_destroy>;
using Canvas = Owned<cairo_t, cairo_destroy>;

bool fits(double mm) { return std::isfinite(mm) && mm > 0 && mm <= most_mm_a_page; }

using Sheets = std::vector<const drawing::Scene*>;

std::string problem_of(const drawing::Scene& scene) {
  if (fits(scene.width) && fits(scene.height)) return "";
  if (!(scene.width > 0 && scene.height > 0)) return "the sheet has no size";
  return "the sheet is larger than the " + std::to_string(most_mm_a_page) +
         " mm that a page of a PDF can be wide or high";
}

std::string problem_of(const Sheets& sheets) {
  if (sheets.empty()) return "there is no sheet";
  for (const drawing::Scene* sheet : sheets)
    if (std::string problem = problem_of(*sheet); !problem.empty()) return problem;
  return "";
}

cairo_status_t append(void* bytes, const unsigned char* more, unsigned int count) {
  static_cast<std::string*>(bytes)->append(reinterpret_cast<const char*>(more), count);
  return CAIRO_STATUS_SUCCESS;
}

/// A scene has no date; a PDF must have one, and the clock's would change its bytes.
constexpr const char* fixed_date = "2000-01-01T00:00:00Z";

/// What all sheets show, each told once.
std::string description_of(const Sheets& sheets) {
  std::string all;
  std::vector<std::string> told;
  for (const drawing::Scene* sheet : sheets) {
    if (std::find(told.begin(), told.end(), sheet->description) != told.end()) continue;
    told.push_back(sheet->description);
    all += (all.empty() ? "" : " ") + sheet->description;
  }
  return all;
}

Surface blank(const Sheets& sheets, std::string& bytes) {
  const drawing::Scene& scene = *sheets.front();
  Surface surface{cairo_pdf_surface_create_for_stream(append, &bytes, scene.width * points_per_mm,
                                                      scene.height * points_per_mm)};
  cairo_pdf_surface_restrict_to_version(surface.get(), CAIRO_PDF_VERSION_1_5);
  cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_TITLE, scene.title.c_str());
  cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_SUBJECT, description_of(sheets).c_str());
  cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_CREATE_DATE, fixed_date);
  return surface;
}

/// Draws a page; adds what fonts it misses.
void draw_page(cairo_t* canvas, cairo_surface_t* surface, const drawing::Scene& sheet,
               std::vector<std::string>& missing) {
  cairo_pdf_surface_set_size(surface, sheet.width * points_per_mm, sheet.height * points_per_mm);
  cairo_save(canvas);
  for (std::string& one : draw(canvas, sheet, {points_per_mm, Letters::as_text, true}))
    if (std::find(missing.begin(), missing.end(), one) == missing.end()) missing.push_back(std::move(one));
  cairo_restore(canvas);
  cairo_show_page(canvas);
}

/// False if Cairo met something it cannot draw.
bool finish(cairo_t* canvas, cairo_surface_t* surface) {
  cairo_surface_finish(surface);
  return cairo_status(canvas) == CAIRO_STATUS_SUCCESS &&
         cairo_surface_status(surface) == CAIRO_STATUS_SUCCESS;
}

} // namespace

Painted pdf(const Sheets& sheets) {
  Painted painted;
  painted.problem = problem_of(sheets);
  if (!painted.problem.empty()) return painted;
  std::string bytes;
  const Surface surface = blank(sheets, bytes);
  const Canvas canvas{cairo_create(surface.get())};
  for (const drawing::Scene* sheet : sheets)
    draw_page(canvas.get(), surface.get(), *sheet, painted.missing_fonts);
  if (finish(canvas.get(), surface.get())) painted.bytes = with_language(bytes, sheets.front()->language);
  if (painted.bytes.empty()) painted.problem = "the page could not be drawn";
  return painted;
}

Painted pdf(const drawing::Scene& scene) { return pdf(Sheets{&scene}); }

} // namespace whorl::paint
