#include "typed.hpp"

#include "fabric/joint.hpp"
#include "layout/direction.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace whorl;
using namespace whorl::layout;
using test::Typed;

namespace {

const std::string bear =
    "Little bear\n\nEAR (make 2)\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\nRnd 3: (5 sc, inc) x 2 (14)\n\n"
    "HEAD\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\nRnd 3: (sc, inc) x 6 (18)\nRnd 4: (2 sc, inc) x 6 "
    "(24)\n"
    "Rnd 5: 3 sc, 7 sc through ear and head, 4 sc, 7 sc through ear and head, 3 sc (24)\n"
    "Rnds 6-7: sc around (24)\nRnd 8: (2 sc, dec) x 6 (18)\nRnd 9: (sc, dec) x 6 (12)\nRnd 10: dec x 6 (6)\n";

double away(Point a, Point b) { return length(a - b); }

/// The stitches of a figure over which a part's letter stands: those whose tops are nearest to the signs.
std::vector<fabric::StitchId> shared(const Figure& figure, const std::string& letter, bool first_only) {
  std::vector<fabric::StitchId> found;
  for (const Placed& placed : figure.placed) {
    if (!is_joined(placed.sign) || placed.text.text != letter) continue;
    if (first_only && placed.sign != Sign::joined_first) continue;
    fabric::StitchId nearest = fabric::none;
    double least = 1e9;
    const Ring& ring = figure.rings[placed.ring];
    for (std::uint32_t i = ring.first_item; i < ring.first_item + ring.items; ++i)
      for (std::uint32_t j = 0; j < figure.items[i].count; ++j)
        if (const double d = away(figure.tips[figure.items[i].first_tip + j], placed.at); d < least)
          least = d, nearest = figure.items[i].first + j;
    found.push_back(nearest);
  }
  std::sort(found.begin(), found.end());
  return found;
}

/// All of them, in all figures of a part.
std::vector<fabric::StitchId> shared(const Typed& typed, std::uint32_t part, const std::string& letter,
                                     bool first_only = false) {
  std::vector<fabric::StitchId> found;
  for (const Figure& figure : typed.figures)
    if (figure.part == part)
      for (const fabric::StitchId stitch : shared(figure, letter, first_only)) found.push_back(stitch);
  return found;
}

} // namespace

TEST_CASE("both pictures of parts joined without sewing agree: each shows the other's letter at the same "
          "stitches") {
  for (const Hand hand : {Hand::right, Hand::left}) {
    const Typed typed(bear, hand);
    std::vector<fabric::StitchId> through, held;
    for (fabric::StitchId stitch = 0; stitch < typed.fabric.stitches.size(); ++stitch) {
      const fabric::Legs legs = fabric::held_legs_of(typed.fabric, stitch);
      if (legs.size() > 0) through.push_back(stitch);
      for (const fabric::Leg& leg : legs) held.push_back(leg.into.of);
    }
    std::sort(held.begin(), held.end());
    held.erase(std::unique(held.begin(), held.end()), held.end());
    CHECK(through.size() == 14);
    CHECK(held.size() == 14);
    CHECK(shared(typed, 1, "A") == through);
    CHECK(shared(typed, 0, "B") == held);
    CHECK(shared(typed, 1, "B").empty());
  }
}

TEST_CASE("a stitch through two parts stands on its own foot alone and is no decrease") {
  const Typed typed(bear);
  std::uint32_t joined = 0;
  for (const Figure& figure : typed.figures)
    for (const Ring& ring : figure.rings)
      for (std::uint32_t i = ring.first_item; !ring.echo && i < ring.first_item + ring.items; ++i) {
        const Item& item = figure.items[i];
        if ((typed.fabric.stitches[item.first].flags & fabric::holds_part) == 0) continue;
        ++joined;
        CHECK(item.feet == 1);
      }
  CHECK(joined == 14);
}

TEST_CASE("nothing touches the marks of joined parts") {
  const Typed typed(bear);
  for (std::size_t i = 0; i < typed.figures.size(); ++i) CHECK(typed.air(i) >= 0.055);
}

