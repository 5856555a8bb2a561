#include "drawing/slicing.hpp"

#include "drawing/sheets.hpp"

#include <catch2/catch.hpp>

using namespace whorl;
using namespace whorl::drawing;

namespace {

Piece thing(std::uint32_t which, double width, double height) {
  return {Piece::Kind::thing, which, 0, width, height, 0, 0};
}

/// A figure with a caption of 8 mm.
Piece figure(std::uint32_t which, double width, double height) {
  return {Piece::Kind::thing, which, 0, width, height + 8, height, 1};
}

/// All ways to set two fronts.
Front both(Slicing& slicing, const Front& first, const Front& second) {
  std::vector<Piece> offers;
  slicing.offer_above(first, second, offers);
  slicing.offer_beside(first, second, offers);
  return slicing.keep(offers);
}

} // namespace

TEST_CASE("Two things may stand above or beside one another") {
  Slicing slicing(10, 8, 300);
  const Front a = slicing.keep({thing(0, 40, 30)}), b = slicing.keep({thing(1, 50, 20)});
  const Front ways = both(slicing, a, b);
  REQUIRE(ways.size() == 2);
  CHECK(slicing[ways[0]].width == 50);
  CHECK(slicing[ways[0]].height == 58);
  CHECK(slicing[ways[1]].width == 100);
  CHECK(slicing[ways[1]].height == 30);
}

TEST_CASE("What is wider and no lower is not kept") {
  Slicing slicing(10, 8, 300);
  CHECK(slicing.keep({thing(0, 40, 30), thing(0, 60, 30), thing(0, 80, 20)}).size() == 2);
}

TEST_CASE("A thing stands beside another in the narrowest form that is low enough") {
  Slicing slicing(10, 8, 300);
  const Front a = slicing.keep({thing(0, 40, 30)});
  const Front b = slicing.keep({thing(1, 20, 60), thing(1, 50, 30), thing(1, 90, 10)});
  const Front ways = both(slicing, a, b);
  const Piece& low = slicing[ways.back()];
  CHECK(low.width == 100);
  CHECK(low.height == 30);
}

TEST_CASE("Figures side by side end on one line, whatever their captions take") {
  Slicing slicing(10, 8, 300);
  const Front a = slicing.keep({figure(0, 40, 30)}), b = slicing.keep({figure(1, 40, 20)});
  const Front ways = both(slicing, a, b);
  CHECK(slicing[ways.back()].rise == 30);
  CHECK(slicing[ways.back()].height == 38);
}

TEST_CASE("Two lines of figures do not stand beside two others") {
  Slicing slicing(10, 8, 300);
  const auto column = [&slicing](std::uint32_t first) {
    std::vector<Piece> offers;
    slicing.offer_above(slicing.keep({figure(first, 40, 30)}), slicing.keep({figure(first + 1, 40, 30)}),
                        offers);
    return slicing.keep(offers);
  };
  const Front left = column(0), right = column(2);
  std::vector<Piece> offers;
  slicing.offer_beside(left, right, offers);
  CHECK(offers.empty());
}

TEST_CASE("The figures of a part are read line by line, from the left") {
  for (std::uint32_t seed = 1; seed <= 40; ++seed) {
    const sheets::Made it = sheets::made(sample::random_ball(seed));
    const auto figures = sheets::groups_of(it.scene, "figure");
    for (std::size_t i = 1; i < figures.size(); ++i) {
      const Box before = bounds(*figures[i - 1], it.scene.symbols),
                box = bounds(*figures[i], it.scene.symbols);
      INFO("seed " << seed << " figure " << i + 1);
      CHECK((box.left >= before.right || box.top >= before.bottom));
    }
  }
}
