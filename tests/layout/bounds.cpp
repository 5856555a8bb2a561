#include "layout/bounds.hpp"

#include "balls.hpp"

#include <algorithm>
#include <catch2/catch.hpp>

using namespace whorl::layout;

namespace {

constexpr double rounding = 1e-9;

double random_in(test::Dice& dice, double low, double high) {
  return low + (high - low) * dice.below(100001) / 1e5;
}

/// Items side by side, and what two of them side by side come to.
struct Asked {
  std::size_t item = 0;
  Bounds::Weights weights;
  double low = 0, high = 0;
};

/// Bounds of all kinds round a way of standing that keeps the least gaps.
struct Problem {
  Strung strung;
  std::vector<double> known;
  std::vector<double> low, high;
  std::vector<Asked> pairs;
  std::vector<double> drawn; ///< where the items would like to stand

  Problem(test::Dice& dice, std::size_t items) {
    double at = 0;
    for (std::size_t i = 0; i < items; ++i) {
      strung.least.push_back(random_in(dice, 0.3, 1.2));
      at += strung.least.back() + (dice.below(3) == 0 ? random_in(dice, 0, 2) : 0);
      known.push_back(at);
      low.push_back(dice.below(2) == 0 ? at - random_in(dice, 0, 0.5) : -1e300);
      high.push_back(dice.below(2) == 0 ? at + random_in(dice, 0, 0.5) : 1e300);
      drawn.push_back(at + random_in(dice, -3, 3));
      if (i == 0 || dice.below(2) == 0) continue;
      const Bounds::Weights weights{random_in(dice, 0.5, 2), random_in(dice, 0.5, 2)};
      const double both = weights.before * known[i - 1] + weights.own * at;
      pairs.push_back({i, weights, both - random_in(dice, 0, 0.3), both + random_in(dice, 0, 0.3)});
    }
    strung.least.push_back(0.5);
    strung.length = at + 0.5 + random_in(dice, 0, 1);
  }

  Bounds bounds() const {
    Bounds bounds(known.size());
    for (std::size_t i = 0; i < known.size(); ++i) bounds.rise(i, low[i]), bounds.sink(i, high[i]);
    for (const Asked& pair : pairs) {
      bounds.rise_with_before(pair.item, pair.weights, pair.low);
      bounds.sink_with_before(pair.item, pair.weights, pair.high);
    }
    return bounds;
  }

  /// What is asked and not kept, at the worst.
  double worst(const std::vector<double>& at) const {
    double worst = 0;
    const auto least = [&worst](double is, double should) { worst = std::max(worst, should - is); };
    for (std::size_t i = 0; i <= at.size(); ++i) {
      const double from = i == 0 ? 0 : at[i - 1], to = i == at.size() ? strung.length : at[i];
      least(to - from, strung.least[i]);
      if (i < at.size()) least(at[i], low[i]), least(high[i], at[i]);
    }
    for (const Asked& pair : pairs) {
      const double both = pair.weights.before * at[pair.item - 1] + pair.weights.own * at[pair.item];
      least(both, pair.low), least(pair.high, both);
    }
    return worst;
  }
};

} // namespace

TEST_CASE("where items can stand within their bounds they are found to, and do, wherever they are drawn") {
  for (std::uint64_t seed = 1; seed <= 400; ++seed) {
    test::Dice dice{seed};
    const Problem problem(dice, 1 + dice.below(40));
    REQUIRE(problem.worst(problem.known) < rounding);
    Bounds bounds = problem.bounds();
    INFO("seed " << seed);
    REQUIRE(bounds.fit(problem.strung));
    std::vector<double> at = problem.drawn;
    bounds.stand(problem.strung, at);
    CHECK(problem.worst(at) < rounding);
  }
}

TEST_CASE("items that stand within their bounds already are not moved") {
  for (std::uint64_t seed = 1; seed <= 100; ++seed) {
    test::Dice dice{seed};
    const Problem problem(dice, 1 + dice.below(40));
    Bounds bounds = problem.bounds();
    REQUIRE(bounds.fit(problem.strung));
    std::vector<double> at = problem.known;
    bounds.stand(problem.strung, at);
    for (std::size_t i = 0; i < at.size(); ++i) CHECK(at[i] == Approx(problem.known[i]).margin(rounding));
  }
}

TEST_CASE("bounds that leave no room between are told") {
  Strung strung;
  strung.least = {0.5, 1, 1, 0.5};
  strung.length = 4;
  SECTION("for the least gaps") {
    Bounds bounds(3);
    bounds.rise(0, 1.2), bounds.sink(2, 3.1);
    CHECK_FALSE(bounds.fit(strung));
  }
  SECTION("behind the last") {
    Bounds bounds(3);
    bounds.rise(2, 3.6);
    CHECK_FALSE(bounds.fit(strung));
  }
  SECTION("for two that must come to less together") {
    Bounds bounds(3);
    bounds.sink_with_before(1, {}, 1.9);
    CHECK_FALSE(bounds.fit(strung));
    Bounds wider(3);
    wider.sink_with_before(1, {}, 2.1);
    CHECK(wider.fit(strung));
  }
}

TEST_CASE("what is bound to two places at once stands half way between") {
  Strung strung;
  strung.least = {0.5, 0.5};
  strung.length = 4;
  Bounds bounds(1);
  bounds.rise(0, 3), bounds.sink(0, 2);
  REQUIRE(bounds.fit(strung));
  std::vector<double> at{1};
  bounds.stand(strung, at);
  CHECK(at[0] == Approx(2.5));
}
