#include "drawing/step_strip.hpp"

#include "drawing/box.hpp"
#include "drawing/lines.hpp"

#include <catch2/catch.hpp>

using namespace whorl::drawing;

namespace {

/// A picture of a leaf, with a symbol, a word and a line.
Scene leaf(double width, double height, double size) {
  Scene scene;
  scene.width = width, scene.height = height;
  scene.title = "Leaf: Round 1";
  scene.symbols = {{"sc", {Pen{line_through({{-size, -size}, {size, 0}}), 0.4, 0}}}};
  Group group{"leaf-1", "round", "", {}, {}};
  Symbol symbol;
  symbol.at = {width / 2, height / 2}, symbol.origin.stitch = 3;
  group.items = {symbol, Stroke{line_through({{0, 0}, {width, height}}), 0.3, ink::black, 0, {}}};
  scene.items.push_back(group);
  return scene;
}

const Group& picture(const Scene& strip, std::size_t number) { return std::get<Group>(strip.items[number]); }

} // namespace

TEST_CASE("a strip holds every picture whole, beside or under one another") {
  const Scene strip = strip_of(std::vector<Scene>(5, leaf(192, 108, 1)));
  REQUIRE(strip.items.size() == 5);
  std::vector<Box> boxes;
  for (const Item& item : strip.items) boxes.push_back(bounds(item, strip.symbols));
  for (std::size_t i = 0; i < boxes.size(); ++i) {
    CHECK(boxes[i].left >= 0);
    CHECK(boxes[i].right <= strip.width);
    CHECK(boxes[i].bottom <= strip.height);
    for (std::size_t j = 0; j < i; ++j)
      CHECK((boxes[j].right < boxes[i].left || boxes[j].bottom < boxes[i].top));
  }
}

TEST_CASE("a strip has no id of a round or a stitch twice, and its title is that of the pattern") {
  const Scene strip = strip_of({leaf(108, 108, 1), leaf(108, 108, 1)});
  CHECK(strip.title == "Leaf");
  for (std::size_t i = 0; i < 2; ++i) {
    const Group& round = std::get<Group>(picture(strip, i).items[0]);
    CHECK(round.id.empty());
    CHECK(std::get<Symbol>(round.items[0]).origin.stitch == whorl::fabric::none);
  }
}

TEST_CASE("in a strip symbols that are alike are there once, others under ids of their own") {
  const Scene strip = strip_of({leaf(108, 108, 1), leaf(108, 108, 1), leaf(108, 108, 2)});
  CHECK(strip.symbols.size() == 2);
  CHECK(strip.symbols[0].id != strip.symbols[1].id);
  const auto symbol = [&](std::size_t i) {
    return std::get<Symbol>(std::get<Group>(picture(strip, i).items[0]).items[0]).symbol;
  };
  CHECK(symbol(0) == symbol(1));
  CHECK(symbol(0) != symbol(2));
}
