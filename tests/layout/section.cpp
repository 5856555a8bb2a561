#include "layout/section.hpp"

#include "balls.hpp"
#include "layout/place.hpp"

#include <catch2/catch.hpp>

using namespace whorl;
using namespace whorl::layout;

namespace {

Placement placed(const fabric::Fabric& fabric) { return place(fabric, test::extents_of(fabric), {}); }

/// A ball whose second and fourth rounds are worked with the wrong side facing.
fabric::Fabric turned_ball() {
  fabric::Fabric fabric = test::ball({6, 12, 18, 18});
  for (const std::size_t round : {0, 1, 2}) fabric.rounds[round].turned = true;
  for (const std::size_t round : {1, 3}) fabric.rounds[round].side = fabric::Side::wrong;
  return fabric;
}

double angle_rank(const Figure& figure, const Ring& ring, std::uint32_t item) {
  return figure.items[ring.first_item + item].at;
}

} // namespace

TEST_CASE("rounds of no stitch are left out of a section") {
  test::Ball ball;
  ball.begin("ball").to(6).round({});
  CHECK(sections_of(ball.fabric, 0).at(0).rounds == std::vector<std::uint32_t>{0});
}

TEST_CASE("rounds that are only counted are not drawn") {
  fabric::Fabric fabric = test::ball({6, 12, 18});
  fabric.rounds[1].worked = false;
  CHECK(sections_of(fabric, 0).at(0).rounds == std::vector<std::uint32_t>{0, 2});
}

TEST_CASE("rows that follow rounds are a section that goes on from the last of these") {
  fabric::Fabric fabric = test::ball({6, 12, 18, 18});
  for (const std::size_t row : {2, 3}) fabric.rounds[row].kind = pattern::RoundKind::row;
  const std::vector<Section> sections = sections_of(fabric, 0);
  REQUIRE(sections.size() == 2);
  CHECK(sections[0].rounds == std::vector<std::uint32_t>{0, 1});
  CHECK(sections[1].rows);
  CHECK(sections[1].rounds == std::vector<std::uint32_t>{2, 3});
  CHECK(sections[1].before == 1);
}

TEST_CASE("rows that follow rounds stand on the faint last round") {
  fabric::Fabric fabric = test::ball({6, 12, 18, 18});
  for (const std::size_t row : {2, 3}) fabric.rounds[row].kind = pattern::RoundKind::row;
  const Placement placement = placed(fabric);
  REQUIRE(placement.figures.size() == 2);
  CHECK(placement.figures[1].form == Form::rows);
  CHECK(placement.figures[1].rings.at(0).echo);
  CHECK(placement.figures[1].rings.at(0).round == 1);
}

TEST_CASE("rounds that follow rows go on in a figure with an open middle") {
  fabric::Fabric fabric = test::ball({6, 12, 18, 18});
  fabric.rounds[2].kind = pattern::RoundKind::row;
  const Placement placement = placed(fabric);
  REQUIRE(placement.figures.size() == 3);
  CHECK(placement.figures[2].centre == Centre::open);
  CHECK(placement.figures[2].centre_text.at(0).text == "from figure 2");
}

TEST_CASE("a turned round runs the other way round its disc") {
  const Figure figure = placed(turned_ball()).figures.at(0);
  const Ring &right = figure.rings.at(2), &wrong = figure.rings.at(3);
  CHECK_FALSE(right.against);
  CHECK(wrong.against);
  CHECK(figure.items[right.first_item].first < figure.items[right.first_item + 1].first);
  CHECK(figure.items[wrong.first_item].first > figure.items[wrong.first_item + 1].first);
  CHECK(angle_rank(figure, wrong, 0) < angle_rank(figure, wrong, 1));
}

TEST_CASE("the pointer of a turned round stands on the other side of the gutter") {
  const Figure figure = placed(turned_ball()).figures.at(0);
  CHECK(figure.pointers.at(2).tip.x < 0);
  CHECK(figure.pointers.at(3).tip.x > 0);
}

TEST_CASE("a disc that is worked to and fro has no arrow of one direction") {
  const Figure figure = placed(turned_ball()).figures.at(0);
  for (const Stroke& stroke : figure.strokes) CHECK(stroke.line != Line::direction);
}
