/// Figures of lace: groups in their spaces, bows, motifs.

#include "layout/lace.hpp"

#include "lace_by_chance.hpp"
#include "standing.hpp"
#include "typed.hpp"
#include "typed_lace.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <utility>

using namespace whorl;
using namespace whorl::layout;

using test::Typed;

namespace {

double length(Point p) { return std::sqrt(p.x * p.x + p.y * p.y); }

/// The items of a figure that show the stitches from `first` on, in the order of work.
std::vector<Item> items_from(const Figure& figure, fabric::StitchId first, std::uint32_t many) {
  std::vector<Item> found;
  for (const Item& item : figure.items)
    if (item.first >= first && item.first < first + many) found.push_back(item);
  std::sort(found.begin(), found.end(), [](const Item& a, const Item& b) { return a.first < b.first; });
  return found;
}

Point head(const Item& item) { return item.foot + item.height * item.up; }

bool is_join(const fabric::Fabric& fabric, fabric::StitchId stitch) {
  return (fabric.stitches[stitch].flags & fabric::joins) != 0;
}

/// Whether a point lies within an outline, by the corners of its curves.
bool surrounds(const std::vector<Point>& outline, Point p) {
  bool within = false;
  for (std::size_t i = 0; i + 3 < outline.size(); i += 3) {
    const Point a = outline[i] - p, b = outline[i + 3] - p;
    if ((a.y > 0) != (b.y > 0) && a.x + (b.x - a.x) * a.y / (a.y - b.y) > 0) within = !within;
  }
  return within;
}

std::string lace_by_chance(std::uint64_t seed) {
  test::Dice dice{seed * 7919 + 1};
  return "Fernlace\n\n" + test::LaceByChance<test::Dice>(dice).rounds();
}

const std::string mandala = "Mandala\n\nRnd 1: MR, ch 3 (counts as dc), 11 dc in ring, join\n";

} // namespace

TEST_CASE("feet of lace are nearer to their own place than to any other of that round") {
  for (const std::string& text : test::lace()) {
    const Typed typed(text);
    for (const Figure& figure : typed.figures) {
      const test::Nearness found = test::nearness_of(typed.fabric, figure);
      INFO(text << found.which);
      CHECK(found.near > 0);
      CHECK(found.not_near == 0);
    }
  }
}

TEST_CASE("in random lace all feet are nearer to their own place than to any other of that round") {
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    const std::string text = lace_by_chance(seed);
    const Typed typed(text);
    for (const Figure& figure : typed.figures) {
      const test::Nearness found = test::nearness_of(typed.fabric, figure);
      INFO(seed << '\n' << text << found.which);
      CHECK(found.not_near == 0);
    }
  }
}

TEST_CASE("random lace keeps its order, no stems cross, and each stitch is shown once") {
  for (std::uint64_t seed = 61; seed <= 120; ++seed) {
    const std::string text = lace_by_chance(seed);
    INFO(seed << '\n' << text);
    const Typed typed(text);
    CHECK(test::not_shown_once(typed.fabric, typed.figures).empty());
    for (const Figure& figure : typed.figures) {
      CHECK(test::out_of_order(typed.fabric, figure).empty());
      CHECK(test::crossing_stems(typed.fabric, figure).empty());
    }
  }
}

TEST_CASE("lace is drawn in one disc though it draws in and lets out again") {
  for (std::uint64_t seed = 1; seed <= 20; ++seed) {
    const std::string text = lace_by_chance(seed);
    INFO(seed << '\n' << text);
    CHECK(Typed(text).figures.size() == 1);
  }
}

TEST_CASE("the stem of a stitch that stands further out reaches down to its place") {
  const Typed typed(
      "Fernlace\n\nRnd 1: MR, 8 sc in ring, join\nRnd 2: ch 1, (tr in next st, ch 7) 8 times, join\n"
      "Rnd 3: ch 1, (sc in next ch-7 sp, ch 7) 8 times, join\n");
  const Figure& figure = typed.figures.at(0);
  const fabric::Round& round = typed.fabric.rounds[1];
  int stretched = 0;
  for (const Item& item : items_from(figure, round.first_stitch, round.count)) {
    if (item.feet != 1 || is_join(typed.fabric, item.first)) continue;
    const double own = extent(typed.extents, item.key).height;
    stretched += item.height > own + 0.04 ? 1 : 0;
    CHECK(length(item.foot) < figure.rings[0].outer + 0.6);
    CHECK(length(figure.tips[item.first_tip] - head(item)) < 1e-9);
  }
  CHECK(stretched == 8);
}

TEST_CASE("nothing touches in random lace") {
  for (std::uint64_t seed = 101; seed <= 160; ++seed) {
    const std::string text = lace_by_chance(seed);
    INFO(seed << '\n' << text);
    const Typed typed(text);
    for (const Figure& figure : typed.figures) {
      const test::Nearest nearest = test::nearest(test::patches_of(figure, typed.extents));
      INFO(nearest.one << " and " << nearest.other);
      CHECK(nearest.air > 0.025); // chains of a run abut
    }
  }
}

