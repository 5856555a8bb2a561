#include "layout/fold.hpp"

#include "flats.hpp"
#include "layout/section.hpp"

#include <catch2/catch.hpp>
#include <numeric>

using namespace whorl;
using namespace whorl::layout;

namespace {

std::vector<Fold> folds_of(const fabric::Fabric& fabric) {
  std::vector<std::uint32_t> rounds(fabric.rounds.size());
  std::iota(rounds.begin(), rounds.end(), 0U);
  return Folding(fabric).fold(rounds);
}

/// 6, 12, then so many even rounds.
test::Ball even_ball(std::uint32_t rounds) {
  test::Ball ball;
  ball.begin("ball").to(6).to(12).even(rounds);
  return ball;
}

const std::vector<Fold> three_folded{{0, 0}, {1, 1}, {2, 4}},
    none_folded{{0, 0}, {1, 1}, {2, 2}, {3, 3}, {4, 4}};

} // namespace

TEST_CASE("three even rounds are folded") { CHECK(folds_of(even_ball(3).fabric) == three_folded); }

TEST_CASE("two even rounds are not folded") {
  CHECK(folds_of(even_ball(2).fabric) == std::vector<Fold>{{0, 0}, {1, 1}, {2, 2}, {3, 3}});
}

TEST_CASE("a round of increases is never part of a fold") {
  CHECK(folds_of(test::ball({6, 6, 6, 6, 12})) == std::vector<Fold>{{0, 0}, {1, 3}, {4, 4}});
}

TEST_CASE("a round in back loops is not folded, nor are those before and behind it with one another") {
  test::Ball ball = even_ball(3);
  ball.to(12, stitch::back).even(3);
  CHECK(folds_of(ball.fabric) == std::vector<Fold>{{0, 0}, {1, 1}, {2, 4}, {5, 5}, {6, 8}});
}

TEST_CASE("rounds of different stitches are not alike") {
  test::Ball ball = even_ball(2);
  ball.to(12, stitch::both, "hdc");
  CHECK(folds_of(ball.fabric) == none_folded);
}

TEST_CASE("an eye keeps its two rounds out of a fold") {
  fabric::Fabric fabric = even_ball(5).fabric;
  fabric::Placing eye;
  eye.what = pattern::What::eye;
  eye.round = 5;
  fabric.placings.push_back(eye);
  CHECK(folds_of(fabric) == std::vector<Fold>{{0, 0}, {1, 1}, {2, 4}, {5, 5}, {6, 6}});
}

TEST_CASE("a note does not keep rounds apart") {
  fabric::Fabric fabric = even_ball(3).fabric;
  fabric::Placing note;
  note.round = 3;
  fabric.placings.push_back(note);
  CHECK(folds_of(fabric) == three_folded);
}

TEST_CASE("another yarn keeps rounds apart") {
  fabric::Fabric fabric = even_ball(3).fabric;
  for (fabric::StitchId s = fabric.rounds[4].first_stitch; s < fabric.stitches.size(); ++s)
    fabric.stitches[s].yarn = 2;
  CHECK(folds_of(fabric) == none_folded);
}

TEST_CASE("a stitch in another yarn keeps its round out of a fold") {
  fabric::Fabric fabric = even_ball(3).fabric;
  fabric.stitches[fabric.rounds[3].first_stitch + 4].yarn = 2;
  CHECK(folds_of(fabric) == none_folded);
}

TEST_CASE("a round whose free loops another part uses is not folded") {
  test::Ball ball = even_ball(3);
  const fabric::StitchId owner = ball.fabric.rounds[3].first_stitch;
  ball.begin("frill", fabric::Start::free_loops).to(1);
  ball.fabric.legs.back().into = {owner, fabric::On::top, stitch::front};
  CHECK(folds_of(ball.fabric) == std::vector<Fold>{{0, 0}, {1, 1}, {2, 2}, {3, 3}, {4, 4}, {5, 5}});
}

TEST_CASE("rounds whose numbers do not follow on are not folded") {
  fabric::Fabric fabric = even_ball(3).fabric;
  fabric.rounds[4].number = 9;
  CHECK(folds_of(fabric) == none_folded);
}

TEST_CASE("a second round of one number is not folded") {
  fabric::Fabric fabric = even_ball(3).fabric;
  fabric.rounds[3].again = 1;
  CHECK(folds_of(fabric) == none_folded);
}

TEST_CASE("a round whose stated count is wrong is not folded with right ones") {
  fabric::Fabric fabric = even_ball(3).fabric;
  fabric.rounds[3].stated = 13;
  CHECK(folds_of(fabric) == none_folded);
}

namespace {

/// A strap: a row of 4 and so many alike rows on it.
fabric::Fabric strap(std::uint32_t rows) {
  test::Flat flat;
  flat.begin("strap", 5);
  for (std::uint32_t row = 0; row <= rows; ++row) flat.row(test::Steps(4));
  return flat.fabric;
}

std::vector<Fold> row_folds_of(const fabric::Fabric& fabric) {
  return Folding(fabric).fold(sections_of(fabric, 0).at(0).rounds);
}

} // namespace

TEST_CASE("a round that goes through another part is not folded") {
  fabric::Fabric fabric = even_ball(3).fabric;
  fabric.stitches[fabric.rounds[3].first_stitch + 4].flags |= fabric::holds_unseen;
  CHECK(folds_of(fabric) == none_folded);
}

TEST_CASE("alike rows are folded, an odd number of them") {
  const std::vector<Fold> odd = row_folds_of(strap(5)), even = row_folds_of(strap(6));
  REQUIRE(odd.size() == 2);
  CHECK(odd[1].last - odd[1].first == 4);
  REQUIRE(even.size() == 3);
  CHECK(even[1].last - even[1].first == 4);
  CHECK(even[2].first == even[2].last);
}
