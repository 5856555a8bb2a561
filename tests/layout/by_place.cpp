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
    CHECK(one.items[i].at == Approx(other.items[i].at).margin(1e-9));
    CHECK(length(one.items[i].foot) == Approx(length(other.items[i].foot)).margin(1e-9));
  }
}

/// A plain disc that grows by so many stitches a round, its increases on one another.
std::string oak_apple(int repeats, int rounds, bool increase_first) {
  const auto times = std::to_string(repeats);
  std::string text = "Oak apple\n\nGALL\nRnd 1: " + times + " sc in MR\nRnd 2: inc x " + times + "\n";
  for (int round = 3; round <= rounds; ++round) {
    const std::string plain = std::to_string(round - 2) + " sc";
    text += "Rnd " + std::to_string(round) + ": (" + (increase_first ? "inc, " + plain : plain + ", inc") +
            ") x " + times + "\n";
  }
  return text;
}

TEST_CASE(
    "a plain disc whose increases lie on one another is as small as its stitches are, each by its place") {
  for (const Hand hand : {Hand::right, Hand::left})
    for (const bool first : {false, true})
      for (const int repeats : {5, 6, 8}) {
        const Typed typed(oak_apple(repeats, 20, first), hand);
        REQUIRE(typed.figures.size() == 1);
        CHECK(typed.figures[0].rings.back().outer < (repeats == 8 ? 33 : 25));
        CHECK(feet_by_another(typed) == 0);
        CHECK(typed.air() > 0.05);
      }
}

TEST_CASE("the line on which its rounds begin leans to both sides alike, its labels stay upright beside it") {
  const Typed typed(oak_apple(6, 12, false));
  const Figure& figure = typed.figures.at(0);
  CHECK(figure.rings.front().turned < -0.25);
  CHECK(figure.rings.back().turned == Approx(0 - figure.rings.front().turned));
  for (const Label& label : figure.labels) {
    const Pointer& pointer = figure.pointers.at(label.ring);
    const Point middle = pointer.tip - pointer.length / 2 * pointer.direction;
    CHECK((label.box[0].y + label.box[2].y) / 2 == Approx(middle.y));
    CHECK(label.at.x > middle.x);
  }
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