TEST_CASE("stitches in one space fan out of it") {
  const Typed typed(mandala + "Rnd 2: ch 1, (sc in next st, ch 2, skip 1) 6 times, join\n"
                              "Rnd 3: ch 1, (3 dc in next ch-2 sp, ch 1) 6 times, join\n");
  const Figure& figure = typed.figures.at(0);
  const fabric::Round& round = typed.fabric.rounds[2];
  std::vector<Item> group;
  for (const Item& item : items_from(figure, round.first_stitch, round.count))
    if (item.feet == 1 && group.size() < 3 && !is_join(typed.fabric, item.first)) group.push_back(item);
  REQUIRE(group.size() == 3);
  CHECK(length(group[0].foot - group[2].foot) < 0.6 * length(head(group[0]) - head(group[2])));
  CHECK(length(group[0].foot - group[1].foot) == Approx(length(group[1].foot - group[2].foot)).margin(0.02));
}

TEST_CASE("a group with chains in it stands in its space as one without does") {
  const Typed typed(
      mandala + "Rnd 2: ch 1, (sc in next st, ch 2, skip 1) 6 times, join\n"
                "Rnd 3: ch 1, (3 dc in next ch-2 sp, (3 dc, ch 2, 3 dc) in next ch-2 sp) 3 times, join\n");
  const Figure& figure = typed.figures.at(0);
  const fabric::Round& round = typed.fabric.rounds[2];
  std::vector<Item> stitches;
  for (const Item& item : items_from(figure, round.first_stitch, round.count))
    if (item.feet == 1 && !is_join(typed.fabric, item.first)) stitches.push_back(item);
  REQUIRE(stitches.size() == 27);
  for (std::size_t i = 0; i < 27; i += 9) {
    const double three = length(stitches[i].foot - stitches[i + 2].foot),
                 six = length(stitches[i + 3].foot - stitches[i + 8].foot);
    CHECK(six < three + 1.0);
  }
}

TEST_CASE("four chains and more bow outward, fewer lie straight") {
  for (const int chains : {3, 5}) {
    const Typed typed(mandala + "Rnd 2: ch 1, (sc in next st, ch " + std::to_string(chains) +
                      ", skip 1) 6 times, join\nRnd 3: ch 1, (sc in next ch sp, ch 3) 6 times, join\n");
    const fabric::Arch& arch = typed.fabric.arches.front();
    const std::vector<Item> bow = items_from(typed.figures.at(0), arch.first_chain, arch.count);
    REQUIRE(bow.size() == static_cast<std::size_t>(chains));
    const Point first = bow.front().foot, last = bow.back().foot, middle = bow[bow.size() / 2].foot;
    const double out = length(middle) - length(0.5 * (first + last));
    CHECK((chains < 4 ? std::abs(out) < 0.02 : out > 0.15));
  }
}

TEST_CASE("the chains of a space lie in line with the heads beside them") {
  const Typed typed(mandala + "Rnd 2: ch 1, (dc in next st, ch 1, skip 1) 6 times, join\n"
                              "Rnd 3: ch 1, (sc in next ch sp, ch 3) 6 times, join\n");
  const Figure& figure = typed.figures.at(0);
  const fabric::Arch& arch = typed.fabric.arches.front();
  const Item chain = items_from(figure, arch.first_chain, 1).front(),
             dc = items_from(figure, arch.first_chain - 1, 1).front();
  CHECK(length(head(chain)) == Approx(length(head(dc))).margin(0.2));
}

TEST_CASE("groups with chains in them are the corners of a motif") {
  for (const std::string& text : test::lace()) {
    const Typed typed(text);
    const bool square = text.find("square") != std::string::npos,
               hexagon = text.find("hexagon") != std::string::npos;
    INFO(text);
    REQUIRE(typed.figures.size() == 1);
    CHECK((typed.figures.front().form == Form::motif) == (square || hexagon));
    CHECK(typed.figures.front().corners == (square ? 4 : hexagon ? 6 : 0));
  }
}

