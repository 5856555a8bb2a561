/// Edgings of flat pieces as they are typed.

#include "flats.hpp"
#include "layout/hole.hpp"
#include "layout/items.hpp"
#include "layout/rows.hpp"
#include "layout/sign.hpp"
#include "typed.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

using namespace whorl;
using namespace whorl::layout;

using test::Typed;

namespace {

const std::string square = "Moss square\n\n"
                           "Row 1: Ch 9, sc in 2nd ch from hook and in each ch across, ch 1, turn (8)\n"
                           "Rows 2-8: sc in each st across, ch 1, turn (8)\n"
                           "Row 9: sc in each st across (8)\n";
const std::string around = "Rnd 10: sc evenly around, 3 sc in each corner, join (42)\n";
const std::string ear = "Fox ear\n\n"
                        "Row 1: Ch 7, sc in 2nd ch from hook and in each ch across, ch 1, turn (6)\n"
                        "Row 2: sc in each st across, ch 1, turn (6)\n"
                        "Row 3: dec, sc 2, dec, ch 1, turn (4)\n"
                        "Row 4: sc in each st across, ch 1, turn (4)\n"
                        "Row 5: dec, dec (2)\n";
const std::string moth =
    "Moth\n\nRow 1: Ch 11, sc in 2nd ch from hook and in each ch across, ch 1, turn (10)\n"
    "Row 2: dec, sc in next 6, dec, ch 1, turn (8)\n"
    "Row 3: dec, sc in next 4, dec, ch 1, turn (6)\n"
    "Row 4: dec, sc in next 2, dec, ch 1, turn (4)\nRow 5: dec, dec, ch 1, turn (2)\n"
    "Row 6: inc, inc, ch 1, turn (4)\n"
    "Row 7: inc, sc in next 2, inc, ch 1, turn (6)\n"
    "Row 8: inc, sc in next 4, inc, ch 1, turn (8)\n"
    "Row 9: inc, sc in next 6, inc (10)\n";

const Item& item_of(const Figure& figure, const Ring& ring, fabric::StitchId stitch) {
  const Item* first = &figure.items[ring.first_item];
  const Item* found = std::find_if(first, first + ring.items, [stitch](const Item& item) {
    return item.first <= stitch && stitch < item.first + item.count;
  });
  return *found;
}

double far(Point p) { return std::sqrt(p.x * p.x + p.y * p.y); }

/// Where a leg goes, in a figure whose rows all stand one by one.
Point place_in(const Typed& typed, const fabric::Place& place) {
  const Figure& figure = typed.figures[0];
  if (place.what == fabric::On::row_end) {
    const Ring& row = typed.ring(place.of);
    const bool begun = place.loops == stitch::front;
    const Item& end = figure.items[row.first_item + (begun ? 0 : row.items - 1)];
    return {figure.tips[end.first_tip].x, row.middle};
  }
  const Ring& ring = typed.ring(typed.fabric.stitches[place.of].round);
  const Item& item = item_of(figure, ring, place.of);
  return figure.tips[item.first_tip + place.of - item.first];
}

/// The feet of a round's stitches that are nearer to what another of its stitches goes into, by more than
/// `spare`.
int strayed(const Typed& typed, std::uint32_t round, double spare) {
  const fabric::Round& worked = typed.fabric.rounds[round];
  std::vector<Point> places, feet;
  const Figure& figure = typed.figures[0];
  const Ring& ring = typed.ring(round);
  for (std::uint32_t i = ring.first_item; i < ring.first_item + ring.items; ++i) {
    const fabric::Legs legs = legs_of(typed.fabric, figure.items[i]);
    for (std::size_t k = 0; k < legs.size(); ++k) {
      const fabric::Place& into = (legs.begin() + k)->into;
      if (is_stitch(into) && typed.fabric.stitches[into.of].round == round) continue;
      places.push_back(place_in(typed, into));
      feet.push_back(figure.feet[figure.items[i].first_foot + k]);
    }
  }
  CHECK(worked.count > 0);
  int many = 0;
  for (std::size_t i = 0; i < feet.size(); ++i)
    for (const Point place : places) {
      if (far(feet[i] - place) + spare >= far(feet[i] - places[i])) continue;
      ++many;
      UNSCOPED_INFO("stitch " << i << " is " << far(feet[i] - places[i]) << " from its own place, "
                              << far(feet[i] - place) << " from another");
    }
  return many;
}

} // namespace

TEST_CASE("an edging stands round its rows, in their figure") {
  const Typed typed(square + around);
  REQUIRE(typed.figures.size() == 1);
  CHECK(typed.figures[0].form == Form::rows);
  CHECK(typed.figures[0].rings.back().edging);
  CHECK(typed.figures[0].last_round == 10);
}

