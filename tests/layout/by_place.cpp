/// Rings in which stitches are too many in one place for what is beneath them.

#include "standing.hpp"
#include "typed.hpp"

#include "layout/direction.hpp"

#include <catch2/catch.hpp>

using namespace whorl;
using namespace whorl::layout;
using test::Typed;

namespace {

std::string disc(const std::string& last_rounds) {
  return "Lichen\n\nCUSHION\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\nRnd 3: (sc, inc) x 6 (18)\n"
         "Rnd 4: (2 sc, inc) x 6 (24)\nRnd 5: (3 sc, inc) x 6 (30)\n" +
         last_rounds;
}

const std::string crowded =
    disc("Rnd 6: (3 sc in next st) x 5, 25 sc (40)\nRnd 7: (2 dc in next st) x 15, 25 sc (55)\n");

int feet_by_another(const Typed& typed) {
  int not_near = 0;
  for (const Figure& figure : typed.figures) not_near += test::nearness_of(typed.fabric, figure).not_near;
  return not_near;
}

/// How far apart the middles of neighbouring items of a ring are at the most, of how far at the least.
double unevenness(const Figure& figure, const Ring& ring) {
  double least = 1e9, most = 0;
  for (std::uint32_t k = 1; k < ring.items; ++k) {
    const double apart =
        length(figure.items[ring.first_item + k].foot - figure.items[ring.first_item + k - 1].foot);
    least = std::min(least, apart), most = std::max(most, apart);
  }
  return most / least;
}

} // namespace

TEST_CASE("where many stitches go into few places the figure grows until each is by its own") {
  for (const Hand hand : {Hand::right, Hand::left}) {
    const Typed typed(crowded, hand);
    REQUIRE(typed.figures.size() == 1);
    CHECK(feet_by_another(typed) == 0);
    CHECK(test::out_of_order(typed.fabric, typed.figures[0]) == "");
    CHECK(typed.air() > 0.05);
  }
}

TEST_CASE("rings under a dense place leave room for it rather than all standing far out") {
  const Typed typed(crowded), plain(disc("Rnd 6: (4 sc, inc) x 6 (36)\n"));
  const Figure &dense = typed.figures[0], &even = plain.figures[0];
  CHECK(unevenness(dense, dense.rings[4]) > 1.5 * unevenness(even, even.rings[4]));
}

TEST_CASE("a disc whose stitches have room by their places is not spread for those further out") {
  const Typed shorter(disc("")), longer(disc("Rnd 6: (4 sc, inc) x 6 (36)\n"));
  const Figure &one = shorter.figures[0], &other = longer.figures[0];
  for (std::size_t i = 0; i < one.items.size(); ++i) {
    CHECK(one.items[i].foot.x == Approx(other.items[i].foot.x).margin(1e-9));
    CHECK(one.items[i].foot.y == Approx(other.items[i].foot.y).margin(1e-9));
  }
}

TEST_CASE("a plain disc whose increases lie on one another stays as small as its stitches are") {
  std::string text = "Oak apple\n\nGALL\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\n";
  for (int round = 3; round <= 20; ++round)
    text += "Rnd " + std::to_string(round) + ": (" + std::to_string(round - 2) + " sc, inc) x 6 (" +
            std::to_string(6 * round) + ")\n";
  const Typed typed(text);
  REQUIRE(typed.figures.size() == 1);
  CHECK(typed.figures[0].rings.back().outer < 25);
}

TEST_CASE("legs worked together over places far apart reach to them") {
  for (const Hand hand : {Hand::right, Hand::left}) {
    const Typed typed("Lichen\n\nCUP\nRnd 1: 12 dc in MR (12)\nRnd 2: 11 tr, tr inc (13)\n"
                      "Rnd 3: dc3tog, 4 dc in next st, 8 dc, dc inc (15)\n",
                      hand);
    int lines = 0;
    for (const Figure& figure : typed.figures)
      for (const Stroke& stroke : figure.strokes) lines += stroke.line == Line::stem ? 1 : 0;
    CHECK(lines > 0);
    CHECK(feet_by_another(typed) == 0);
    for (const Figure& figure : typed.figures) CHECK(test::crossing_stems(typed.fabric, figure) == "");
  }
}

TEST_CASE("legs worked together over places side by side end at their feet") {
  const Typed typed(disc("Rnd 6: sc3tog x 10 (10)\n"));
  for (const Figure& figure : typed.figures)
    for (const Stroke& stroke : figure.strokes) CHECK(stroke.line != Line::stem);
}
