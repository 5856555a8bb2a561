#include "paint/paint.hpp"

#include "paint/forest.hpp"
#include "paint/owned.hpp"
#include "pictures/raster.hpp"

#include <catch2/catch.hpp>
#include <poppler.h>

#include <cmath>

using namespace whorl;
using namespace whorl::paint;

namespace {

using Document = Owned<PopplerDocument, g_object_unref>;
using Page = Owned<PopplerPage, g_object_unref>;

Document opened(const Painted& painted) {
  const Owned<GBytes, g_bytes_unref> bytes{g_bytes_new(painted.bytes.data(), painted.bytes.size())};
  return Document{poppler_document_new_from_bytes(bytes.get(), nullptr, nullptr)};
}

Page first_page(const Document& document) { return Page{poppler_document_get_page(document.get(), 0)}; }

std::string taken(char* text) {
  const Owned<char, g_free> held{text};
  return held ? held.get() : "";
}

bool holds(const Painted& painted, const std::string& words) {
  return painted.bytes.find(words) != std::string::npos;
}

/// A disc of so many stitches.
drawing::Scene disc(int stitches) {
  drawing::Scene scene = sheet();
  scene.width = scene.height = 400;
  for (int i = 0; i < stitches; ++i) {
    const double angle = 0.37 * i, radius = 5 * std::sqrt(i);
    drawing::Symbol stitch;
    stitch.at = {200 + radius * std::sin(angle), 200 - radius * std::cos(angle)};
    stitch.up = {std::sin(angle), -std::cos(angle)};
    scene.items.push_back(stitch);
  }
  return scene;
}

} // namespace

TEST_CASE("a PDF has one page as large as the sheet") {
  const Document document = opened(pdf(sheet()));
  REQUIRE(document);
  double width = 0, height = 0;
  poppler_page_get_size(first_page(document).get(), &width, &height);
  CHECK(poppler_document_get_n_pages(document.get()) == 1);
  CHECK(width == Approx(144));
  CHECK(height == Approx(72));
}

TEST_CASE("a PDF's text can be read back") {
  const Document document = opened(pdf(sheet()));
  CHECK(taken(poppler_page_get_text(first_page(document).get())) == "Toadstool\n6 stitches");
}

TEST_CASE("a PDF tells the sheet's title and what it shows") {
  const Document document = opened(pdf(sheet()));
  CHECK(taken(poppler_document_get_title(document.get())) == "Toadstool");
  CHECK(taken(poppler_document_get_subject(document.get())) == "One cap, seen from above");
}

TEST_CASE("a PDF tells its language and asks readers to show its title") {
  const Painted painted = pdf(sheet());
  CHECK(holds(painted, "/Lang (en-US)"));
  CHECK(holds(painted, "/DisplayDocTitle true"));
}

TEST_CASE("a PDF's date is fixed") {
  CHECK(poppler_document_get_creation_date(opened(pdf(sheet())).get()) == 946684800); // 2000-01-01, UTC
}

TEST_CASE("a PDF names no version of what made it") { CHECK_FALSE(holds(pdf(sheet()), "Producer")); }

TEST_CASE("a PDF carries the letters it uses of each font") {
  const Document document = opened(pdf(sheet()));
  const Owned<PopplerFontInfo, g_object_unref> fonts{poppler_font_info_new(document.get())};
  PopplerFontsIter* found = nullptr;
  REQUIRE(poppler_font_info_scan(fonts.get(), 1, &found));
  const Owned<PopplerFontsIter, poppler_fonts_iter_free> font{found};
  int count = 0;
  do {
    ++count;
    CHECK(poppler_fonts_iter_is_embedded(font.get()));
    CHECK(poppler_fonts_iter_is_subset(font.get()));
  } while (poppler_fonts_iter_next(font.get()));
  CHECK(count == 2);
}

TEST_CASE("the PDF and the PNG of a sheet are one picture") {
  const auto painted = pictures::decode(png(sheet()).bytes);
  CHECK(pictures::difference(pictures::render_pdf(pdf(sheet()).bytes, painted), painted).strongly < 0.01);
}

TEST_CASE("a PDF is the same bytes twice") { CHECK(pdf(sheet()).bytes == pdf(sheet()).bytes); }

TEST_CASE("a PDF grows by the same few bytes with every stitch") {
  const auto size = [](int stitches) { return static_cast<double>(pdf(disc(stitches)).bytes.size()); };
  const double some = size(0), few = size(500), many = size(5000);
  CHECK((few - some) / 500 < 100);
  CHECK((many - some) / 5000 < 100);
}

TEST_CASE("a PDF of several sheets has a page a sheet, each as large as its own") {
  const drawing::Scene one = sheet();
  drawing::Scene other = sheet();
  other.width = 25.4;
  other.description = "The stem, in two figures";
  const Document document = opened(pdf(std::vector<const drawing::Scene*>{&one, &other}));
  REQUIRE(poppler_document_get_n_pages(document.get()) == 2);
  CHECK(taken(poppler_document_get_subject(document.get())) ==
        "One cap, seen from above The stem, in two figures");
  double width = 0, height = 0;
  poppler_page_get_size(Page{poppler_document_get_page(document.get(), 1)}.get(), &width, &height);
  CHECK(width == Approx(72));
}

TEST_CASE("a PDF of a text that no font can show says so") {
  drawing::Scene scene = clearing();
  scene.items = {written("\xF4\x80\x80\x81", {3, 8})};
  CHECK(pdf(scene).missing_fonts == std::vector<std::string>{"a font for “\xF4\x80\x80\x81”"});
}

TEST_CASE("a sheet larger than a page can be is refused, in plain words") {
  drawing::Scene scene = clearing();
  scene.width = 6000;
  const Painted refused = pdf(scene);
  CHECK(refused.bytes.empty());
  CHECK(refused.problem == "the sheet is larger than the 5080 mm that a page of a PDF can be wide or high");
}

TEST_CASE("a page without size is refused") {
  drawing::Scene scene = clearing();
  scene.height = 0;
  CHECK(pdf(scene).problem == "the sheet has no size");
}
