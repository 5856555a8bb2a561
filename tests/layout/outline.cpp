#include "layout/outline.hpp"

#include "layout/turn.hpp"

#include <catch2/catch.hpp>
#include <cmath>

using namespace whorl::layout;

namespace {

const std::vector<Point> box{{0, 0}, {8, 0}, {8, 5}, {0, 5}, {4, 2}};

bool near(Point a, Point b) { return std::abs(a.x - b.x) < 1e-9 && std::abs(a.y - b.y) < 1e-9; }

} // namespace

TEST_CASE("an outline goes round all points and has no corner for those inside") {
  CHECK(outline_round(box, 0.5).corners.size() == 4);
}

TEST_CASE("a short side of an outline is left out") {
  const Surround outline = outline_round({{0, 0}, {8, 0}, {8, 4.8}, {7.8, 5}, {0, 5}}, 0.5);
  REQUIRE(outline.corners.size() == 4);
  CHECK(length_of(outline, 0) == Approx(26));
}

TEST_CASE("a contour of an outline is longer by a circle") {
  CHECK(length_of(outline_round(box, 0.5), 1.5) == Approx(26 + 3 * pi));
}

TEST_CASE("a place carried to another contour and back is the same, whichever way it counts") {
  Surround outline = outline_round(box, 0.5);
  for (const Way way : {Way::anticlockwise, Way::clockwise}) {
    outline.way = way;
    for (double at = -30; at < 60; at += 0.7) {
      const double out = carried(outline, 0.7, at, 2.5);
      CHECK(carried(outline, 2.5, out, 0.7) == Approx(at).margin(1e-9));
      const OnSurround here = on_outline(outline, 0.7, at), there = on_outline(outline, 2.5, out);
      CHECK(near(there.at, here.at + 1.8 * here.out));
    }
  }
}

TEST_CASE("places count in the direction of the outline's way") {
  Surround outline = outline_round(box, 0.5);
  for (const Way way : {Way::anticlockwise, Way::clockwise}) {
    outline.way = way;
    const OnSurround a = on_outline(outline, 1, 3), b = on_outline(outline, 1, 3.01);
    CHECK(near(b.at, a.at + 0.01 * a.on));
  }
}

TEST_CASE("an outline is met where a point looks at it") {
  const Surround outline = outline_round(box, 0.5);
  const NearSurround met = met_outline(outline, 0.5, {3, 1}, {0, -1});
  CHECK(met.away == Approx(1));
  CHECK(near(on_outline(outline, 0.5, met.at).at, {3, -0.5}));
}

TEST_CASE("the corner of an outline that is nearest is found") {
  const Surround outline = outline_round(box, 0.5);
  const NearSurround corner = near_corner(outline, 1, {7, 4.5});
  CHECK(near(on_outline(outline, 1, corner.at).at, {8 + std::sqrt(0.5), 5 + std::sqrt(0.5)}));
}

TEST_CASE("how far a point is from an outline's core") {
  const Surround outline = outline_round(box, 0.5);
  CHECK(away_from(outline, {4, 4}) == 0);
  CHECK(away_from(outline, {11, 9}) == Approx(5));
}
