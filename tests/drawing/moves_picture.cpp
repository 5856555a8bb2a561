#include "drawing/moves_picture.hpp"

#include "drawing/box.hpp"
#include "drawing/sheets.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace whorl;
using namespace whorl::drawing;

namespace {

HookState holding(std::vector<OnHook> strands, bool inserted = false) {
  HookState hook;
  hook.strands = std::move(strands);
  hook.inserted = inserted;
  return hook;
}

Box box_of(const Group& group) {
  Box box;
  for (const Item& item : group.items) join(box, bounds(item, {}));
  return box;
}

/// Where the fronts of the strands stand, from the head to the handle: strokes of yarn in front of the rod.
std::vector<double> fronts(const Group& picture) {
  std::vector<double> at;
  bool before_rod = true;
  for (const Item& item : picture.items) {
    if (std::holds_alternative<Fill>(item)) before_rod = false;
    const auto* stroke = std::get_if<Stroke>(&item);
    if (before_rod || stroke == nullptr || stroke->width < 0.8) continue;
    at.push_back(stroke->path.points.front().x);
  }
  std::sort(at.begin(), at.end());
  return at;
}

MoveStrip strip_of(std::size_t moves) {
  MoveStrip strip;
  strip.heading = "moss stitch";
  strip.note = "Uses 1 stitch.";
  for (std::size_t i = 0; i < moves; ++i)
    strip.moves.push_back(
        {std::to_string(i + 1), "Yarn over", "2 loops", holding({{}, {Strand::wrap, true}})});
  return strip;
}

} // namespace

TEST_CASE("A picture of the hook keeps within its size") {
  for (std::size_t loops = 0; loops <= 14; ++loops)
    for (const Strand strand : {Strand::loop, Strand::wrap, Strand::drawn, Strand::taken})
      for (const bool inserted : {false, true}) {
        CAPTURE(loops, static_cast<int>(strand), inserted);
        const Box box = box_of(draw_hook(holding(std::vector<OnHook>(loops, {strand}), inserted), {0, 0}));
        CHECK(box.left >= 0);
        CHECK(box.top >= 0);
        CHECK(box.right <= hook_picture_width);
        CHECK(box.bottom <= hook_picture_height);
      }
}

TEST_CASE("Strands side by side do not touch, nor the stitch that the hook stands in") {
  constexpr double across = 2 * 0.95 + 0.9; // a strand's two sides and its yarn
  for (const bool inserted : {false, true})
    for (std::size_t loops = 2; loops <= 14; ++loops) {
      CAPTURE(loops, inserted);
      const std::vector<double> at = fronts(draw_hook(holding(std::vector<OnHook>(loops), inserted), {0, 0}));
      REQUIRE(at.size() > 1);
      for (std::size_t i = 1; i < at.size(); ++i) CHECK(at[i] - at[i - 1] > across);
    }
}

TEST_CASE("All strands are drawn up to eight, of more the newest and the oldest") {
  CHECK(fronts(draw_hook(holding(std::vector<OnHook>(8)), {0, 0})).size() == 8);
  CHECK(fronts(draw_hook(holding(std::vector<OnHook>(11)), {0, 0})).size() == 7);
}

TEST_CASE("What is fresh is in the second ink, all else in black") {
  const Group picture = draw_hook(holding({{Strand::loop, false}, {Strand::wrap, true}}), {0, 0});
  bool second = false, black = false;
  for (const Item& item : picture.items)
    if (const auto* stroke = std::get_if<Stroke>(&item); stroke != nullptr && stroke->width > 0.8)
      (stroke->color == ink::second ? second : black) = true;
  CHECK(second);
  CHECK(black);
}

TEST_CASE("The newest strand is next to the hook's head") {
  const Group picture = draw_hook(holding({{Strand::loop, false}, {Strand::loop, true}}), {0, 0});
  double fresh = 0, old = 0;
  for (const Item& item : picture.items)
    if (const auto* stroke = std::get_if<Stroke>(&item); stroke != nullptr && stroke->width > 0.8)
      (stroke->color == ink::second ? fresh : old) = stroke->path.points.front().x;
  CHECK(fresh < old);
}

TEST_CASE("Short stitches share a row of the sheet, long ones fill theirs evenly") {
  const Scene shared = moves_sheet({"Fern", "", "", "", "", "en"}, {strip_of(3), strip_of(2)});
  const Scene apart = moves_sheet({"Fern", "", "", "", "", "en"}, {strip_of(3), strip_of(3)});
  CHECK(shared.height < apart.height);
  CHECK(moves_sheet({}, {strip_of(6)}).height == moves_sheet({}, {strip_of(10)}).height);
}

TEST_CASE("Everything of a sheet of moves stands on it") {
  for (const std::size_t moves : {0u, 1u, 5u, 13u}) {
    const Scene scene =
        moves_sheet({"Fern", "moves", "US terms", "A note.", "", "en"}, {strip_of(moves), strip_of(2)});
    for (const Item& item : scene.items) {
      const Box box = bounds(item, scene.symbols);
      if (box.empty()) continue;
      CHECK(box.left >= 0);
      CHECK(box.top >= 0);
      CHECK(box.right <= scene.width);
      CHECK(box.bottom <= scene.height);
    }
  }
}

TEST_CASE("Each move is named for those who cannot see it") {
  const Scene scene = moves_sheet({"Fern", "", "", "", "", "en"}, {strip_of(1)});
  const auto groups = sheets::groups_of(scene, "move");
  REQUIRE(groups.size() == 1);
  CHECK(groups.front()->title == "1. Yarn over: 2 loops");
}

TEST_CASE("The yarn comes from the newest loop of its own, not from a stitch's loop on the hook") {
  const Group picture = draw_hook(holding({{Strand::loop, false}, {Strand::taken, true}}), {0, 0});
  bool tail = false;
  for (const Item& item : picture.items)
    if (const auto* stroke = std::get_if<Stroke>(&item); stroke != nullptr && stroke->width > 0.8)
      if (bounds(item, {}).left < 2) tail = stroke->color == ink::black;
  CHECK(tail);
}
