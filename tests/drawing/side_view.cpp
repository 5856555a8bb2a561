#include "drawing/side_view.hpp"

#include "drawing/profile.hpp"
#include "drawing/sheets.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace whorl;
using namespace whorl::drawing;
using sheets::Made;
using sheets::made;

namespace {

Profile profile(const Made& it) {
  return profile_of(it.fabric, 0, static_cast<std::uint32_t>(it.fabric.rounds.size() - 1));
}

} // namespace

TEST_CASE("A part in several figures is seen from the side, each figure named") {
  CHECK(sheets::words_of(made(sheets::gnome()).scene, "side-view") == "fig. 1 fig. 2 fig. 3 fig. 4 ");
}

TEST_CASE("A part in one figure has no side view") {
  CHECK(sheets::groups_of(made(sample::ball({6, 12, 18})).scene, "side-view").empty());
}

TEST_CASE("The side view of a closed piece begins and ends on the axis") {
  const Profile side = profile(made(sheets::gnome()));
  CHECK(side.side.front().x == 0);
  CHECK(side.side.back().x == 0);
}

TEST_CASE("A tube is as wide as its stitches reach round it") {
  std::vector<std::uint32_t> counts{6, 12, 18, 24, 30};
  counts.insert(counts.end(), 30, 30);
  const Profile side = profile(made(sample::ball(counts)));
  CHECK(std::abs(side.side[side.ends[22]].x - 30 / (2 * 3.14159265358979)) < 0.02);
}

TEST_CASE("The outline never turns back and never crosses the axis") {
  for (std::uint32_t seed = 1; seed <= 40; ++seed) {
    const Profile side = profile(made(sample::random_ball(seed)));
    for (std::size_t i = 1; i < side.side.size(); ++i) {
      CHECK(side.side[i].y >= side.side[i - 1].y);
      CHECK(side.side[i].x >= 0);
    }
  }
}

TEST_CASE("A round that grows by more than its height allows lies flat") {
  const Profile side = profile(made(sample::ball({6, 30, 60, 60, 60, 60, 60, 60, 60, 60, 60})));
  CHECK(side.side[side.ends[10]].y < 11 * 1.11);
  CHECK(side.side[side.ends[2]].y < 3);
}

TEST_CASE("A neck is seen between head and body") {
  const Made it = made(sheets::gnome());
  const Profile side = profile(it);
  const double head = side.side[side.ends[8]].x, neck = side.side[side.ends[13]].x,
               body = side.side[side.ends[19]].x;
  CHECK(neck < 0.8 * head);
  CHECK(neck < 0.85 * body);
}

TEST_CASE("Names of figures in a side view keep clear of one another") {
  for (std::uint32_t seed = 1; seed <= 40; ++seed) {
    const Made it = made(sample::random_ball(seed));
    for (const Group* view : sheets::groups_of(it.scene, "side-view")) {
      std::vector<Box> names;
      for (const Item& item : view->items) {
        if (!std::holds_alternative<Text>(item)) continue;
        for (const Box& other : names) CHECK_FALSE(sheets::overlap(bounds(item, {}), other));
        names.push_back(bounds(item, {}));
      }
    }
  }
}

TEST_CASE("A side view stays within the size that it is said to have") {
  const Made it = made(sheets::gnome());
  const SideView view = side_view_of(it.copy(), 0);
  const Box box = bounds(draw_side_view(view, {}).group, {});
  CHECK(box.left >= -0.3);
  CHECK(box.right <= view.width + 0.1);
  CHECK(box.top >= -0.3);
  CHECK(box.bottom <= view.height + 0.3);
}

TEST_CASE("A piece that is worked from its lower end up stands on its start") {
  SheetText text;
  text.from_below = {true};
  const Made it = made(sheets::gnome(), text);
  const SideView up = side_view_of(it.copy(), 0), down = side_view_of(made(sheets::gnome()).copy(), 0);
  CHECK(up.names.front() == "fig. 4");
  CHECK(up.names.back() == "fig. 1");
  REQUIRE(up.outline.size() == down.outline.size());
  CHECK(std::abs(up.outline.front().x - down.outline.back().x) < 1e-9);
  // The first figure's stretch is as long below as it was above.
  const double above = down.outline[down.ends[0]].y - down.outline.front().y;
  const double below = up.outline.back().y - up.outline[up.ends[2]].y;
  CHECK(std::abs(above - below) < 1e-9);
}
