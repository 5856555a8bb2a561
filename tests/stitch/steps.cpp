#include "stitch/steps.hpp"

#include <catch2/catch.hpp>

using namespace whorl::stitch;
using Numbers = std::vector<int>;

namespace {

std::vector<Step> steps(const StitchKind& kind) {
  const auto told = steps_of(kind);
  REQUIRE(told);
  return *told;
}

StitchKind kind_called(const char* name) {
  const auto kind = find_kind(standard_kinds(), name);
  REQUIRE(kind);
  return standard_kinds()[*kind];
}

StitchKind own(const char* row, int takes = 1) {
  StitchKind kind;
  kind.moves = row;
  kind.takes = takes;
  return kind;
}

std::vector<Goes> places(const std::vector<Step>& told) {
  std::vector<Goes> all;
  for (const Step& step : told)
    if (step.move.act == Act::insert || step.move.act == Act::take_loop) all.push_back(step.goes);
  return all;
}

} // namespace

TEST_CASE("Wraps that follow on one another are one step") {
  const auto told = steps(kind_called("tr"));
  CHECK(told.front().times == 2);
  CHECK(told.front().loops == Numbers{3});
  CHECK(told.size() == 6);
}

TEST_CASE("The legs of a decrease go into one stitch after the other") {
  CHECK(places(steps(kind_called("sc3tog"))) == std::vector<Goes>{Goes::next, Goes::next, Goes::next});
}

TEST_CASE("Several legs in one place go into the same stitch") {
  CHECK(places(steps(own("(i d)2 p*"))) == std::vector<Goes>{Goes::next, Goes::same});
}

TEST_CASE("Four legs over two stitches go two by two") {
  CHECK(places(steps(own("i d o i d i d o i d p*", 2))) ==
        std::vector<Goes>{Goes::next, Goes::same, Goes::next, Goes::same});
}

TEST_CASE("A long repeat is told once, with the loops after each pass") {
  const auto told = steps(kind_called("bo"));
  REQUIRE(told.size() == 6);
  CHECK(told[4].first == 1);
  CHECK(told[4].last == 4);
  CHECK(told[4].times == 4);
  CHECK(told[4].loops == Numbers{3, 4, 5, 6});
  CHECK(told[4].goes == Goes::same);
  CHECK(told[5].all);
}

TEST_CASE("A repeat that goes from stitch to stitch says so") {
  const auto kind = together(kind_called("sc"), 6);
  REQUIRE(kind);
  const auto told = steps(*kind);
  REQUIRE(told.size() == 4);
  CHECK(told[2].goes == Goes::next);
  CHECK(told[2].loops == Numbers{3, 4, 5, 6, 7});
}

TEST_CASE("A short repeat is written out") { CHECK(steps(kind_called("dc2tog")).size() == 9); }

TEST_CASE("A popcorn goes back into its first stitch and draws the waiting loop through") {
  const auto told = steps(kind_called("pc"));
  const auto& back = told[told.size() - 2];
  CHECK(back.goes == Goes::first_made);
  CHECK(back.hook.inserted);
  CHECK(told.back().through_work);
  CHECK(told.back().loops == Numbers{1});
}

TEST_CASE("A picot goes back into the first of its chains") {
  CHECK(places(steps(own("c c c i* p1"))) == std::vector<Goes>{Goes::chain_made});
}

TEST_CASE("A slip stitch is drawn through the work, a single crochet is not") {
  CHECK(steps(kind_called("sl st")).back().through_work);
  CHECK_FALSE(steps(kind_called("sc")).back().through_work);
}

TEST_CASE("What a move brings onto the hook is fresh until the next") {
  const auto told = steps(kind_called("dc"));
  CHECK(told[2].hook.loops ==
        std::vector<HeldLoop>{{Held::loop, false}, {Held::wrap, false}, {Held::drawn, true}});
  CHECK(told[3].hook.loops == std::vector<HeldLoop>{{Held::loop, false}, {Held::loop, true}});
}

TEST_CASE("The steps end with the loops of the row") {
  for (const StitchKind& kind : standard_kinds()) {
    CAPTURE(kind.name);
    CHECK(steps(kind).back().loops.back() == 1);
  }
}

TEST_CASE("A row that needs more loops than there are has no steps") { CHECK_FALSE(steps_of(own("i d p5"))); }