TEST_CASE(
    "three stitches in one over the middle of three are the corners of a motif, on straight diagonals") {
  const std::string square = "Pot holder\n\nRnd 1: MR, 8 sc. (8)\nRnd 2: *3 sc in next st, sc in next st; "
                             "rep from * around (16)\nRnd 3: "
                             "sc in next st, *3 sc in next st, sc in next 3 sts; rep from * 2 more times, 3 "
                             "sc in next st, sc in last 2 "
                             "sts (24)\nRnd 4: sc in next 2 sts, *3 sc in next st, sc in next 5 sts; rep "
                             "from * 2 more times, 3 sc in "
                             "next st, sc in last 3 sts (32)\n";
  const std::string hexagon =
      "Hexagon\n\nRnd 1: MR, ch 2, 6 hdc in ring, join. (6)\nRnd 2: ch 2, 2 hdc in each st around, join. "
      "(12)\nRnd 3: ch 2, (hdc in next st, 3 hdc in next st) around, join. (24)\nRnd 4: ch 2, hdc in next 2 "
      "sts, "
      "(3 hdc in next st, hdc in next 3 sts) 5 times, 3 hdc in next st, hdc in last st, join. (36)\n";
  for (const auto& [text, corners] : {std::pair{square, 4}, std::pair{hexagon, 6}}) {
    const Typed typed(text);
    const Figure& figure = typed.figures.at(0);
    CHECK(figure.form == Form::motif);
    CHECK(figure.corners == corners);
    CHECK(typed.air(0) > 0.055);
    const Rounded contour{corners};
    for (const Item& item : figure.items)
      if (item.count == 3) {
        const double place = spot_of(contour, head(item)).at * corners - 0.5;
        CHECK(std::abs(place - std::round(place)) < 0.12);
      }
  }
}

TEST_CASE("fans along the edge of a disc are no corners") {
  const Typed typed(
      "Coaster\n\nRnd 1: MR, 6 sc (6)\nRnd 2: inc around (12)\nRnd 3: *sc in next st, 5 dc in next "
      "st; rep from * around (36)\n");
  CHECK(typed.figures.at(0).form == Form::disc);
}

TEST_CASE("an edging of three in each corner space leaves a motif its corners") {
  const Typed typed(test::lace().front() +
                    "Rnd 4: ch 1, sc in each dc and ch-1 sp around, 3 sc in each ch-2 sp, join\n");
  CHECK(typed.figures.at(0).form == Form::motif);
}

TEST_CASE("every stitch of lace is drawn once") {
  for (const std::string& text : test::lace()) {
    const Typed typed(text);
    std::vector<int> shown(typed.fabric.stitches.size(), 0);
    for (const Figure& figure : typed.figures)
      for (const Item& item : figure.items)
        for (std::uint32_t j = 0; j < item.count; ++j) ++shown[item.first + j];
    INFO(text);
    for (fabric::StitchId stitch = 0; stitch < shown.size(); ++stitch)
      if (typed.fabric.rounds[typed.fabric.stitches[stitch].round].kind == pattern::RoundKind::round)
        CHECK(shown[stitch] == 1);
  }
}

TEST_CASE("lace is drawn the same twice") {
  const Typed typed(test::lace().front());
  CHECK(show(typed.fabric, place(typed.fabric, typed.extents, {})) ==
        show(typed.fabric, place(typed.fabric, typed.extents, {})));
}

TEST_CASE("a point is found again on the contour of a motif") {
  for (const int corners : {0, 3, 4, 6})
    for (const Way way : {Way::anticlockwise, Way::clockwise})
      for (double at = 0.01; at < 1; at += 0.037) {
        const Rounded contour{corners, way};
        const Spotted spot = spot_of(contour, point_on(contour, 3.5, at));
        INFO(corners << " corners at " << at);
        CHECK(spot.r == Approx(3.5));
        CHECK(spot.at == Approx(at));
      }
}

TEST_CASE("a place carried to another contour of a motif keeps its distance from the middle of its side") {
  const Rounded square{4, Way::anticlockwise};
  const double aside = 1.1, inner = 4, outer = 7;
  const double carried_to = carried(square, inner, aside / length_of(square, inner), outer);
  CHECK(carried_to * length_of(square, outer) == Approx(aside));
  CHECK(carried(square, outer, carried_to, inner) * length_of(square, inner) == Approx(aside));
  CHECK(carried(square, inner, 0.125, outer) == Approx(0.125));
}

TEST_CASE("a curve round a motif runs on its contour") {
  for (const int corners : {3, 4, 6}) {
    const Rounded contour{corners, Way::anticlockwise};
    const std::vector<Point> points = curve_round(contour, 5);
    CHECK(length(points.front() - points.back()) < 1e-9);
    for (std::size_t i = 0; i + 3 < points.size(); i += 3) {
      const Point middle = 0.125 * (points[i] + points[i + 3]) + 0.375 * (points[i + 1] + points[i + 2]);
      CHECK(spot_of(contour, middle).r == Approx(5).epsilon(0.001));
    }
  }
}

