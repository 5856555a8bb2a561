#include "layout/crossing.hpp"

#include <catch2/catch.hpp>

using namespace whorl::layout;

namespace {

std::vector<Crossing> crossings(const std::vector<int>& order) {
  std::vector<Seat> seats;
  for (const int place : order)
    seats.push_back({static_cast<double>(place), static_cast<whorl::fabric::StitchId>(place)});
  return crossings_of(seats);
}

} // namespace

TEST_CASE("Stitches whose places come in order cross nothing") {
  CHECK(crossings({0, 1, 2, 3}).empty());
  CHECK(crossings({0, 1, 1, 2}).empty());
}

TEST_CASE("Two that change places cross, and so do the pairs of a cable") {
  const auto pairs = crossings({1, 0, 3, 2, 4});
  REQUIRE(pairs.size() == 2);
  CHECK(pairs[1].first == 2);
  CHECK(pairs[1].end == 4);
  const auto cable = crossings({0, 3, 4, 1, 2, 5});
  REQUIRE(cable.size() == 1);
  CHECK(cable[0].first == 1);
  CHECK(cable[0].end == 5);
}
