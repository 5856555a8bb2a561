/// Stitches held by their own places.

#include "layout/cells.hpp"
#include "standing.hpp"
#include "typed.hpp"

#include <catch2/catch.hpp>

using namespace whorl;
using namespace whorl::layout;

namespace {

/// Three items, evenly strung.
Strung even() {
  Strung strung;
  strung.length = 10;
  strung.wanted.assign(4, 2.5);
  strung.least.assign(4, 0.5);
  strung.pull.assign(3, 0.1);
  strung.target = {2.5, 5, 7.5};
  return strung;
}

const std::string ball = "Ball\n\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\nRnd 3: (sc 1, inc) x 6 (18)\n"
                         "Rnd 4: (sc 2, inc) x 6 (24)\nRnd 5: (sc 3, inc) x 6 (30)\n"
                         "Rnd 6: (sc 4, inc) x 6 (36)\nRnds 7-10: sc around (36)\nFasten off.\n";

} // namespace

TEST_CASE("an item is held where a move leads, and the others rest at their optimum") {
  Strung strung = even();
  std::vector<char> at_least;
  std::vector<double> at = relax(strung, at_least);
  CHECK(at[1] == Approx(5));
  Holding holding(strung, at, at_least);
  holding.move({{1, 1.0}});
  CHECK(at[1] == Approx(6).margin(0.01));
  CHECK((at[0] > 2.5 && at[2] > 7.5));
  CHECK(check_optimum(strung, at).worst_force < 1e-9);
}

TEST_CASE("a bound is let go when nothing presses against it") {
  Strung strung = even();
  std::vector<char> at_least;
  std::vector<double> at = relax(strung, at_least);
  Holding holding(strung, at, at_least);
  holding.move({{0, 0.5}});
  holding.move({{1, 3.0}});
  CHECK(at[0] == Approx(3).margin(0.01));
  holding.move({});
  CHECK(at[0] > 3.05);
}

TEST_CASE("moves that come no nearer lead nowhere") {
  Progress progress;
  CHECK(progress.goes_on({{0, 1.0}}));
  CHECK(progress.goes_on({{0, -0.5}}));
  bool goes_on = true;
  for (int i = 0; i < 6; ++i) goes_on = progress.goes_on({{0, 0.5}});
  CHECK_FALSE(goes_on);
}

TEST_CASE("rings of a ball stay close together, also where a long label follows") {
  const test::Typed typed(ball);
  const Figure& disc = typed.figures.at(0);
  for (std::size_t i = 1; i < disc.rings.size(); ++i)
    CHECK(disc.rings[i].inner - disc.rings[i - 1].outer == Approx(0.30));
  CHECK(test::nearness_of(typed.fabric, disc).not_near == 0);
}