TEST_CASE("a joined last round does not make a strip of a part that is a disc") {
  const Typed typed(bear);
  CHECK(std::count_if(typed.figures.begin(), typed.figures.end(),
                      [](const Figure& figure) { return figure.part == 0; }) == 1);
}

TEST_CASE("where parts are joined first is ringed on both") {
  const Typed typed(bear);
  const std::vector<fabric::Joint> joints = fabric::joints_of(typed.fabric);
  REQUIRE(joints.size() == 2);
  CHECK(shared(typed, 1, "A", true) == std::vector{joints[0].begins, joints[1].begins});
  std::vector<fabric::StitchId> held;
  for (const fabric::Leg& leg : fabric::held_legs_of(typed.fabric, joints[0].begins))
    held.push_back(leg.into.of);
  std::sort(held.begin(), held.end());
  CHECK(held.size() == 2);
  CHECK(shared(typed, 0, "B", true) == held);
}

TEST_CASE("a last row that is joined shows the other part's letter") {
  const Typed typed(
      "Burrow fox\n\nEAR (make 2)\nCh 6\nRow 1: sc in 2nd ch from hook and in each ch across (5)\n"
      "Row 2: ch 1, turn, sc in each st (5)\n\nHEAD\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\n"
      "Rnd 3: 2 sc, 4 sc through ear and head, 6 sc (12)\n");
  const std::vector<fabric::Joint> joints = fabric::joints_of(typed.fabric);
  REQUIRE(joints.size() == 1);
  CHECK(joints[0].first == 3);
  CHECK(joints[0].last == 6);
  CHECK_FALSE(joints[0].flat);
  std::vector<fabric::StitchId> held;
  for (fabric::StitchId stitch = joints[0].begins; stitch <= joints[0].ends; ++stitch)
    held.push_back(fabric::held_legs_of(typed.fabric, stitch).begin()->into.of);
  std::sort(held.begin(), held.end());
  CHECK(shared(typed, 0, "B") == held);
  for (std::size_t i = 0; i < typed.figures.size(); ++i) CHECK(typed.air(i) >= 0.055);
}

TEST_CASE("a round that closes an edge laid flat is a line above the layer in front") {
  const Typed typed("Foot\n\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\nRnd 3: (sc, inc) x 6 (18)\n"
                    "Rnd 4: (sc, dec) x 6 (12)\nRnd 5: sc through both layers across (6)\n");
  const Figure& last = typed.figures.back();
  CHECK(last.form == Form::strip);
  CHECK(last.first_round == 4);
  CHECK(last.last_round == 4);
  const Ring &base = last.rings[0], &closing = last.rings[1];
  REQUIRE(closing.items == 6);
  for (std::uint32_t i = 0; i < closing.items; ++i) {
    const Item& item = last.items[closing.first_item + i];
    CHECK(item.feet == 1);
    const fabric::StitchId into = fabric::legs_of(typed.fabric, item.first).begin()->into.of;
    CHECK(into == typed.fabric.rounds[3].first_stitch + i);
    double own = 1e9, other = 1e9;
    for (std::uint32_t j = base.first_item; j < base.first_item + base.items; ++j)
      for (std::uint32_t k = 0; k < last.items[j].count; ++k) {
        const double far = away(last.tips[last.items[j].first_tip + k], last.feet[item.first_foot]);
        double& least = last.items[j].first + k == into ? own : other;
        least = std::min(least, far);
      }
    CHECK(own < other);
  }
}