TEST_CASE("rows that an edging goes along are not folded") {
  const Typed typed(square + around);
  for (const Ring& ring : typed.figures[0].rings) CHECK(ring.round == ring.last_round);
}

TEST_CASE("stitches along an edge are turned from the piece") {
  const Typed typed(square + around);
  const Figure& figure = typed.figures[0];
  const Ring& ring = figure.rings.back();
  const Ring& row = typed.ring(5);
  for (std::uint32_t i = ring.first_item; i < ring.first_item + ring.items; ++i) {
    const Item& item = figure.items[i];
    for (const fabric::Leg& leg : legs_of(typed.fabric, item)) {
      if (leg.into.what != fabric::On::row_end || leg.into.of != row.round) continue;
      CHECK(std::abs(item.up.x) > 0.99);
      CHECK(item.up.x * item.foot.x > 0);
      CHECK(item.foot.y == Approx(row.middle).margin(0.6));
    }
  }
}

TEST_CASE("three in a corner fan round it") {
  const Typed typed(square + around);
  const Figure& figure = typed.figures[0];
  const Ring& ring = figure.rings.back();
  int corners = 0;
  for (std::uint32_t i = ring.first_item; i < ring.first_item + ring.items; ++i) {
    if (figure.items[i].count != 3) continue;
    ++corners;
    CHECK(std::abs(figure.items[i].up.x) == Approx(std::sqrt(0.5)).margin(0.15));
  }
  CHECK(corners == 4);
}

TEST_CASE("feet of an edging are nearer to their own place than to any other") {
  CHECK(strayed(Typed(square + "Rnd 10: sc evenly around (34)\n"), 10, 0.1) == 0);
  CHECK(strayed(Typed(ear + "Rnd 6: sc evenly around (18)\n"), 6, 0.35) == 0);
}

TEST_CASE("an edging of one side stands beside it") {
  const Typed typed(ear + "Row 6: Ch 1, do not turn, sc in each row end (5)\n");
  REQUIRE(typed.figures.size() == 1);
  const Figure& figure = typed.figures[0];
  const Ring& ring = figure.rings.back();
  REQUIRE(ring.edging);
  for (std::uint32_t i = 1; i < ring.items; ++i) CHECK(figure.items[ring.first_item + i].up.x < -0.5);
}

TEST_CASE("further rounds of an edging stand outside it") {
  const Typed typed(square + around + "Rnd 11: ch 1, sc in each st around, join (42)\n");
  REQUIRE(typed.figures.size() == 1);
  const auto& rings = typed.figures[0].rings;
  CHECK(rings.back().inner > rings[rings.size() - 2].outer);
}

TEST_CASE("an edging that is a part of its own stands round the faint rows") {
  const Typed typed(square + "EDGING\nRnd 1: sc evenly around, 3 sc in each corner, join (42)\n");
  REQUIRE(typed.figures.size() == 2);
  const Figure& figure = typed.figures[1];
  CHECK(figure.part == 1);
  for (const Ring& ring : figure.rings) CHECK(ring.echo != ring.edging);
}

TEST_CASE("the edging of a piece with a waist is drawn as a ring") {
  const Typed typed(moth + "Rnd 10: sc evenly around (40)\n");
  REQUIRE(typed.figures.size() == 2);
  CHECK(typed.figures[1].form == Form::disc);
}

TEST_CASE("many rounds along one side of another piece are a tube of their own") {
  std::string hand = "HAND\nRnd 1: ch 1, sc evenly along row ends, join (8)\n";
  for (int round = 2; round < 6; ++round) hand += "Rnd " + std::to_string(round) + ": sc around (8)\n";
  const std::string cuff =
      "Cuff\n\nRow 1: Ch 5, sc in 2nd ch from hook and in each ch across, ch 1, turn (4)\n"
      "Rows 2-8: sc BLO across, ch 1, turn (4)\nJoin short ends with sl st.\n\n";
  const Typed typed(cuff + hand);
  REQUIRE(typed.figures.size() > 1);
  for (std::size_t i = 1; i < typed.figures.size(); ++i)
    for (const Ring& ring : typed.figures[i].rings) CHECK_FALSE(ring.edging);
}

TEST_CASE("a left hand's edging is the mirror image") {
  const Figure right = Typed(square + around).figures.at(0);
  const Figure left = Typed(square + around, Hand::left).figures.at(0);
  REQUIRE(right.tips.size() == left.tips.size());
  for (std::size_t i = 0; i < right.tips.size(); ++i)
    CHECK(far(right.tips[i] - Point{0 - left.tips[i].x, left.tips[i].y}) < 0.05);
}

