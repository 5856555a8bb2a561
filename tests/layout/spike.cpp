/// Spikes as they are typed.

#include "layout/items.hpp"
#include "layout/place.hpp"
#include "typed.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

using namespace whorl;
using namespace whorl::layout;

using test::Typed;

namespace {

const std::string rows = "Band\n\nRow 1: Ch 13, sc in 2nd ch from hook and in each ch across, turn (12)\n"
                         "Row 2: Ch 1, sc in each st across, turn (12)\n"
                         "Row 3: Ch 1, sc in each st across, turn (12)\n";
const std::string two_down = "Row 4: Ch 1, (2 sc, spike sc 2 rows below, sc) x 3, turn (12)\n";
const std::string disc =
    "Mat\n\nRnd 1: 6 sc in magic ring (6)\nRnd 2: inc x 6 (12)\nRnd 3: (sc, inc) x 6 (18)\n"
    "Rnd 4: (2 sc, inc) x 6 (24)\nRnd 5: sc around (24)\n"
    "Rnd 6: (3 sc, spike sc) x 6 (24)\n";
const std::string tube = "Stump\n\nCh 24, join with sl st to form a ring.\nRnd 1: sc in each ch around (24)\n"
                         "Rnd 2: sc around (24)\nRnd 3: (3 sc, spike sc) x 6 (24)\n";

std::vector<const Stroke*> stems_of(const Figure& figure) {
  std::vector<const Stroke*> stems;
  for (const Stroke& stroke : figure.strokes)
    if (stroke.line == Line::stem) stems.push_back(&stroke);
  return stems;
}

double far(Point p) { return std::sqrt(p.x * p.x + p.y * p.y); }

/// How far the foot of each stem is from the head that its stitch goes into, at the most.
double furthest_foot(const Typed& typed) {
  const Figure& figure = typed.figures.at(0);
  std::vector<Point> heads;
  for (const Item& spike : figure.items) {
    if (spike.stem == 0) continue;
    const fabric::StitchId of = legs_of(typed.fabric, spike).begin()->into.of;
    for (const Item& item : figure.items)
      if (item.first <= of && of < item.first + item.count)
        heads.push_back(figure.tips[item.first_tip + of - item.first]);
  }
  const std::vector<const Stroke*> stems = stems_of(figure);
  REQUIRE(heads.size() == stems.size());
  double most = 0;
  for (std::size_t i = 0; i < heads.size(); ++i)
    most = std::max(most, far(stems[i]->points.back() - heads[i]));
  return most;
}

} // namespace

TEST_CASE("the stem of a spike leads to its own foot, in rows, discs and strips") {
  for (const std::string& text : {rows + two_down, disc, tube}) {
    const Typed typed(text);
    CHECK(stems_of(typed.figures.at(0)).size() >= 3);
    CHECK(furthest_foot(typed) < 0.3);
  }
}

TEST_CASE("a stem touches nothing on its way") {
  for (const std::string& text : {rows + two_down, disc, tube}) CHECK(Typed(text).air() > 0.03);
}

TEST_CASE("the line that joins the lines of a strip makes way for stems, at its ends too") {
  CHECK(Typed(tube + "Rnd 4: (spike sc, sc) x 12 (24)\nRnd 5: sc around (24)\n"
                     "Rnd 6: spike sc 2 rounds below, sc 22, spike sc 2 rounds below (24)\n")
            .air() > 0.03);
}

TEST_CASE("a stem turns once above and once below each round that it passes") {
  const Typed typed(rows + two_down);
  for (const Stroke* stem : stems_of(typed.figures.at(0))) CHECK(stem->points.size() == 2 + 2 * 2);
}

TEST_CASE("rounds that a spike passes are not folded") {
  const Typed typed("Stump\n\nCh 24, join with sl st to form a ring.\nRnd 1: sc in each ch around (24)\n"
                    "Rnd 2: sc around (24)\nRnd 3: sc around (24)\nRnd 4: sc around (24)\n"
                    "Rnd 5: (3 sc, spike sc 2 rounds below) x 6 (24)\n");
  CHECK(stems_of(typed.figures.at(0)).size() == 6);
}

TEST_CASE("a spike whose stem would have no way keeps its arrow") {
  const Typed typed(
      "Rug\n\nRow 1: Ch 13, sc in 2nd ch from hook and in each ch across, turn (12)\n"
      "Row 2: Ch 1, bo in each st across, turn (12)\nRow 3: Ch 1, spike sc across, turn (12)\n");
  const Figure& figure = typed.figures.at(0);
  CHECK(stems_of(figure).empty());
  CHECK(std::any_of(figure.items.begin(), figure.items.end(),
                    [](const Item& item) { return item.key.base == Base::below; }));
}
