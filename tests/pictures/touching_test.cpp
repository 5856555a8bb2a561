#include "pictures/touching.hpp"

#include "pictures/forest.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace whorl;
using namespace whorl::pictures;

namespace {

/// Three stitches: the first two in one place, the third in another.
fabric::Fabric three_stitches() {
  fabric::Fabric fabric;
  fabric.stitches.resize(3);
  for (std::uint32_t i = 0; i < 3; ++i) fabric.stitches[i].first_leg = i;
  fabric.legs = {{{0, fabric::On::ring, 0}}, {{0, fabric::On::ring, 0}}, {{1, fabric::On::ring, 0}}};
  fabric.parts.resize(1);
  fabric.parts[0].key = "leaf", fabric.parts[0].rounds = 1;
  fabric.rounds.resize(1);
  fabric.rounds[0].number = 1, fabric.rounds[0].count = 3;
  return fabric;
}

drawing::Scene with(std::vector<drawing::Item> items) {
  drawing::Scene scene = clearing();
  scene.items = std::move(items);
  return scene;
}

} // namespace

TEST_CASE("two crosses that overlap are reported once") {
  const auto found = touching(with({drawn_stitch(0, {20, 20}, 0), drawn_stitch(0, {22, 20}, 2)}), nullptr);
  REQUIRE(found.size() == 1);
  CHECK(found[0].one == "stitch 0");
  CHECK(found[0].other == "stitch 2");
  CHECK(found[0].air < 0);
}

TEST_CASE("crosses apart from one another are not reported") {
  CHECK(touching(with({drawn_stitch(0, {20, 20}, 0), drawn_stitch(0, {23.2, 20}, 2)}), nullptr).empty());
}

TEST_CASE("the air between two crosses is that between the ends of their pens") {
  const auto scene = with({drawn_stitch(0, {20, 20}, 0), drawn_stitch(0, {23.2, 20}, 2)});
  CHECK(nearest(scene, nullptr, 1).air == Approx(3.2 - 2 * 1.3 - 0.4));
}

TEST_CASE("marks nearer than the air asked for are reported though they do not touch") {
  const auto scene = with({drawn_stitch(0, {20, 20}, 0), drawn_stitch(0, {23.2, 20}, 2)});
  CHECK(touching(scene, nullptr, {0.19, 1}).empty());
  CHECK(touching(scene, nullptr, {0.21, 1}).size() == 1);
}

TEST_CASE("a label on a stitch is reported") {
  const auto found = touching(with({drawn_stitch(0, {20, 20}, 0), written("8", {20.5, 19}, 1.7)}), nullptr);
  REQUIRE(found.size() == 1);
  CHECK(found[0].other == "text “8”");
}

TEST_CASE("a pointer inside a stitch's V is not on it") {
  const drawing::Fill pointer{box({19.8, 16}, {20.2, 16.5}), drawing::ink::black, {}};
  CHECK(touching(with({drawn_stitch(1, {20, 20}, 0), pointer}), nullptr).empty());
}

TEST_CASE("a dot inside something filled touches it") {
  const drawing::Fill disc{box({10, 10}, {20, 20}), drawing::ink::black, {}};
  const drawing::Fill dot{box({14, 14}, {15, 15}), drawing::ink::second, {}};
  CHECK(touching(with({disc, dot}), nullptr).size() == 1);
}

TEST_CASE("a stitch on the ground of a yarn is allowed") {
  const drawing::Fill ground{box({10, 10}, {30, 30}), drawing::ink::yarn_ground, {}};
  CHECK(touching(with({ground, drawn_stitch(0, {20, 20}, 0)}), nullptr).empty());
}

TEST_CASE("stitches that share a place may meet at their feet") {
  const auto fabric = three_stitches();
  drawing::Symbol left = drawn_stitch(1, {20, 20}, 0), right = drawn_stitch(1, {20, 20}, 1);
  left.up = {-0.8, -0.6}, right.up = {0.8, -0.6};
  CHECK(touching(with({left, right}), &fabric).empty());
}

TEST_CASE("stitches that share a place may not meet at their heads") {
  const auto fabric = three_stitches();
  drawing::Symbol left = drawn_stitch(1, {20, 20}, 0), right = drawn_stitch(1, {20.3, 20}, 1);
  CHECK(touching(with({left, right}), &fabric).size() == 1);
}

TEST_CASE("stitches of different places may not meet at their feet") {
  const auto fabric = three_stitches();
  drawing::Symbol left = drawn_stitch(1, {20, 20}, 0), right = drawn_stitch(1, {20, 20}, 2);
  left.up = {-0.8, -0.6}, right.up = {0.8, -0.6};
  const auto found = touching(with({left, right}), &fabric);
  REQUIRE(found.size() == 1);
  CHECK(found[0].other == "stitch leaf-1-3");
}

TEST_CASE("a loop arc that reaches its own stitch is reported") {
  drawing::Scene scene = with({drawn_stitch(2, {20, 20}, 0)});
  CHECK(touching(scene, nullptr).empty());
  for (Point& p : scene.symbols[2].pens[2].path.points) p.y = 0.01;
  scene.symbols[2].pens[2].stroke = 1.2;
  CHECK(touching(scene, nullptr).size() == 1);
}

TEST_CASE("a line round a figure is measured where it passes, not by its box") {
  drawing::Stroke ring;
  constexpr double r = 15, q = 0.5522847498 * r;
  using drawing::Verb;
  ring.path = {{Verb::move, Verb::curve, Verb::curve, Verb::curve, Verb::curve, Verb::close},
               {{30 + r, 20},
                {30 + r, 20 + q},
                {30 + q, 20 + r},
                {30, 20 + r},
                {30 - q, 20 + r},
                {30 - r, 20 + q},
                {30 - r, 20},
                {30 - r, 20 - q},
                {30 - q, 20 - r},
                {30, 20 - r},
                {30 + q, 20 - r},
                {30 + r, 20 - q},
                {30 + r, 20}}};
  ring.width = 0.2;
  CHECK(touching(with({ring, drawn_stitch(0, {30, 20}, 0)}), nullptr).empty());
  CHECK(touching(with({ring, drawn_stitch(0, {30, 36}, 0)}), nullptr).size() == 1);
}

TEST_CASE("what touches is told by name, air and place") {
  CHECK(show({{"stitch leaf-1-1", "text “8”", -0.5, {20, 19}}}) ==
        "stitch leaf-1-1 and text “8”: -0.5 mm at 20, 19\n");
}
