#include "paint/paint.hpp"

#include "paint/forest.hpp"
#include "pictures/raster.hpp"

#include <catch2/catch.hpp>

#include <limits>

using namespace whorl;
using namespace whorl::paint;
using pictures::apart;
using pictures::Raster;

namespace {

constexpr double dots_per_inch = 100; // a dot is .254 mm

constexpr std::uint32_t white = 0xFFFFFF;

Raster painted(const drawing::Scene& scene) { return pictures::decode(png(scene, dots_per_inch).bytes); }

/// How much of the paper between two corners is inked, in dots.
double inked(const Raster& raster, int left, int top, int right, int bottom) {
  double sum = 0;
  for (int y = top; y < bottom; ++y)
    for (int x = left; x < right; ++x) sum += apart(raster.at(x, y), white) / 255.0;
  return sum;
}

drawing::Scene with(drawing::Item item) {
  drawing::Scene scene = clearing();
  scene.items.push_back(std::move(item));
  return scene;
}

drawing::Text anchored(drawing::Anchor anchor) {
  drawing::Text text = written("acorn", {25.4, 15});
  text.anchor = anchor;
  return text;
}

} // namespace

TEST_CASE("the paper is white and as large as the sheet") {
  const Raster raster = painted(clearing());
  CHECK(raster.width == 200);
  CHECK(raster.height == 100);
  CHECK(inked(raster, 0, 0, 200, 100) == 0);
}

TEST_CASE("a PNG says how large a dot is") { CHECK(painted(clearing()).dots_per_mm == Approx(3.937)); }

TEST_CASE("what is filled has its colour inside and none outside") {
  const Raster raster = painted(with(drawing::Fill{box({12.7, 5.08}, {25.4, 10.16}), {0x336699}, {}}));
  CHECK(raster.at(75, 30) == 0x336699);
  CHECK(raster.at(48, 30) == white);
  CHECK(raster.at(102, 30) == white);
}

TEST_CASE("a stroke is as wide as its pen and round at its ends") {
  const Raster raster = painted(with(stroke({12.7, 12.7}, {25.4, 12.7}, 2.54)));
  CHECK(inked(raster, 75, 0, 76, 100) == Approx(10 * (255 - 0x1a) / 255.0).epsilon(0.01));
  CHECK(apart(raster.at(46, 50), drawing::ink::black.rgb) < 8);
  CHECK(raster.at(46, 45) == white);
}

TEST_CASE("a dashed stroke is broken") {
  drawing::Stroke line = stroke({2.54, 12.7}, {48.26, 12.7}, 0.5);
  line.dash = 5.08;
  const Raster raster = painted(with(line));
  CHECK(apart(raster.at(20, 50), white) > 200);
  CHECK(raster.at(40, 50) == white);
}

TEST_CASE("a symbol stands at its foot, turned to its up direction, in the colour of its use") {
  drawing::Scene scene = clearing();
  scene.symbols = {{"post", {{stroke({0, 0}, {0, -10.16}, 0).path, 1.016, 0}}}};
  drawing::Symbol post;
  post.at = {25.4, 12.7}, post.up = {1, 0}, post.color = drawing::ink::second;
  scene.items = {post};
  const Raster raster = painted(scene);
  CHECK(raster.at(130, 49) == drawing::ink::second.rgb);
  CHECK(raster.at(70, 49) == white);
  CHECK(raster.at(100, 30) == white);
}

TEST_CASE("a symbol grows with its scale") {
  drawing::Scene scene = clearing();
  scene.symbols = {{"cap", {{box({-1, -2}, {1, 0}), 0, 0}}}};
  drawing::Symbol cap;
  cap.at = {25.4, 20.32}, cap.scale = 3, cap.color = drawing::ink::black;
  scene.items = {cap};
  CHECK(inked(painted(scene), 0, 0, 200, 100) == Approx(36 / .254 / .254 * (255 - 0x1a) / 255).epsilon(0.01));
}

TEST_CASE("what a group holds is drawn") {
  const drawing::Fill leaf{box({10, 10}, {20, 20}), {0x336633}, {}};
  CHECK(painted(with(drawing::Group{"leaf", "round", "", {leaf}})).at(60, 60) == 0x336633);
}

TEST_CASE("a text begins, is centred or ends at its anchor") {
  const Raster start = painted(with(anchored(drawing::Anchor::start)));
  CHECK(inked(start, 0, 0, 100, 100) < 1);
  const Raster end = painted(with(anchored(drawing::Anchor::end)));
  CHECK(inked(end, 101, 0, 200, 100) < 1);
  const Raster middle = painted(with(anchored(drawing::Anchor::middle)));
  CHECK(inked(middle, 0, 0, 100, 100) == Approx(inked(middle, 100, 0, 200, 100)).epsilon(0.2));
}

