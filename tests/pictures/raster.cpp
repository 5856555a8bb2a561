#include "pictures/raster.hpp"

#include "paint/owned.hpp"

#include <cairo.h>
#include <librsvg/rsvg.h>
#include <poppler.h>

#include <algorithm>
#include <cstdlib>
#include <cstring>

namespace whorl::pictures {
namespace {

constexpr double mm_per_inch = 25.4, points_per_inch = 72;

using Surface = paint::Owned<cairo_surface_t, cairo_surface_destroy>;
using Canvas = paint::Owned<cairo_t, cairo_destroy>;

/// Bytes that are still to be read.
struct Unread {
  const char* next;
  std::size_t left;
};

cairo_status_t read(void* from, unsigned char* to, unsigned int count) {
  Unread& unread = *static_cast<Unread*>(from);
  if (count > unread.left) return CAIRO_STATUS_READ_ERROR;
  std::memcpy(to, unread.next, count);
  unread.next += count;
  unread.left -= count;
  return CAIRO_STATUS_SUCCESS;
}

std::uint32_t dot(const unsigned char* row, int x) {
  std::uint32_t kept = 0;
  std::memcpy(&kept, row + 4 * static_cast<std::size_t>(x), 4);
  return kept & 0xFFFFFF;
}

Raster dots_of(cairo_surface_t* surface) {
  cairo_surface_flush(surface);
  Raster raster{cairo_image_surface_get_width(surface), cairo_image_surface_get_height(surface), 0, {}};
  const unsigned char* row = cairo_image_surface_get_data(surface);
  for (int y = 0; y < raster.height; ++y, row += cairo_image_surface_get_stride(surface))
    for (int x = 0; x < raster.width; ++x) raster.dots.push_back(dot(row, x));
  return raster;
}

/// What a picture is drawn on to be like another.
struct Easel {
  Surface surface;
  Canvas canvas;
};

Easel easel(const Raster& like) {
  Easel made;
  made.surface.reset(cairo_image_surface_create(CAIRO_FORMAT_RGB24, like.width, like.height));
  made.canvas.reset(cairo_create(made.surface.get()));
  cairo_set_source_rgb(made.canvas.get(), 1, 1, 1);
  cairo_paint(made.canvas.get());
  return made;
}

Raster taken_off(const Easel& easel, const Raster& like) {
  Raster raster = dots_of(easel.surface.get());
  raster.dots_per_mm = like.dots_per_mm;
  return raster;
}

/// What the PNG's pHYs says; 0 if it has none.
double dots_per_mm(const std::string& png) {
  const std::size_t found = png.find("pHYs");
  if (found == std::string::npos || found + 8 > png.size()) return 0;
  std::uint32_t a_metre = 0;
  for (std::size_t i = found + 4; i < found + 8; ++i)
    a_metre = 256 * a_metre + static_cast<unsigned char>(png[i]);
  return a_metre / 1000.0;
}

using Page = paint::Owned<PopplerPage, g_object_unref>;

Page first_page(const std::string& pdf) {
  const paint::Owned<GBytes, g_bytes_unref> bytes{g_bytes_new(pdf.data(), pdf.size())};
  const paint::Owned<PopplerDocument, g_object_unref> document{
      poppler_document_new_from_bytes(bytes.get(), nullptr, nullptr)};
  return Page{document ? poppler_document_get_page(document.get(), 0) : nullptr};
}

} // namespace

Raster decode(const std::string& png) {
  Unread unread{png.data(), png.size()};
  const Surface surface{cairo_image_surface_create_from_png_stream(read, &unread)};
  if (cairo_surface_status(surface.get()) != CAIRO_STATUS_SUCCESS) return {};
  Raster raster = dots_of(surface.get());
  raster.dots_per_mm = dots_per_mm(png);
  return raster;
}

Raster render_svg(const std::string& svg, const Raster& like) {
  const auto* bytes = reinterpret_cast<const guint8*>(svg.data());
  const paint::Owned<RsvgHandle, g_object_unref> handle{
      rsvg_handle_new_from_data(bytes, svg.size(), nullptr)};
  if (!handle) return {};
  rsvg_handle_set_dpi(handle.get(), like.dots_per_mm * mm_per_inch);
  RsvgRectangle whole{0, 0, 0, 0};
  if (!rsvg_handle_get_intrinsic_size_in_pixels(handle.get(), &whole.width, &whole.height)) return {};
  const Easel drawn = easel(like);
  if (!rsvg_handle_render_document(handle.get(), drawn.canvas.get(), &whole, nullptr)) return {};
  return taken_off(drawn, like);
}

Raster render_pdf(const std::string& pdf, const Raster& like) {
  const Page page = first_page(pdf);
  if (!page) return {};
  const double scale = like.dots_per_mm * mm_per_inch / points_per_inch;
  const Easel drawn = easel(like);
  cairo_scale(drawn.canvas.get(), scale, scale);
  poppler_page_render(page.get(), drawn.canvas.get());
  return taken_off(drawn, like);
}

int apart(std::uint32_t one, std::uint32_t other) {
  const auto part = [](std::uint32_t color, int shift) { return static_cast<int>((color >> shift) & 0xFF); };
  int most = 0;
  for (const int shift : {16, 8, 0}) most = std::max(most, std::abs(part(one, shift) - part(other, shift)));
  return most;
}

Difference difference(const Raster& one, const Raster& other) {
  if (one.dots.empty() || one.width != other.width || one.height != other.height) return {};
  double strongly = 0, sum = 0;
  for (std::size_t i = 0; i < one.dots.size(); ++i) {
    const int by = apart(one.dots[i], other.dots[i]);
    strongly += by > 64;
    sum += by;
  }
  const auto count = static_cast<double>(one.dots.size());
  return {strongly / count, sum / 255 / count};
}

Difference difference(const std::string& svg, const std::string& png) {
  const Raster painted = decode(png);
  return difference(render_svg(svg, painted), painted);
}

} // namespace whorl::pictures
