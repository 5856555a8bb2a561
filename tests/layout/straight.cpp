#include "flats.hpp"
#include "ink.hpp"
#include "layout/plan.hpp"
#include "layout/rows.hpp"
#include "layout/strip.hpp"
#include "typed.hpp"

#include <catch2/catch.hpp>
#include <cmath>
#include <map>

using namespace whorl;
using namespace whorl::layout;

namespace {

struct Seen {
  std::uint64_t seed = 0;
  fabric::Fabric fabric;
  Extents extents;
  Page page;
  Straight drawn;
};

template <class Look> void for_strips(std::uint64_t first, Look look) {
  for (std::uint64_t seed = first; seed < first + 60; ++seed) {
    Seen seen{seed, test::random_tube(seed), {}, {}, {}};
    seen.extents = test::extents_of(seen.fabric);
    seen.page.hand = seed % 3 == 0 ? Hand::left : Hand::right;
    const Folding folding(seen.fabric);
    for (Plan& plan :
         plan_section(seen.fabric, 0, sections_of(seen.fabric, 0).at(0), folding, seen.page, 0)) {
      if (!plan.strip) continue;
      plan.keep_problems = true;
      seen.drawn = draw_strip(seen.fabric, plan, seen.extents, seen.page);
      look(seen);
    }
  }
}

template <class Look> void for_flats(std::uint64_t first, Look look) {
  for (std::uint64_t seed = first; seed < first + 100; ++seed) {
    Seen seen{seed, test::random_flat(seed), {}, {}, {}};
    seen.extents = test::extents_of(seen.fabric);
    seen.page.hand = seed % 3 == 0 ? Hand::left : Hand::right;
    seen.drawn = draw_rows(seen.fabric, 0, sections_of(seen.fabric, 0).at(0), Folding(seen.fabric),
                           seen.extents, seen.page);
    look(seen);
  }
}

void check_air(const Seen& seen) {
  const test::Nearest near = test::nearest(test::patches_of(seen.drawn.figure, seen.extents));
  if (near.air < 0.055)
    FAIL_CHECK("seed " << seen.seed << ": " << near.one << " is " << near.air << " from " << near.other);
}

void check_optimum_of(const Seen& seen) {
  for (const Course& course : seen.drawn.courses) {
    const Optimum optimum = check_optimum(course.strung, course.at);
    if (optimum.worst_gap > 1e-9 || optimum.worst_force > 1e-9)
      FAIL_CHECK("seed " << seen.seed << ": gap " << optimum.worst_gap << ", force " << optimum.worst_force);
  }
}

void check_order(const Seen& seen) {
  for (const Course& course : seen.drawn.courses)
    for (std::size_t i = 1; i < course.at.size(); ++i)
      if (course.at[i] <= course.at[i - 1]) FAIL_CHECK("seed " << seen.seed);
}

/// A leaf: grows at both edges, then shrinks to a point.
fabric::Fabric leaf() {
  test::Flat flat;
  flat.begin("leaf", 4).row({{"sc"}, {"sc"}, {"sc"}}, 0, false, 1);
  flat.row({{"sc", 2}, {"sc"}, {"sc", 2}}).row({{"sc2tog"}, {"sc"}, {"sc2tog"}}).row({{"sc3tog"}});
  return flat.fabric;
}

Figure figure_of(const fabric::Fabric& fabric, Hand hand = Hand::right) {
  Page page;
  page.hand = hand;
  return place(fabric, test::extents_of(fabric), page).figures.at(0);
}

} // namespace

TEST_CASE("nothing touches in random strips") { for_strips(100, check_air); }
TEST_CASE("nothing touches in random flat pieces") { for_flats(5000, check_air); }
TEST_CASE("strips are laid at the optimum, to 1e-9") { for_strips(900, check_optimum_of); }
TEST_CASE("rows are laid at the optimum, to 1e-9") { for_flats(7000, check_optimum_of); }
TEST_CASE("a strip keeps the order of its stitches") { for_strips(40, check_order); }
TEST_CASE("a row keeps the order of its stitches") { for_flats(60, check_order); }

TEST_CASE("every stitch of a flat piece is drawn once, the starting chain's too") {
  for_flats(300, [](const Seen& seen) {
    for (const Ring& ring : seen.drawn.figure.rings)
      if (ring.round != ring.last_round) return; // the rows of a fold are stood for
    std::map<fabric::StitchId, int> drawn;
    for (const Item& item : seen.drawn.figure.items)
      for (std::uint32_t i = 0; i < item.count; ++i) ++drawn[item.first + i];
    bool once = drawn.size() == seen.fabric.stitches.size();
    for (const auto& [stitch, times] : drawn) once = once && times == 1;
    if (!once) FAIL_CHECK("seed " << seen.seed);
  });
}

TEST_CASE("rows run there and back") {
  const Figure figure = figure_of(leaf());
  CHECK(figure.form == Form::rows);
  REQUIRE(figure.rings.size() == 5);
  CHECK(figure.rings[0].chain);
  CHECK(figure.rings[1].leftward);
  CHECK_FALSE(figure.rings[2].leftward);
  CHECK(figure.rings[3].leftward);
}

