#include "layout/flag.hpp"

#include "ink.hpp"
#include "toys.hpp"
#include "typed.hpp"

#include <algorithm>
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

TEST_CASE("a yarn brought in within a line of a strip or a row has its flag at its first stitch") {
  const test::Typed tube(
      "Cuff\n\nCh 18, join with sl st to form a ring.\nRnd 1: sc in each ch around (18)\nRnd "
      "2: sc in next 6 sts, with moss, sc in next 6 sts, with bark, sc in next 6 sts (18)\n"
      "Rnd 3: sc around (18)\n");
  const test::Typed flat(
      "Panel\n\nCh 19.\nRow 1: sc in 2nd ch from hook and in each ch across (18)\nRow 2: ch "
      "1, turn, sc in next 6 sts, with moss, sc in next 12 sts (18)\nRow 3: ch 1, turn, sc in "
      "each st (18)\n");
  for (const test::Typed* typed : {&tube, &flat}) {
    const Figure& figure = typed->figures.at(0);
    for (const Placed& flag : flags_of(figure)) {
      double nearest = 1e9;
      for (const Item& item : figure.items) {
        const fabric::StitchId id = item.first;
        if (id == 0 || typed->fabric.stitches[id].yarn == typed->fabric.stitches[id - 1].yarn) continue;
        nearest = std::min(nearest, std::abs(flag.at.x - item.foot.x));
      }
      CHECK(nearest < 0.7);
    }
    CHECK(flags_of(figure).size() >= 1);
    CHECK(typed->air(0) > 0.055);
  }
}

TEST_CASE("a flag within a round touches nothing") {
  const fabric::Fabric fabric = dyed();
  const Extents extents = test::extents_of(fabric);
  CHECK(test::nearest(test::patches_of(layout::place(fabric, extents, {}).figures.at(0), extents)).air >
        0.055);
}
