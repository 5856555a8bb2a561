#include "layout/oval.hpp"

#include "ink.hpp"
#include "layout/plan.hpp"
#include "ovals.hpp"
#include "typed.hpp"

#include <catch2/catch.hpp>
#include <cmath>
#include <map>
#include <string>

using namespace whorl;
using namespace whorl::layout;

namespace {

struct Seen {
  std::uint64_t seed = 0;
  fabric::Fabric fabric;
  Extents extents;
  Oval drawn;
};

Oval oval_of(const fabric::Fabric& fabric, const Extents& extents, Hand hand = Hand::right) {
  Page page;
  page.main_yarn = 1;
  page.hand = hand;
  const Folding folding(fabric);
  for (const Plan& plan : plan_section(fabric, 0, sections_of(fabric, 0).at(0), folding, page, 0))
    if (plan.oval) return draw_oval(fabric, plan, extents, page);
  return {};
}

Oval oval_of(const fabric::Fabric& fabric, Hand hand = Hand::right) {
  return oval_of(fabric, test::extents_of(fabric), hand);
}

template <class Look> void for_ovals(std::uint64_t first, Look look) {
  for (std::uint64_t seed = first; seed < first + 60; ++seed) {
    Seen seen{seed, test::random_oval(seed), {}, {}};
    seen.extents = test::extents_of(seen.fabric);
    seen.drawn = oval_of(seen.fabric, seen.extents, seed % 3 == 0 ? Hand::left : Hand::right);
    look(seen);
  }
}

double length(Point p) { return std::sqrt(p.x * p.x + p.y * p.y); }

/// A sole of three growing rounds.
fabric::Fabric sole(bool joined = false) {
  test::Round1 first;
  first.joined = joined;
  return test::Oblong(first).grow().grow().fabric;
}

fabric::Fabric worked(const std::string& text) { return test::Typed(text).fabric; }

} // namespace

TEST_CASE("nothing touches in random ovals") {
  for_ovals(100, [](const Seen& seen) {
    const test::Nearest near = test::nearest(test::patches_of(seen.drawn.figure, seen.extents));
    if (near.air < 0.055)
      FAIL_CHECK("seed " << seen.seed << ": " << near.one << " is " << near.air << " from " << near.other);
  });
}

TEST_CASE("rounds of an oval are laid at the optimum, to 1e-9") {
  for_ovals(900, [](const Seen& seen) {
    REQUIRE(!seen.drawn.rings.empty());
    for (const OvalRing& ring : seen.drawn.rings) {
      const Optimum optimum = check_optimum(ring.strung, ring.at);
      if (optimum.worst_gap > 1e-9 || optimum.worst_force > 1e-9)
        FAIL_CHECK("seed " << seen.seed << ": gap " << optimum.worst_gap << ", force "
                           << optimum.worst_force);
    }
  });
}

TEST_CASE("a round of an oval keeps the order of its stitches") {
  for_ovals(40, [](const Seen& seen) {
    for (const OvalRing& ring : seen.drawn.rings)
      for (std::size_t i = 1; i < ring.at.size(); ++i)
        if (ring.at[i] <= ring.at[i - 1]) FAIL_CHECK("seed " << seen.seed);
  });
}

TEST_CASE("every stitch of an oval is drawn once, the starting chain's too") {
  for_ovals(300, [](const Seen& seen) {
    std::map<fabric::StitchId, int> drawn;
    for (const Item& item : seen.drawn.figure.items)
      for (std::uint32_t i = 0; i < item.count; ++i) ++drawn[item.first + i];
    // a ring that stands for several rounds shows the stitches of the first; a wall is drawn as a strip
    std::size_t expected = 0;
    for (const Ring& ring : seen.drawn.figure.rings) expected += seen.fabric.rounds[ring.round].count;
    bool once = drawn.size() == expected;
    for (const auto& [stitch, times] : drawn) once = once && times == 1;
    if (!once) FAIL_CHECK("seed " << seen.seed);
  });
}

TEST_CASE("every stitch beside a chain stands nearer to it than to any other chain") {
  for (std::uint32_t chains = 3; chains <= 12; ++chains) {
    test::Round1 first;
    first.chains = chains;
    const fabric::Fabric fabric = test::Oblong(first).fabric;
    const Figure figure = oval_of(fabric).figure;
    const Ring& round = figure.rings[1];
    for (std::uint32_t i = round.first_item; i < round.first_item + round.items; ++i) {
      const fabric::StitchId own = fabric::legs_of(fabric, figure.items[i].first).begin()->into.of;
      for (fabric::StitchId other = 0; other < chains; ++other) {
        const Point at = figure.items[i].foot;
        CHECK(length(at - figure.items[own].foot) <= length(at - figure.items[other].foot) + 1e-9);
      }
    }
  }
}

TEST_CASE("stitches of the chain at the end fan round it, those at the middle straight out") {
  const Figure figure = oval_of(sole()).figure;
  const Ring& round = figure.rings[1];
  // eight chains: seven along the first side, three in the last
  CHECK(figure.items[round.first_item + 3].up.y == Approx(1));
  CHECK(figure.items[round.first_item + 8].up.x == Approx(-1).margin(0.15));
  CHECK(figure.items[round.first_item + 12].up.y == Approx(-1));
}