TEST_CASE("nothing touches in an edging") {
  CHECK(Typed(square + around).air() > 0.055);
  CHECK(Typed(square + around + "Rnd 11: ch 1, sc in each st around, join (42)\n").air() > 0.055);
  CHECK(Typed(ear + "Rnd 6: sc evenly around (22)\n").air() > 0.055);
  CHECK(Typed(ear + "Rnd 6: dc evenly around (24)\n").air() > 0.055);
}

TEST_CASE("a joined edging closes and stays close to its rows, however few stitches it has") {
  const Typed typed(square +
                    "Rnd 10: Ch 1, [3 sc in corner, 6 sc evenly along side] 4 times; join with a sl st in "
                    "first sc. (36)\n");
  REQUIRE(typed.figures.size() == 1);
  CHECK(typed.figures[0].rings.back().inner < 0.4);
  CHECK(typed.air() > 0.055);
}

TEST_CASE("an edging is laid at the optimum, to 1e-9") {
  const Typed typed(square + around);
  const std::vector<Section> sections = sections_of(typed.fabric, 0);
  const auto drawn =
      draw_edged_rows(typed.fabric, 0, sections.at(0), Folding(typed.fabric), typed.extents, {});
  REQUIRE(drawn.has_value());
  const Optimum optimum = check_optimum(drawn->courses.back().strung, drawn->courses.back().at);
  CHECK(optimum.worst_gap < 1e-9);
  CHECK(optimum.worst_force < 1e-9);
}

namespace {

const std::string two_yarns = "Leaf coaster\n\nYarn: cream and moss\n\n"
                              "Row 1: with cream, ch 15, sc in 2nd ch from hook and across (14)\n"
                              "Rows 2-6: ch 1, turn, sc across (14)\nChange to moss.\n"
                              "Rows 7-8: ch 1, turn, sc across (14)\nChange to cream.\n"
                              "Rows 9-13: ch 1, turn, sc across (14)\nChange to moss.\n"
                              "Rnd 14: sc evenly around, 3 sc in each corner, join (62)\n"
                              "Rnd 15: ch 1, sc in each st around, join (62)\n";

std::vector<const Placed*> flags_of(const Typed& typed) {
  std::vector<const Placed*> flags;
  for (const Placed& placed : typed.figures[0].placed)
    if (placed.sign == Sign::flag) flags.push_back(&placed);
  return flags;
}

/// Whether a point lies in a closed outline of curves, taken at their ends.
bool lies_in(const std::vector<Point>& outline, Point p) {
  bool inside = false;
  for (std::size_t i = 3; i < outline.size(); i += 3) {
    const Point a = outline[i - 3], b = outline[i];
    if ((a.y > p.y) != (b.y > p.y) && p.x < a.x + (p.y - a.y) / (b.y - a.y) * (b.x - a.x)) inside = !inside;
  }
  return inside;
}

} // namespace

TEST_CASE("rows and edgings carry a flag where the yarn changes, beside their number") {
  const Typed typed(two_yarns);
  const auto flags = flags_of(typed);
  REQUIRE(flags.size() == 3);
  for (const Placed* flag : flags) {
    const Figure& figure = typed.figures[0];
    double least = 1e9;
    for (const Label& label : figure.labels)
      if (label.ring == flag->ring) least = std::min(least, distance(label.box, outlines_of(*flag)[0]));
    CHECK(least > 0.05);
    CHECK(least < 0.5);
  }
}

TEST_CASE("flags beside rows touch nothing") {
  for (const Hand hand : {Hand::right, Hand::left}) {
    const Typed typed(two_yarns, hand);
    CHECK(typed.air() > 0.02);
  }
}

TEST_CASE("an edging in another yarn lies on its ground, and nothing else does") {
  const Typed typed(two_yarns);
  const Figure& figure = typed.figures[0];
  for (const Ring& ring : figure.rings)
    for (std::uint32_t i = ring.first_item; i < ring.first_item + ring.items; ++i) {
      const Item& item = figure.items[i];
      const Point middle = item.foot + item.height / 2 * item.up;
      const bool lies = std::any_of(figure.grounds.begin(), figure.grounds.end(),
                                    [&](const Ground& ground) { return lies_in(ground.outline, middle); });
      if (ring.edging) CHECK(lies);
      if (ring.chain) CHECK_FALSE(lies);
      if (!ring.edging && !ring.chain && ring.round < 6) CHECK_FALSE(lies);
    }
}
