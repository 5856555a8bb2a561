#include "layout/relax.hpp"

#include "balls.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

using namespace whorl::layout;

namespace {

double random_in(test::Dice& dice, double low, double high) {
  return low + (high - low) * dice.below(100001) / 1e5;
}

/// Items in order with uneven springs; `tight` is the share of the length that least gaps take.
Strung random_strung(test::Dice& dice, std::size_t items, double tight) {
  Strung strung;
  double wanted = 0, least = 0;
  for (std::size_t k = 0; k <= items; ++k) {
    strung.wanted.push_back(random_in(dice, 0.8, 2.2));
    strung.least.push_back(random_in(dice, 0.3, 1.2));
    wanted += strung.wanted.back();
    least += strung.least.back();
  }
  strung.length = wanted;
  for (double& gap : strung.least) gap *= tight * wanted / least;
  for (std::size_t i = 0; i < items; ++i) {
    strung.target.push_back(random_in(dice, 0, wanted));
    strung.pull.push_back(dice.below(5) == 0 ? 0 : random_in(dice, 0.03, 3));
  }
  std::sort(strung.target.begin(), strung.target.end());
  return strung;
}

double energy(const Strung& strung, const std::vector<double>& at) {
  double sum = 0, before = 0;
  for (std::size_t k = 0; k <= at.size(); ++k) {
    const double here = k == at.size() ? strung.length : at[k];
    sum += std::pow(here - before - strung.wanted[k], 2);
    if (k < at.size()) sum += strung.pull[k] * std::pow(at[k] - strung.target[k], 2);
    before = here;
  }
  return sum;
}

/// A slow method of its own: the multipliers of the least gaps are raised and lowered one after another until
/// each gap is at its least or free (coordinate ascent of the dual), the items following by Gauss and
/// Seidel's sweeps.
std::vector<double> relax_slowly(const Strung& strung) {
  const std::size_t n = strung.target.size();
  std::vector<double> at, hold(n + 1, 0);
  for (std::size_t i = 0; i < n; ++i) at.push_back(strung.length * (i + 1.0) / (n + 1.0));
  const auto place = [&](std::size_t i) { return i == 0 ? 0 : i == n + 1 ? strung.length : at[i - 1]; };
  for (int round = 0; round < 40000; ++round) {
    for (std::size_t i = 1; i <= n; ++i) {
      const double pull = strung.pull[i - 1];
      at[i - 1] = (place(i - 1) + strung.wanted[i - 1] + hold[i - 1] + place(i + 1) - strung.wanted[i] -
                   hold[i] + pull * strung.target[i - 1]) /
                  (2 + pull);
    }
    for (std::size_t k = 0; k <= n; ++k)
      hold[k] = std::max(0.0, hold[k] + 0.5 * (strung.least[k] - (place(k + 1) - place(k))));
  }
  return at;
}

} // namespace

TEST_CASE("the relaxed ring fulfils the optimum's conditions to 1e-9") {
  test::Dice dice{11};
  for (int i = 0; i < 2000; ++i) {
    const Strung strung = random_strung(dice, 1 + dice.below(60), random_in(dice, 0.2, 0.99));
    const Optimum optimum = check_optimum(strung, relax(strung));
    if (optimum.worst_gap > 1e-9 || optimum.worst_force > 1e-9)
      FAIL("ring " << i << ": gap " << optimum.worst_gap << ", force " << optimum.worst_force);
  }
}

TEST_CASE("the check of the optimum notices an item that is moved") {
  test::Dice dice{12};
  for (int i = 0; i < 200; ++i) {
    const Strung strung = random_strung(dice, 3 + dice.below(20), 0.7);
    std::vector<double> at = relax(strung);
    at[dice.below(static_cast<std::uint32_t>(at.size()))] += 1e-4;
    const Optimum optimum = check_optimum(strung, at);
    CHECK(std::max(optimum.worst_gap, optimum.worst_force) > 1e-6);
  }
}

TEST_CASE("a slow method finds the same places") {
  test::Dice dice{13};
  for (int i = 0; i < 25; ++i) {
    const Strung strung = random_strung(dice, 2 + dice.below(8), random_in(dice, 0.3, 0.9));
    const std::vector<double> quick = relax(strung), slow = relax_slowly(strung);
    for (std::size_t j = 0; j < quick.size(); ++j) CHECK(std::abs(quick[j] - slow[j]) < 1e-6);
    CHECK(energy(strung, quick) <= energy(strung, slow) + 1e-6);
  }
}

TEST_CASE("any guess of the gaps at their least leads to the same places") {
  test::Dice dice{15};
  for (int i = 0; i < 300; ++i) {
    const Strung strung = random_strung(dice, 2 + dice.below(40), random_in(dice, 0.3, 0.95));
    const std::vector<double> at = relax(strung);
    std::vector<char> guess(at.size() + 1, 0);
    for (std::size_t k = 1; k < at.size(); ++k) guess[k] = dice.below(2) == 0;
    const std::vector<double> guessed = relax(strung, guess);
    for (std::size_t j = 0; j < at.size(); ++j) CHECK(std::abs(at[j] - guessed[j]) < 1e-9);
  }
}

TEST_CASE("items without springs stand as their gaps want") {
  Strung strung;
  strung.length = 10;
  strung.wanted = {1, 2, 3, 4};
  strung.least = {0.5, 0.5, 0.5, 0.5};
  strung.pull = {0, 0, 0};
  strung.target = {9, 9, 9};
  const std::vector<double> at = relax(strung);
  CHECK(at[0] == Approx(1));
  CHECK(at[1] == Approx(3));
  CHECK(at[2] == Approx(6));
}

TEST_CASE("where least gaps leave no room the items share what there is") {
  Strung strung;
  strung.length = 3;
  strung.wanted = strung.least = {2, 2, 2};
  strung.pull = {1, 1};
  strung.target = {0, 3};
  const std::vector<double> at = relax(strung);
  CHECK(at[0] == Approx(1));
  CHECK(at[1] == Approx(2));
}

TEST_CASE("an empty ring has no places") {
  Strung strung;
  strung.length = 5;
  strung.wanted = {5};
  strung.least = {0};
  CHECK(relax(strung).empty());
}

TEST_CASE("a ring of ten thousand tight items settles") {
  test::Dice dice{14};
  const Strung strung = random_strung(dice, 10000, 0.98);
  const Optimum optimum = check_optimum(strung, relax(strung));
  CHECK(optimum.worst_gap < 1e-7);
  CHECK(optimum.worst_force < 1e-6);
}

TEST_CASE("with free ends items are drawn to their targets, and gaps keep their least") {
  test::Dice dice{4242};
  for (int i = 0; i < 200; ++i) {
    Strung strung = random_strung(dice, 1 + dice.below(30), 0.9);
    strung.free_ends = true;
    strung.pull.front() = 1;
    const Optimum optimum = check_optimum(strung, relax(strung));
    CHECK(optimum.worst_gap < 1e-9);
    CHECK(optimum.worst_force < 1e-9);
  }
}

TEST_CASE("one item with free ends stands at its target") {
  Strung strung;
  strung.wanted = strung.least = {1, 1};
  strung.pull = {2};
  strung.target = {5};
  strung.free_ends = true;
  CHECK(relax(strung).at(0) == Approx(5));
}