TEST_CASE("a text stands on its base line") {
  const Raster raster = painted(with(anchored(drawing::Anchor::start)));
  CHECK(inked(raster, 0, 60, 200, 100) < 3);
  CHECK(inked(raster, 0, 49, 200, 59) > 20);
}

TEST_CASE("bold letters carry more ink") {
  drawing::Text bold = anchored(drawing::Anchor::start);
  bold.bold = true;
  CHECK(inked(painted(with(bold)), 0, 0, 200, 100) >
        1.2 * inked(painted(with(anchored(drawing::Anchor::start))), 0, 0, 200, 100));
}

TEST_CASE("a PNG is the same bytes twice") { CHECK(png(sheet()).bytes == png(sheet()).bytes); }

TEST_CASE("fonts that are installed are not missed") { CHECK(png(sheet()).missing_fonts.empty()); }

TEST_CASE("a text that no font can show is told once") {
  drawing::Scene scene = clearing();
  scene.items = {written("\xF4\x80\x80\x81", {3, 8}), written("\xF4\x80\x80\x81", {3, 16}),
                 written("fox", {30, 8})};
  CHECK(png(scene).missing_fonts == std::vector<std::string>{"a font for “\xF4\x80\x80\x81”"});
}

TEST_CASE("letters of a script that no font has are told by its name") {
  drawing::Scene scene = clearing();
  scene.items = {written("fox \U00010300", {3, 8})}; // no font of this machine has Old Italic
  const std::vector<std::string> missing = png(scene).missing_fonts;
  if (!missing.empty())
    CHECK(missing == std::vector<std::string>{"a font with Old Italic letters, for “fox \U00010300”"});
}

TEST_CASE("a scene without paper is clear where it has no ink") {
  drawing::Scene scene = with(drawing::Fill{box({12.7, 5.08}, {25.4, 10.16}), {0x336699}, {}});
  scene.paper = false;
  const std::string bytes = png(scene, dots_per_inch).bytes;
  CHECK(bytes[25] == 6); // colours and transparency
  const Raster raster = pictures::decode(bytes);
  CHECK(raster.at(75, 30) == 0x336699);
}

TEST_CASE("a text of broken bytes is drawn all the same") {
  CHECK_FALSE(png(with(written("fo\xFFx", {3, 8}))).bytes.empty());
}

TEST_CASE("a sheet of five metres at 600 dots per inch is refused at once, in plain words") {
  drawing::Scene scene = clearing();
  scene.width = scene.height = 5000;
  const Painted refused = png(scene, 600);
  CHECK(refused.bytes.empty());
  CHECK(refused.problem ==
        "the sheet is 5000 x 5000 mm; at 600 dots per inch that is 118111 x 118111 dots, too many "
        "for one PNG; at most 50 dots per inch can be drawn");
}

TEST_CASE("the dots per inch that a refusal names can be drawn") {
  drawing::Scene scene = clearing();
  scene.width = 20'000, scene.height = 50;
  REQUIRE(png(scene, 600).problem.find("at most 40 dots") != std::string::npos);
  CHECK(png(scene, 40).problem.empty());
}

TEST_CASE("a sheet without size, or with one that is no number, is refused") {
  drawing::Scene scene = clearing();
  scene.height = 0;
  CHECK(png(scene).problem == "the sheet has no size");
  scene.height = std::numeric_limits<double>::quiet_NaN();
  CHECK(png(scene).problem == "the sheet has no size");
}

TEST_CASE("no dots per inch are refused") {
  CHECK(png(clearing(), 0).problem == "dots per inch must be more than 0");
}

TEST_CASE("a picture is the same where it is drawn in stripes: nothing is cut or missing at their edges") {
  drawing::Scene scene = clearing();
  scene.height = 254; // several stripes
  scene.items = {stroke({10, 10}, {40, 240}, 2), drawing::Fill{box({5, 60}, {45, 70}), {0x336633}, {}},
                 written("acorn", {25, 65.1})};
  const Raster whole = painted(scene);
  REQUIRE(whole.height == 1000);
  scene.height = 66; // its end in another place
  const Raster upper = painted(scene);
  int differ = 0;
  for (int y = 0; y < upper.height; ++y)
    for (int x = 0; x < upper.width; ++x) differ += whole.at(x, y) != upper.at(x, y) ? 1 : 0;
  CHECK(differ == 0);
  CHECK(inked(whole, 0, 900, 200, 945) > 100);
}