TEST_CASE("the ground of a motif's round lies under its stitches") {
  const Typed typed(
      "Leaf square\n\nYarn: white and grey\n\nRnd 1: MR, ch 3 (counts as dc), 2 dc in ring, "
      "(ch 2, 3 dc in ring) 3 times, ch 2, join\nChange to grey.\nRnd 2: ch 1, [(3 dc, ch 2, 3 dc) in "
      "next ch-2 sp, ch 1] 4 times, join\n");
  const Figure& figure = typed.figures.at(0);
  REQUIRE(figure.form == Form::motif);
  REQUIRE(figure.grounds.size() == 1);
  const Ring& ring = figure.rings[figure.grounds.front().ring];
  const Rounded contour{4, Way::anticlockwise};
  double low = 1e9, high = 0;
  for (const Point p : figure.grounds.front().outline) {
    const double r = spot_of(contour, p).r;
    low = std::min(low, r), high = std::max(high, r);
  }
  CHECK(low < ring.inner);
  CHECK(high > ring.middle);
}

TEST_CASE("lace that is turned runs the other way, round for round, each round on its own places") {
  const Typed typed("Fernlace\n\nRnd 1: MR, 12 sc in ring, join, turn\n"
                    "Rnd 2: ch 1, (sc in next st, ch 3, skip 1) 6 times, join, turn\n"
                    "Rnd 3: ch 1, (3 dc in next ch-3 sp, ch 2) 6 times, join, turn\n"
                    "Rnd 4: ch 1, (sc in next ch-2 sp, ch 5) 6 times, join\n");
  const Figure& figure = typed.figures.at(0);
  CHECK(test::nearness_of(typed.fabric, figure).not_near == 0);
  CHECK(figure.pointers.size() == figure.rings.size());
  for (const Ring& ring : figure.rings) {
    const fabric::Round& round = typed.fabric.rounds[ring.round];
    std::vector<Point> feet;
    for (const Item& item : items_from(figure, round.first_stitch, round.count))
      if (item.feet == 1 && !is_join(typed.fabric, item.first)) feet.push_back(item.foot);
    const double turn = feet[0].x * feet[2].y - feet[0].y * feet[2].x;
    CHECK((turn > 0) == !ring.against);
  }
}

TEST_CASE("the ground of yarns that change within a round of lace lies under their own stitches") {
  const Typed typed(
      "Fernlace\n\nYarn: green, white and grey\n\nRnd 1: MR, 12 sc in ring, join\n"
      "Rnd 2: ch 1, (sc in next st, ch 3, skip 1) 6 times, join\n"
      "Rnd 3: ch 1, (in white 3 dc in next ch-3 sp, ch 2, in grey 3 dc in next ch-3 sp, ch 2) 3 "
      "times, join\nRnd 4: ch 1, (sc in next ch-2 sp, ch 5) 6 times, join\n");
  const Figure& figure = typed.figures.at(0);
  REQUIRE(figure.grounds.size() == 6);
  for (const Ground& ground : figure.grounds) {
    int within = 0;
    for (const Item& item : figure.items) {
      if (item.feet != 1 || is_join(typed.fabric, item.first)) continue;
      const bool own = typed.fabric.stitches[item.first].yarn == ground.yarn &&
                       typed.fabric.stitches[item.first].round == figure.rings[ground.ring].round;
      const bool in = surrounds(ground.outline, item.foot + item.height / 2 * item.up);
      within += in ? 1 : 0;
      if (in) CHECK(own);
    }
    CHECK(within == 3);
  }
}

TEST_CASE("a round of lace that must stand far out is drawn there") {
  std::string text = "Moon moss\n\nTerms: US\n\nDOILY\nRnd 1: MR, 24 dc in ring, join (24)\n"
                     "Rnd 2: ch 1, (dc in next st, ch 1) 24 times, join\n";
  for (int round = 3, many = 24; round <= 7; ++round, many *= 2)
    text += "Rnd " + std::to_string(round) + ": ch 1, ((dc, ch 1, dc, ch 1) in next ch-1 sp) " +
            std::to_string(many) + " times, join\n";
  const Typed typed(text);
  REQUIRE(typed.figures.size() == 1);
  const Ring& last = typed.figures[0].rings.back();
  CHECK(last.items > 1500);
  CHECK(last.outer > 100);
  CHECK(test::not_shown_once(typed.fabric, typed.figures) == "");
}

TEST_CASE("rounds of groups with chains in them stand on one another though none is in its corner") {
  const Typed typed("Acorn cup\n\nTerms: US\n\nRnd 1: 6 hdc in MR, join (6)\n"
                    "Rnd 2: ch 1, (hdc, ch 1, hdc) in each st around, join\n"
                    "Rnd 3: ch 1, (hdc, ch 1, hdc) in each ch-1 sp around, join\n");
  REQUIRE(typed.figures.size() == 1);
  for (std::uint32_t round = 1; round < 3; ++round)
    CHECK(typed.ring(round).inner < typed.ring(round - 1).outer + 0.8);
  CHECK(test::nearness_of(typed.fabric, typed.figures.front()).not_near == 0);
  CHECK(typed.air() > 0.05);
}