namespace {

/// Two legs and a body that goes on round both, whose first round is as given.
Typed on_legs(const std::string& round, Hand hand = Hand::right) {
  return Typed("Gnome\n\nLEG (make 2)\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\nRnds 3-6: sc around "
               "(12)\n\nBODY\nRnd 1: " +
                   round + (round.find("Rnd 2") == std::string::npos ? "\nRnds 2-6: sc around\n" : "\n"),
               hand);
}

const Figure& body_of(const Typed& typed) { return typed.figures.back(); }

std::vector<Stroke> brackets_of(const Figure& figure) {
  std::vector<Stroke> found;
  for (const Stroke& stroke : figure.strokes)
    if (stroke.line == Line::edge) found.push_back(stroke);
  return found;
}

/// How many feet of the first ring lie between the ends of a bracket, seen from the middle.
int feet_in(const Figure& figure, const Stroke& bracket) {
  const Ring& ring = figure.rings.front();
  const Point from = unit(bracket.points.front()), to = unit(bracket.points.back());
  int feet = 0;
  for (std::uint32_t i = ring.first_item; i < ring.first_item + ring.items; ++i) {
    const Point foot = unit(figure.items[i].foot);
    const double side = figure.clockwise ? -1 : 1;
    const bool wide = side * cross(from, to) < 0;
    const bool behind = side * cross(from, foot) > 0, before = side * cross(foot, to) > 0;
    feet += wide ? behind || before : behind && before;
  }
  return feet;
}

} // namespace

TEST_CASE("stitches along the edges of legs are bracketed, leg by leg, and the chain between them is not") {
  for (const Hand hand : {Hand::right, Hand::left}) {
    const Typed typed =
        on_legs("ch 3, 12 sc around first leg, sc in each of 3 ch, 12 sc around second leg, sc "
                "in the other side of each of 3 ch (30)",
                hand);
    const Figure& body = body_of(typed);
    const auto brackets = brackets_of(body);
    REQUIRE(brackets.size() == 2);
    for (const Stroke& bracket : brackets) CHECK(feet_in(body, bracket) == 12);
    const auto names = std::count_if(body.placed.begin(), body.placed.end(),
                                     [](const Placed& placed) { return placed.text.text == "LEG"; });
    CHECK(names == 2);
    CHECK(body.centre_text.empty());
    CHECK(typed.air(typed.figures.size() - 1) > 0.055);
  }
}

TEST_CASE("legs joined without a chain between them have a bracket each") {
  const Typed typed = on_legs("sc in 12 sts of first leg, sc in 12 sts of second leg (24)");
  const auto brackets = brackets_of(body_of(typed));
  REQUIRE(brackets.size() == 2);
  for (const Stroke& bracket : brackets) CHECK(feet_in(body_of(typed), bracket) == 12);
}

TEST_CASE("a strip that goes on along the edges of legs brackets and names them beneath its first line") {
  for (const Hand hand : {Hand::right, Hand::left}) {
    const Typed typed =
        on_legs("sc in 12 sts of first leg, sc in 12 sts of second leg (24)\nRnd 2: sc in next "
                "8 sts, with moss, sc in next 8 sts, with bark, sc in next 8 sts (24)\nRnd 3: "
                "sc in next 8 sts, with moss, sc in next 8 sts, with bark, sc in next 8 sts (24)",
                hand);
    const Figure& body = body_of(typed);
    REQUIRE(body.form == Form::strip);
    const auto brackets = brackets_of(body);
    REQUIRE(brackets.size() == 2);
    const Ring& first = body.rings.front();
    for (const Stroke& bracket : brackets) {
      int beside = 0;
      for (std::uint32_t i = first.first_item; i < first.first_item + first.items; ++i) {
        const Point foot = body.items[i].foot;
        beside += foot.x > bracket.points.front().x && foot.x < bracket.points.back().x;
        for (const Point p : bracket.points) CHECK(p.y < foot.y);
      }
      CHECK(beside == 12);
    }
    const auto names = std::count_if(body.placed.begin(), body.placed.end(),
                                     [](const Placed& placed) { return placed.text.text == "LEG"; });
    CHECK(names == 2);
    CHECK(typed.air(typed.figures.size() - 1) > 0.055);
  }
}

TEST_CASE("a part that begins by itself has no bracket") {
  CHECK(brackets_of(Typed(bear).figures.at(1)).empty());
}
