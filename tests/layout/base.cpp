#include "layout/base.hpp"

#include "layout/items.hpp"

#include "balls.hpp"

#include <catch2/catch.hpp>

using namespace whorl;
using namespace whorl::layout;

namespace {

/// A gnome, the legs of whose ninth round are moved.
fabric::Fabric gnome_with(fabric::Place (*moved)(const fabric::Fabric&, fabric::Place)) {
  fabric::Fabric fabric = test::gnome();
  const fabric::Round& round = fabric.rounds[8];
  const std::uint32_t first = fabric.stitches[round.first_stitch].first_leg;
  const std::uint32_t last = fabric.stitches[round.first_stitch + round.count].first_leg;
  for (std::uint32_t leg = first; leg < last; ++leg)
    fabric.legs[leg].into = moved(fabric, fabric.legs[leg].into);
  return fabric;
}

fabric::Place round_front_post(const fabric::Fabric&, fabric::Place place) {
  return {place.of, fabric::On::post, stitch::front};
}

fabric::Place one_further_down(const fabric::Fabric& fabric, fabric::Place place) {
  return fabric::legs_of(fabric, place.of).begin()->into;
}

} // namespace

TEST_CASE("a stitch into the tops before it stands on a top") {
  for (const Item& item : items_of(test::gnome(), 8)) CHECK(item.key.base == Base::top);
}

TEST_CASE("a stitch round a post worked with the right side facing stays what it is called") {
  for (const Item& item : items_of(gnome_with(round_front_post), 8)) CHECK(item.key.base == Base::front_post);
}

// Symbols show the right side: trade-rules, Drawing.
TEST_CASE("a front post worked with the wrong side facing is drawn as a back post") {
  fabric::Fabric fabric = gnome_with(round_front_post);
  fabric.rounds[8].side = fabric::Side::wrong;
  for (const Item& item : items_of(fabric, 8)) CHECK(item.key.base == Base::back_post);
}

TEST_CASE("a stitch over the round before into one further down says how far it reaches") {
  for (const Item& item : items_of(gnome_with(one_further_down), 8)) {
    CHECK(item.key.base == Base::below);
    CHECK(item.key.down == 1);
  }
}
