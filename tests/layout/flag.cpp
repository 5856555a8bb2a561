#include "layout/flag.hpp"

#include "ink.hpp"
#include "toys.hpp"

#include <catch2/catch.hpp>
#include <cmath>

using namespace whorl;
using namespace whorl::layout;

namespace {

std::vector<Placed> flags_of(const Figure& figure) {
  std::vector<Placed> flags;
  for (const Placed& one : figure.placed)
    if (one.sign == Sign::flag) flags.push_back(one);
  return flags;
}

/// A gnome whose fourth round goes on in another yarn from its fifth stitch, as the fifth does all round.
fabric::Fabric dyed() {
  fabric::Fabric fabric = test::gnome();
  test::dye(fabric, 3, 2, 4);
  test::dye(fabric, 4, 2, 4, 8);
  return fabric;
}

} // namespace

TEST_CASE("a yarn brought in within a round has one flag, near its first stitch") {
  const fabric::Fabric fabric = dyed();
  const Figure figure = layout::place(fabric, test::extents_of(fabric), {}).figures.at(0);
  const auto flags = flags_of(figure);
  REQUIRE(flags.size() == 1);
  CHECK(flags[0].text.text == "2");
  for (const Item& item : figure.items)
    if (item.first <= fabric.rounds[3].first_stitch + 4 &&
        fabric.rounds[3].first_stitch + 4 < item.first + item.count) {
      const Point apart = flags[0].text_at - (item.foot + item.height * item.up);
      CHECK(std::sqrt(apart.x * apart.x + apart.y * apart.y) < 1.6);
    }
}

TEST_CASE("a flag within a round touches nothing") {
  const fabric::Fabric fabric = dyed();
  const Extents extents = test::extents_of(fabric);
  CHECK(test::nearest(test::patches_of(layout::place(fabric, extents, {}).figures.at(0), extents)).air >
        0.055);
}
