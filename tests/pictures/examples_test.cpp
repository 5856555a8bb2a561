#include "pictures/chance.hpp"
#include "pictures/raster.hpp"
#include "pictures/touching.hpp"
#include "whorl.hpp"
#include "whorl_paint.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <fstream>
#include <iterator>

using namespace whorl;

namespace {

const char* const examples[] = {"acorn", "bear",     "beechnut", "beetle", "bellflower", "fox",
                                "gnome", "hazelnut", "hedgehog", "mouse",  "snail",      "toadstool"};

Chart chart_of(const std::string& name) {
  std::ifstream file(std::string(WHORL_SOURCE_DIR) + "/examples/" + name + ".txt", std::ios::binary);
  return read(std::string(std::istreambuf_iterator<char>(file), {})).chart();
}

} // namespace

TEST_CASE("nothing on the examples' sheets touches what it does not belong to") {
  for (const char* name : examples) {
    const auto contacts = pictures::touching_besides_loops(chart_of(name).scene());
    INFO(name << '\n' << pictures::show(contacts));
    CHECK(contacts.empty());
  }
}

TEST_CASE("nothing touches on the sheets of balls made by chance") {
  for (unsigned seed = 1; seed <= 60; ++seed) {
    const Pattern pattern = read(pictures::ChanceBall(seed).text());
    REQUIRE_FALSE(pattern.has_errors());
    const auto contacts = pictures::touching_besides_loops(pattern.chart().scene());
    INFO("seed " << seed << '\n' << pictures::show(contacts));
    CHECK(contacts.empty());
  }
}

TEST_CASE("nothing touches on the sheets of toys with eyes, two yarns and a part in free loops") {
  for (unsigned seed = 1; seed <= 20; ++seed) {
    const Pattern pattern = read(pictures::ChanceToy(seed).text());
    INFO("seed " << seed << '\n' << pictures::ChanceToy(seed).text());
    REQUIRE_FALSE(pattern.has_errors());
    const auto contacts = pictures::touching_besides_loops(pattern.chart().scene());
    INFO(pictures::show(contacts));
    CHECK(contacts.empty());
  }
}

TEST_CASE("the SVG and the PNG of an example are the same picture") {
  for (const char* name : examples) {
    const Chart chart = chart_of(name);
    const pictures::Difference found = pictures::difference(chart.svg(), png(chart, 120).bytes);
    INFO(name << ": " << found.strongly << " of the dots differ strongly, mean " << found.mean);
    CHECK(found.strongly < 0.002);
    CHECK(found.mean < 0.004);
  }
}

TEST_CASE("the PDF and the PNG of an example are the same picture") {
  for (const char* name : examples) {
    const Chart chart = chart_of(name);
    const pictures::Raster dots = pictures::decode(png(chart, 120).bytes);
    const pictures::Difference found =
        pictures::difference(dots, pictures::render_pdf(pdf(chart).bytes, dots));
    INFO(name << ": " << found.strongly << " of the dots differ strongly, mean " << found.mean);
    // Poppler has its own way with letters and thin strokes, of which a well filled sheet has many.
    CHECK(found.strongly < 0.013);
    CHECK(found.mean < 0.01);
  }
}

TEST_CASE("no font of the examples is missing") {
  for (const char* name : examples) {
    CHECK(png(chart_of(name), 60).missing_fonts.empty());
    CHECK(pdf(chart_of(name)).missing_fonts.empty());
  }
}
