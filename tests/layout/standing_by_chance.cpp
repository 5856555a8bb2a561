/// How stitches stand in figures of every form, of whole patterns by chance.

#include "standing.hpp"

#include "pictures/floor.hpp"
#include "typed.hpp"

#include <catch2/catch.hpp>

using namespace whorl;
using namespace whorl::layout;

namespace {

constexpr std::uint64_t first_seed = 1, seeds = 12;

/// Does something with the figures of patterns of every form.
template <class Look> void look_at_all(Look look) {
  for (const pictures::Shape shape : pictures::all_shapes)
    for (std::uint64_t seed = first_seed; seed < first_seed + seeds; ++seed) {
      const std::string text = pictures::pattern_by_chance(shape, seed);
      INFO(pictures::name(shape) << ' ' << seed << '\n' << text);
      look(test::Typed(text));
    }
}

} // namespace

TEST_CASE("in figures of every form the stitches stand in the order of work") {
  look_at_all([](const test::Typed& typed) {
    for (const Figure& figure : typed.figures) CHECK(test::out_of_order(typed.fabric, figure) == "");
  });
}

TEST_CASE("in figures of every form no stems cross") {
  look_at_all([](const test::Typed& typed) {
    for (const Figure& figure : typed.figures) CHECK(test::crossing_stems(typed.fabric, figure) == "");
  });
}

TEST_CASE("every stitch is drawn or stood for once, but for the chains that a disc or a tube begins on") {
  look_at_all(
      [](const test::Typed& typed) { CHECK(test::not_shown_once(typed.fabric, typed.figures) == ""); });
}

/// Where a figure has no room for a foot by its own place, a line leads on from it.
TEST_CASE("all feet in figures of every form are nearest to their own place") {
  test::Nearness all;
  look_at_all([&all](const test::Typed& typed) {
    for (const Figure& figure : typed.figures) {
      const test::Nearness found = test::nearness_of(typed.fabric, figure);
      CHECK(found.which == "");
      all.near += found.near;
    }
  });
  CHECK(all.near > 10000);
}

/// Folded rounds with a break line that its zigzag blocks; a part sewn on whose outline would part a foot from
/// its place.
TEST_CASE("a foot is led past a break line, and an outline that parts it from its place is left out") {
  const std::pair<pictures::Shape, std::uint64_t> patterns[] = {{pictures::Shape::folded, 500023},
                                                                {pictures::Shape::sewn, 500008}};
  for (const auto& [shape, seed] : patterns) {
    INFO(pictures::name(shape) << ' ' << seed);
    const test::Typed typed(pictures::pattern_by_chance(shape, seed));
    for (const Figure& figure : typed.figures)
      CHECK(test::nearness_of(typed.fabric, figure).which == "");
  }
}
