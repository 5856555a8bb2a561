#include "layout/sector.hpp"

#include "layout/direction.hpp"
#include "pictures/spread_rows.hpp"
#include "standing.hpp"
#include "typed.hpp"

#include <algorithm>
#include <catch2/catch.hpp>

using namespace whorl;
using namespace whorl::layout;

using test::Typed;

namespace {

const std::string half_circle =
    "Toadstool fan\n\nCh 4.\nRow 1: 6 dc in 4th ch from hook, turn. (7)\nRow 2: ch 3, dc in same st, 2 dc in "
    "each st across, turn. (14)\nRow 3: ch 3, dc in same st, *dc in next st, 2 dc in next st; rep from * to "
    "last st, dc in last st, turn. (21)\nFasten off.\n";
const std::string shawl =
    "Fern shawl\n\nMake a magic ring.\nRow 1: ch 3, 2 dc in ring, ch 2, 3 dc in ring, turn.\nRow 2: ch 3, 2 "
    "dc in first st, dc in next 2 sts, (2 dc, ch 2, 2 dc) in ch-2 sp, dc in next 2 sts, 3 dc in last st, "
    "turn.\nRow 3: ch 3, 2 dc in first st, dc in next 6 sts, (2 dc, ch 2, 2 dc) in ch-2 sp, dc in next 6 "
    "sts, 3 dc in last st, turn.\n";
const std::string mitred =
    "Beech leaf\n\nCh 2.\nRow 1: 3 sc in 2nd ch from hook, turn. (3)\nRow 2: ch 1, sc in first st, 3 sc in "
    "next st, sc in last st, turn. (5)\nRow 3: ch 1, sc in next 2 sts, 3 sc in next st, sc in next 2 sts, "
    "turn. (7)\nRow 4: ch 1, sc in next 3 sts, 3 sc in next st, sc in next 3 sts, turn. (9)\n";

Point middle(const Item& item) { return item.foot + item.height / 2 * item.up; }

std::string spread_rows(std::uint64_t seed) {
  pictures::Dice dice(seed);
  return "Mosswort\n\n" + pictures::spread_rows_by_chance(dice);
}

} // namespace

TEST_CASE("rows that grow as fast as half a round does make half a disc") {
  const Typed typed(half_circle);
  const Figure& figure = typed.figures.at(0);
  CHECK(figure.form == Form::sector);
  for (const Item& item : figure.items) {
    if (figure.rings[0].round == typed.fabric.stitches[item.first].round) continue;
    CHECK(middle(item).y > -0.6);
    if (item.feet > 0) CHECK(dot(unit(middle(item)), item.up) > 0.7);
  }
  CHECK(figure.low.x + figure.high.x == Approx(0).margin(2));
}

TEST_CASE("the chain that a first row goes into stands in the middle, the chains skipped beside the row") {
  const Typed typed(half_circle);
  const Figure& figure = typed.figures.at(0);
  REQUIRE(figure.rings.front().chain);
  REQUIRE(figure.rings.front().items == 1);
  CHECK(length(middle(figure.items.front())) < 0.01);
  CHECK(test::not_shown_once(typed.fabric, typed.figures).empty());
}

TEST_CASE("a right hand begins the first row of a sector at the right, the next at the left") {
  for (const Hand hand : {Hand::right, Hand::left}) {
    const Typed typed(half_circle, hand);
    const double side = hand == Hand::right ? 1 : -1;
    std::vector<double> labels;
    for (const Label& label : typed.figures.at(0).labels)
      labels.push_back(side * (label.box[0].x + label.box[2].x));
    REQUIRE(labels.size() == 3);
    CHECK(labels[0] > 0);
    CHECK(labels[1] < 0);
    CHECK(labels[2] > 0);
  }
}

TEST_CASE("the groups in the middle of a shawl stand one on the other, its rows square to one another") {
  const Typed typed(shawl);
  const Figure& figure = typed.figures.at(0);
  CHECK(figure.form == Form::sector);
  for (const fabric::Arch& arch : typed.fabric.arches) {
    double x = 0;
    for (const Item& item : figure.items)
      if (item.first >= arch.first_chain && item.first < arch.first_chain + arch.count) x += middle(item).x;
    CHECK(x / arch.count == Approx(0).margin(0.6));
  }
  const Ring& last = figure.rings.back();
  const Item &right = figure.items[last.first_item + 6],
             &left = figure.items[last.first_item + last.items - 7];
  CHECK(dot(right.up, left.up) == Approx(0).margin(0.2));
}

TEST_CASE("a square with increases in its middle alone is a quarter, its corner up") {
  const Typed typed(mitred);
  const Figure& figure = typed.figures.at(0);
  CHECK(figure.form == Form::sector);
  for (const Item& item : figure.items)
    if (item.count == 3) CHECK(middle(item).x == Approx(0).margin(0.4));
  CHECK(figure.high.x - figure.low.x < 14);
}

TEST_CASE("rows that grow at their ends, slowly, or from a long chain lie straight") {
  for (const char* text :
       {"Ear\n\nCh 2.\nRow 1: 2 sc in 2nd ch from hook, turn. (2)\nRow 2: ch 1, inc, inc, turn. (4)\nRow 3: "
        "ch "
        "1, inc, 2 sc, inc, turn. (6)\nRow 4: ch 1, inc, 4 sc, inc, turn. (8)\n",
        "Leaf\n\nMake a magic ring.\nRow 1: ch 1, 3 sc in ring, turn. (3)\nRow 2: ch 1, sc, inc, sc, turn. "
        "(4)\nRow 3: ch 1, 4 sc, turn. (4)\nRow 4: ch 1, 4 sc, turn. (4)\n",
        "Scarf\n\nCh 6.\nRow 1: sc in 2nd ch from hook, sc in next 4 ch, turn. (5)\nRow 2: ch 1, 2 sc in "
        "each "
        "st, turn. (10)\n"}) {
    const Typed typed(text);
    INFO(text);
    CHECK(typed.figures.at(0).form == Form::rows);
  }
}

TEST_CASE("stitches of rows by chance that spread stand by their places, in order, once, with air around") {
  int sectors = 0;
  for (std::uint64_t seed = 400; seed < 480; ++seed) {
    const std::string text = spread_rows(seed);
    const Typed typed(text, seed % 3 == 0 ? Hand::left : Hand::right);
    const Figure& figure = typed.figures.at(0);
    if (figure.form != Form::sector) continue;
    ++sectors;
    INFO(seed << '\n' << text);
    if (figure.strokes.empty()) CHECK(typed.air() >= 0.055); // a line touches the foot that it leads on from
    CHECK(test::nearness_of(typed.fabric, figure).which == "");
    CHECK(test::out_of_order(typed.fabric, figure).empty());
    CHECK(test::crossing_stems(typed.fabric, figure).empty());
    CHECK(test::not_shown_once(typed.fabric, typed.figures).empty());
  }
  CHECK(sectors > 60);
}
