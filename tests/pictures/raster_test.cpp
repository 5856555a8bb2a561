#include "pictures/raster.hpp"

#include "drawing/svg.hpp"
#include "paint/paint.hpp"

#include <catch2/catch.hpp>

using namespace whorl;
using drawing::Verb;

namespace {

/// A leaf-green square of 10 mm with a rust cross, a beetle's wing case and a word, on a sheet of 40 x 30 mm.
drawing::Scene leaf() {
  drawing::Scene scene;
  scene.width = 40, scene.height = 30;
  drawing::Pen cross{
      {{Verb::move, Verb::line, Verb::move, Verb::line}, {{-2, -4}, {2, 0}, {2, -4}, {-2, 0}}}, 0.5, 0};
  scene.symbols = {{"sc", {cross}}};
  drawing::Fill square;
  square.path = {{Verb::move, Verb::line, Verb::line, Verb::line, Verb::close},
                 {{3, 3}, {13, 3}, {13, 13}, {3, 13}}};
  square.color = {0x336633};
  drawing::Stroke wing;
  wing.path = {{Verb::move, Verb::curve}, {{20, 20}, {20, 10}, {35, 10}, {35, 20}}};
  wing.width = 0.6, wing.color = drawing::ink::black;
  drawing::Symbol stitch;
  stitch.at = {30, 8}, stitch.up = {0.6, -0.8}, stitch.color = drawing::ink::second;
  drawing::Text word;
  word.text = "leaf 8", word.at = {3, 26}, word.size = 5, word.color = drawing::ink::black;
  scene.items = {square, wing, stitch, word};
  return scene;
}

/// The same by hand, with the stitch at `x`.
std::string leaf_svg(const std::string& x = "30") {
  return R"svg(<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="30mm" viewBox="0 0 40 30">
<path d="M3 3H13V13H3Z" fill="#336633"/>
<path d="M20 20C20 10 35 10 35 20" fill="none" stroke="#1c1b1a" stroke-width=".6" stroke-linecap="round"/>
<path transform="matrix(.8 .6 -.6 .8 )svg" +
         x + R"svg( 8)" d="M-2-4 2 0M2-4-2 0" fill="none" stroke="#A23B12"
 stroke-width=".5" stroke-linecap="round"/>
<text x="3" y="26" font-family="Liberation Sans" font-size="5" fill="#1c1b1a">leaf 8</text></svg>)svg";
}

drawing::Text anchored(std::string words, drawing::Anchor anchor, drawing::Point at) {
  drawing::Text text;
  text.text = std::move(words), text.anchor = anchor, text.at = at, text.size = 2.5;
  text.face = drawing::Typeface::serif, text.bold = true, text.color = drawing::ink::grey;
  return text;
}

/// The leaf with everything else that a scene can hold.
drawing::Scene whole_leaf() {
  using drawing::Anchor;
  drawing::Scene scene = leaf();
  drawing::Stroke dashed;
  dashed.path = {{Verb::move, Verb::line}, {{3, 28}, {37, 28}}};
  dashed.width = 0.3, dashed.dash = 0.9, dashed.color = drawing::ink::grey;
  drawing::Symbol echo = std::get<drawing::Symbol>(scene.items[2]);
  echo.at = {16, 24}, echo.scale = 0.7, echo.color = drawing::ink::faint;
  scene.items.push_back(dashed);
  scene.items.push_back(
      drawing::Group{"leaf_1", "round", "Round 1", {echo, anchored("fox", Anchor::end, {38, 26})}});
  scene.items.push_back(anchored("Tie", Anchor::middle, {28, 26}));
  return scene;
}

} // namespace

TEST_CASE("what the SVG writer writes is the picture of the PNG") {
  const auto found = pictures::difference(drawing::svg(whole_leaf()), paint::png(whole_leaf(), 200).bytes);
  CHECK(found.strongly < 0.001);
  CHECK(found.mean < 0.002);
}

TEST_CASE("the same scene as SVG and as PNG is one picture") {
  const auto found = pictures::difference(leaf_svg(), paint::png(leaf(), 200).bytes);
  CHECK(found.strongly < 0.001);
  CHECK(found.mean < 0.002);
}

TEST_CASE("a stitch moved by its own width is a strong difference") {
  CHECK(pictures::difference(leaf_svg("26"), paint::png(leaf(), 200).bytes).strongly > 0.005);
}

TEST_CASE("the PDF of a scene is the picture of its PNG") {
  const auto painted = pictures::decode(paint::png(leaf(), 200).bytes);
  const auto page = pictures::render_pdf(paint::pdf(leaf()).bytes, painted);
  CHECK(pictures::difference(page, painted).strongly < 0.01);
}

TEST_CASE("what is no PNG has no dots and differs wholly") {
  CHECK(pictures::decode("a leaf").dots.empty());
  CHECK(pictures::difference(leaf_svg(), "a leaf").strongly == 1);
}

TEST_CASE("colours are as far apart as their most different part") {
  CHECK(pictures::apart(0x102030, 0x112530) == 5);
}