TEST_CASE("a left hand begins the first row at the left") {
  CHECK_FALSE(figure_of(leaf(), Hand::left).rings[1].leftward);
}

TEST_CASE("a piece that shrinks to a point keeps the point above its middle") {
  const Figure figure = figure_of(leaf());
  const Item& point = figure.items.back();
  const Item& middle = figure.items[figure.rings[1].first_item + 2];
  CHECK(std::abs(point.foot.x - middle.foot.x) < 0.35);
}

TEST_CASE("rows from the second on stand on the first, which is faint") {
  Page page;
  page.wanted.from = 2;
  const Figure figure = place(leaf(), test::extents_of(leaf()), page).figures.at(0);
  CHECK(figure.rings.front().echo);
  CHECK_FALSE(figure.rings.front().chain);
  CHECK_FALSE(figure.rings[1].echo);
  CHECK(figure.first_round == figure.rings[1].round);
}

TEST_CASE("each stitch of a first row stands over its chain") {
  test::Flat flat;
  flat.begin("scarf", 9).row(test::Steps(8, test::Step{}), 0, false, 1);
  const Figure figure = figure_of(flat.fabric);
  for (std::uint32_t i = 0; i < 8; ++i) {
    const Item& stitch = figure.items[figure.rings[1].first_item + 1 + i];
    const Item& chain = figure.items[figure.rings[0].first_item + 7 - i];
    CHECK(stitch.foot.x == Approx(chain.foot.x).margin(0.02));
  }
}

TEST_CASE("chains skipped at the hook stand on end where the first row begins") {
  test::Flat flat;
  flat.begin("scarf", 8).row(test::Steps(5, test::Step{"dc"}), 0, false, 3);
  const Figure figure = figure_of(flat.fabric);
  const Ring& row = figure.rings[1];
  REQUIRE(row.items == 8);
  for (std::uint32_t i = 0; i < 3; ++i) CHECK(figure.items[row.first_item + i].up.y == 0);
  CHECK(figure.items[row.first_item].foot.x > figure.items[row.first_item + 3].foot.x);
}

TEST_CASE("the label of a row stands where the row begins") {
  const Figure figure = figure_of(leaf());
  REQUIRE(figure.labels.size() == 4);
  CHECK(figure.labels[0].at.x > 0);
  CHECK(figure.labels[1].at.x < 0);
}

TEST_CASE("lines of a strip are 1.10 apart and stitches 1.00") {
  test::Ball tube;
  tube.begin("stem", fabric::Start::chain_ring).to(12);
  for (int i = 0; i < 6; ++i) tube.to(12, i % 2 == 0 ? stitch::back : stitch::both);
  tube.even(1);
  const Figure figure = figure_of(tube.fabric);
  REQUIRE(figure.form == Form::strip);
  const Ring &last = figure.rings.back(), &before = figure.rings[figure.rings.size() - 2];
  CHECK(last.inner - before.inner == Approx(1.10));
  CHECK(figure.items[0].foot.x - figure.items[1].foot.x == Approx(1.0));
}

TEST_CASE("a strip is joined from each line to the next") {
  for_strips(500, [](const Seen& seen) {
    std::size_t joins = 0;
    for (const Stroke& stroke : seen.drawn.figure.strokes) joins += stroke.line == Line::join ? 1 : 0;
    CHECK(joins + 1 == seen.drawn.figure.rings.size());
  });
}

TEST_CASE("a strip for the left hand is the mirror image") {
  test::Ball tube;
  tube.begin("stem", fabric::Start::chain_ring).to(9);
  for (int i = 0; i < 6; ++i) tube.to(9, stitch::back);
  const Figure right = figure_of(tube.fabric), left = figure_of(tube.fabric, Hand::left);
  REQUIRE(right.items.size() == left.items.size());
  for (std::size_t i = 0; i < right.items.size(); ++i)
    CHECK(right.items[i].foot.x == Approx(0 - left.items[i].foot.x).margin(1e-9));
  CHECK(right.labels[0].at.x > 0);
  CHECK(left.labels[0].at.x < 0);
}

TEST_CASE("stitches of one place in a row fan out of it") {
  const test::Typed typed(
      "Fern scarf\n\nRow 1: Ch 20, sc in 2nd ch from hook and in each ch across, turn (19)\n"
      "Row 2: Ch 3 (counts as dc), skip 1, ((dc, ch 1, dc) in next st, skip 2) 5 times, (dc, "
      "ch 1, dc) in next st, dc in last st, turn\n");
  const Figure& figure = typed.figures.at(0);
  const Ring& row = figure.rings.back();
  std::vector<Point> feet, tips;
  for (std::uint32_t k = 0; k < row.items; ++k) {
    const Item& item = figure.items[row.first_item + k];
    if (item.feet != 1) continue;
    feet.push_back(figure.feet[item.first_foot]);
    tips.push_back(figure.tips[item.first_tip]);
  }
  REQUIRE(feet.size() == 13);
  for (std::size_t i = 0; i + 1 < 12; i += 2) {
    CHECK(std::abs(feet[i].x - feet[i + 1].x) < 0.6 * std::abs(tips[i].x - tips[i + 1].x));
    CHECK(tips[i].y == Approx(tips[i + 1].y));
  }
}
