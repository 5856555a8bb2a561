/// How rounds of lace find the room that they need: fans open, stems reach down, rounds share the way out.

#include "layout/lace.hpp"

#include "law.hpp"
#include "standing.hpp"
#include "typed.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

using namespace whorl;
using namespace whorl::layout;

using test::Typed;

namespace {

const std::string scallops =
    "Toadstool coaster\n\nTerms: US\n\nRnd 1: MR, ch 3 (counts as dc), 15 dc in ring, join\n"
    "Rnd 2: ch 1, (sc in next st, ch 5, skip 1) 8 times, join\n"
    "Rnd 3: (12 dc in next ch-5 sp, sl st in next sc) 8 times\n";

const std::string shells = "Fern mat\n\nTerms: US\n\nRnd 1: MR, ch 3 (counts as dc), 11 dc in ring, join\n"
                           "Rnd 2: ch 1, (dc, ch 1, dc) in each st around, join\n"
                           "Rnd 3: ch 1, (2 dc, ch 1, 2 dc) in each ch-1 sp around, join\n"
                           "Rnd 4: ch 1, (3 dc, ch 1, 3 dc) in each ch-1 sp around, join\n";

double length(Point p) { return std::sqrt(p.x * p.x + p.y * p.y); }

/// The stitches of a ring that go into a space.
std::vector<Item> in_spaces(const Typed& typed, const Ring& ring) {
  std::vector<Item> found;
  for (std::uint32_t i = ring.first_item; i < ring.first_item + ring.items; ++i) {
    const Item& item = typed.figures.at(0).items[i];
    const fabric::Legs legs = fabric::legs_of(typed.fabric, item.first);
    if (legs.size() > 0 && legs.begin()->into.what == fabric::On::space) found.push_back(item);
  }
  return found;
}

} // namespace

TEST_CASE("many stitches in one chain space open into a scallop that springs from it") {
  const Typed typed(scallops);
  test::check_law(typed);
  const std::vector<Item> fan = in_spaces(typed, typed.ring(2));
  REQUIRE(fan.size() == 96);
  const Point one = fan[0].up, other = fan[11].up;
  CHECK(one.x * other.x + one.y * other.y < 0); // they stand more than square to one another
  for (const Item& item : fan) {
    CHECK(length(item.foot) > typed.ring(1).outer - 0.5);
    CHECK(length(item.foot) < typed.ring(1).outer + 1.6);
  }
  CHECK(typed.ring(2).outer < 11.5);
}

TEST_CASE("the stems of groups reach down to their places where their heads need room") {
  const Typed typed(shells);
  test::check_law(typed);
  for (std::uint32_t round = 2; round < 4; ++round)
    for (const Item& item : in_spaces(typed, typed.ring(round)))
      CHECK(length(item.foot) < typed.ring(round - 1).outer + 0.8);
}

TEST_CASE("rounds share the way out that a later one needs") {
  const Typed typed(shells);
  double least = 1e9, most = 0;
  for (std::uint32_t round = 1; round < 4; ++round) {
    const double deep = typed.ring(round).outer - typed.ring(round - 1).outer;
    least = std::min(least, deep), most = std::max(most, deep);
  }
  CHECK(most < 1.5 * least);
}

TEST_CASE("low rounds stay by the one inside them where tall ones can make way") {
  const Typed typed("Sunflower\n\nTerms: US\n\nRnd 1: MR, 8 sc in ring, join\nRnd 2: ch 1, (sc in next st, "
                    "ch 1) 8 times, join\n"
                    "Rnd 3: ch 1, (2 dc in next ch-1 sp, ch 1) 8 times, join\n"
                    "Rnd 4: ch 1, (6 dc in next ch-1 sp) 8 times, join\n");
  test::check_law(typed);
  CHECK(typed.ring(1).outer - typed.ring(0).outer < 2);
}

TEST_CASE("the first round of a granny square has a space in each corner, its sides alike") {
  const Typed typed("Badger square\n\nTerms: US\n\nRnd 1: MR, ch 3 (counts as dc), 2 dc in ring, ch 2, (3 dc "
                    "in ring, ch 2) 3 times, "
                    "join\nRnd 2: ch 1, ((3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1) 4 times, join\n");
  const Figure& figure = typed.figures.at(0);
  REQUIRE(figure.corners == 4);
  const Ring& first = typed.ring(0);
  int chains = 0;
  for (std::uint32_t i = first.first_item; i < first.first_item + first.items; ++i) {
    const Item& item = figure.items[i];
    if (item.feet > 0 || (typed.fabric.stitches[item.first].flags & fabric::starts_chain) != 0) continue;
    ++chains;
    const Point middle = item.foot + item.height / 2 * item.up;
    CHECK(std::abs(std::abs(middle.x) - std::abs(middle.y)) < 0.9);
  }
  CHECK(chains == 8);
}
