#include "paint/lettering.hpp"

#include "drawing/type.hpp"
#include "paint/forest.hpp"

#include <catch2/catch.hpp>

using namespace whorl;
using namespace whorl::paint;

namespace {

/// A canvas whose unit is the millimetre; nothing is drawn on it.
struct Canvas {
  Owned<cairo_surface_t, cairo_surface_destroy> surface{cairo_image_surface_create(CAIRO_FORMAT_RGB24, 1, 1)};
  Owned<cairo_t, cairo_destroy> held{cairo_create(surface.get())};
};

/// Fonts draw some pairs of letters closer together, which the table does not know.
constexpr double kerning = 0.006;

} // namespace

TEST_CASE("the table of widths says what the installed fonts say") {
  const Canvas canvas;
  Lettering lettering{canvas.held.get(), "en", Letters::as_outlines};
  for (const auto face : {drawing::Typeface::sans, drawing::Typeface::serif})
    for (const bool bold : {false, true})
      for (const bool italic : {false, true}) {
        drawing::Text text = written("16 hedgehogs", {});
        text.face = face, text.bold = bold, text.italic = italic;
        CAPTURE(drawing::font_name(face), bold, italic);
        CHECK(lettering.width(text) ==
              Approx(text.size * drawing::text_width(face, bold, italic, text.text)).epsilon(kerning));
      }
}

TEST_CASE("a width grows with the size, without steps") {
  const Canvas canvas;
  Lettering lettering{canvas.held.get(), "en", Letters::as_outlines};
  drawing::Text small = written("leaf", {}), large = small;
  small.size = 1.7, large.size = 17;
  CHECK(10 * lettering.width(small) == Approx(lettering.width(large)).epsilon(0.002));
}