TEST_CASE("an increase of an oval stands square to its contour") {
  for_ovals(700, [](const Seen& seen) {
    const Figure& figure = seen.drawn.figure;
    for (std::size_t i = 1; i < figure.rings.size(); ++i)
      for (std::uint32_t j = 0; j < figure.rings[i].items; ++j) {
        const Item& item = figure.items[figure.rings[i].first_item + j];
        if (item.count < 2) continue;
        const Point ray = item.foot - core_under(seen.drawn.stadium, item.foot);
        if (length((1 / length(ray)) * ray - item.up) > 1e-9) FAIL_CHECK("seed " << seen.seed);
      }
  });
}

TEST_CASE("a spiral has pointers and no dot, joined rounds a chain and a dot and no pointer") {
  CHECK(oval_of(sole()).figure.pointers.size() == 3);
  const Oval joined = oval_of(sole(true));
  CHECK(joined.figure.pointers.empty());
  for (const OvalRing& ring : joined.rings) {
    CHECK(ring.joined);
    CHECK(ring.stands.front().column);
  }
}

TEST_CASE("an oval for the left hand is the mirror image") {
  const Figure right = oval_of(sole()).figure, left = oval_of(sole(), Hand::left).figure;
  REQUIRE(right.items.size() == left.items.size());
  for (std::size_t i = right.rings[1].first_item; i < right.items.size(); ++i)
    CHECK(right.items[i].foot.x == Approx(0 - left.items[i].foot.x).margin(1e-9));
}

TEST_CASE("a wall on an oval goes on as a strip") {
  test::Oblong oval({});
  oval.grow().grow();
  for (int i = 0; i < 9; ++i) oval.even(i % 2 == 0 ? stitch::back : stitch::both);
  const Placement placement = place(oval.fabric, test::extents_of(oval.fabric), {});
  REQUIRE(placement.figures.size() == 2);
  CHECK(placement.figures[0].form == Form::oval);
  CHECK(placement.figures[1].form == Form::strip);
}

TEST_CASE("numbers of an oval whose rounds begin along its side stand one above the other") {
  const Figure figure = oval_of(worked("Sole\nCh 11\n"
                                       "R1: sc in 2nd ch, sc 8, 3 sc in last ch, other side: sc 8, inc (22)\n"
                                       "R2: sc 9, inc x 3, sc 8, inc x 2 (27)\n"
                                       "R3: sc 9, (sc, inc) x 3, sc 8, (sc, inc) x 2 (32)\n"))
                            .figure;
  REQUIRE(figure.labels.size() == 3);
  for (std::size_t i = 1; i < 3; ++i) {
    const Point up = figure.labels[i].at - figure.labels[i - 1].at;
    CHECK(up.y > letter_height * number_size);
    CHECK(std::abs(up.x) < up.y);
  }
}

TEST_CASE("rounds of an oval that begin with stitches of its end are not pressed together there") {
  const Oval oval =
      oval_of(worked("Foot\nCh 9\n"
                     "R1: sc in 2nd ch, sc 6, 3 sc in last ch, other side: sc 6, inc (18)\n"
                     "R2: inc, sc 6, inc x 3, sc 6, inc x 2 (24)\n"
                     "R3: sc, inc, sc 6, (sc, inc) x 3, sc 6, (sc, inc) x 2 (30)\n"
                     "R4: 2 sc, inc, sc 6, (2 sc, inc) x 3, sc 6, (2 sc, inc) x 2 (36)\nR5: sc (36)\n"));
  REQUIRE(oval.rings.size() == 5);
  const OvalRing& last = oval.rings.back();
  const double mean = (last.at.back() - last.at.front()) / 35;
  for (std::size_t i = 1; i < last.at.size(); ++i) CHECK(last.at[i] - last.at[i - 1] > 0.75 * mean);
  CHECK(point_on(oval.stadium, last.lap, 0).x > oval.stadium.half + 1.9);
}

TEST_CASE("places carried from one way round an oval to another stay square to them") {
  const Stadium stadium{2.5, Way::anticlockwise};
  const Lap inside{1.3, 0.7}, outside{4.1, -1.2};
  for (int i = -30; i < 90; ++i) {
    const double at = length_of(stadium, inside.r) * (i + 0.5) / 60;
    const double to = carried(stadium, inside, at, outside);
    CHECK(length(outward(stadium, inside, at) - outward(stadium, outside, to)) < 1e-9);
    CHECK(length(point_on(stadium, outside, to) - point_on(stadium, inside, at)) == Approx(2.8));
    CHECK(carried(stadium, outside, to, inside) == Approx(at).margin(1e-9));
  }
}

TEST_CASE("a curve along an oval lies on it all the way round") {
  const Stadium stadium{2.5, Way::anticlockwise};
  const Lap lap{1.8, 0.6};
  const std::vector<Point> curve = curve_on(stadium, lap, 0, length_of(stadium, lap.r));
  CHECK(length(curve.front() - curve.back()) < 1e-9);
  for (std::size_t i = 0; i < curve.size(); i += 3)
    CHECK(length(curve[i] - core_under(stadium, curve[i])) == Approx(1.8));
}
