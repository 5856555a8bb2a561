#include "layout/strip_choice.hpp"

#include <catch2/catch.hpp>

using namespace whorl::layout;

namespace {

/// Tiers of one round each; a round as large as the one before is even.
std::vector<Tier> tiers(const std::vector<std::uint32_t>& counts, std::uint32_t coloured = 99) {
  std::vector<Tier> all;
  for (std::uint32_t i = 0; i < counts.size(); ++i)
    all.push_back({i, i, counts[i], Tier::ring_weight, i > 0 && counts[i] == counts[i - 1], i == coloured});
  return all;
}

std::vector<Stretch> chosen(const std::vector<std::uint32_t>& counts, bool gathered = false,
                            std::uint32_t coloured = 99) {
  const Ends ends{true, gathered};
  return choose_strips(divide(counts, ends), tiers(counts, coloured), ends);
}

using Stretches = std::vector<Stretch>;

} // namespace

TEST_CASE("an even run becomes a strip where ten times its last ring is more than three times its stitches") {
  // the fifth ring of 18: 50 < 54; the sixth: 60 > 54
  CHECK(chosen({6, 12, 18, 18, 18}) == Stretches{{0, 4}});
  CHECK(chosen({6, 12, 18, 18, 18, 18}) == Stretches{{0, 2}, {3, 5, false, true}});
}

TEST_CASE("one even round on the way to others is left in its disc a little longer") {
  // the second ring of 6: 100 < 108; the sixth of 18: 300 < 324; the third of 8: 150 > 144
  CHECK(chosen({6, 6, 9, 12, 18, 18, 24}) == Stretches{{0, 6}});
  CHECK(chosen({6, 8, 8, 10}) == Stretches{{0, 1}, {2, 3, false, true}});
}

TEST_CASE("an even run in several yarns becomes a strip whole") {
  CHECK(chosen({6, 12, 18, 24, 24, 24}, false, 5) == Stretches{{0, 3}, {4, 5, false, true}});
}

TEST_CASE("a fold counts as two rings") {
  std::vector<Tier> all = tiers({6, 12, 18, 18, 18});
  all[4].weight = Tier::folded_weight;
  CHECK(choose_strips({{0, 4}}, all, {true, false}) == Stretches{{0, 2}, {3, 4, false, true}});
}

TEST_CASE("what closes behind a strip is a disc inward") {
  CHECK(chosen({6, 12, 12, 12, 12, 6}, true) == Stretches{{0, 1}, {2, 4, false, true}, {5, 5, true}});
}

TEST_CASE("little growing between two strips goes with them") {
  CHECK(chosen({6, 12, 12, 12, 12, 13, 13, 13, 13}) == Stretches{{0, 1}, {2, 8, false, true}});
}

TEST_CASE("much growing behind a strip is a disc of its own") {
  CHECK(chosen({6, 12, 12, 12, 12, 18, 24}) == Stretches{{0, 1}, {2, 4, false, true}, {5, 6}});
}

TEST_CASE("little shrinking behind the last strip goes with it") {
  CHECK(chosen({6, 12, 12, 12, 12, 11}) == Stretches{{0, 1}, {2, 5, false, true}});
}

TEST_CASE("the outer rounds of a cone become a strip where most of them stand far out") {
  // the sixth ring of 18: 60 > 54; the eighth of 24: 80 > 72; the ninth of 30: 90 = 90
  CHECK(chosen({6, 6, 9, 12, 18, 18, 24, 24, 30}) == Stretches{{0, 4}, {5, 8, false, true}});
  CHECK(chosen({6, 6, 9, 12, 18, 18, 24, 24, 30, 30, 30}) == Stretches{{0, 4}, {5, 10, false, true}});
}

TEST_CASE("a pointed hat that grows in steps is its tip and one strip") {
  CHECK(chosen({4, 4, 8, 8, 12, 12, 16, 16, 20, 20, 24, 24, 28, 28}) ==
        Stretches{{0, 5}, {6, 13, false, true}});
  CHECK(chosen({6, 6, 8, 8, 10, 10, 12, 12, 15, 15, 18}) == Stretches{{0, 3}, {4, 10, false, true}});
}

TEST_CASE("the lines of a cone's strip are at most as many times as long as a slot may be wide") {
  // 34 of the last against 16
  CHECK(chosen({4, 6, 8, 10, 12, 14, 16, 18, 20, 22, 24, 26, 28, 30, 32, 34}) ==
        Stretches{{0, 6}, {7, 15, false, true}});
}

TEST_CASE("an even round on the way to fewer stitches is left no longer") {
  CHECK(chosen({6, 12, 15, 15, 15, 12, 12, 12}) == Stretches{{0, 2}, {3, 7, false, true}});
}
