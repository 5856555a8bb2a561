#include "pictures/ink.hpp"

#include "pictures/forest.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace whorl;
using namespace whorl::pictures;

TEST_CASE("a symbol stands where its foot is, turned so that up is up") {
  drawing::Scene scene = clearing();
  drawing::Symbol turned = drawn_stitch(0, {30, 20}, 7);
  turned.up = {1, 0};
  scene.items = {turned};
  const auto marks = marks_of(scene);
  REQUIRE(marks.size() == 1);
  const Point head = marks[0].pieces[0].points[0];
  CHECK(head.x == Approx(33.1));
  CHECK(head.y == Approx(18.7));
}

TEST_CASE("a symbol's pens grow with its scale") {
  drawing::Scene scene = clearing();
  drawing::Symbol large = drawn_stitch(0, {30, 20}, 7);
  large.scale = 2;
  scene.items = {large};
  CHECK(marks_of(scene)[0].pieces[0].reach == Approx(0.4));
}

TEST_CASE("loop arcs are a mark of their own") {
  drawing::Scene scene = clearing();
  scene.items = {drawn_stitch(2, {30, 20}, 7)};
  const auto marks = marks_of(scene);
  REQUIRE(marks.size() == 2);
  CHECK(marks[1].name == "loops of stitch 7");
}

TEST_CASE("white paper and the ground of a yarn are no ink") {
  drawing::Scene scene = clearing();
  scene.items = {drawing::Fill{box({0, 0}, {60, 40}), drawing::ink::paper, {}},
                 drawing::Fill{box({5, 5}, {20, 20}), drawing::ink::yarn_ground, {}}};
  CHECK(marks_of(scene).empty());
}

TEST_CASE("texts of one base line in one group are one mark") {
  drawing::Scene scene = clearing();
  scene.items = {drawing::Group{"",
                                "label",
                                "",
                                {written("8", {5, 10}, 1.7), written("·", {6.8, 10}, 1),
                                 written("24", {8, 10}, 3.4), written("BLO", {5, 13}, 5)}}};
  const auto marks = marks_of(scene);
  REQUIRE(marks.size() == 2);
  CHECK(marks[0].pieces.size() == 3);
}

TEST_CASE("a text's box is as wide as its table says and stands at its anchor") {
  drawing::Scene scene = clearing();
  drawing::Text count = written("24", {20, 10}, 3.4);
  count.anchor = drawing::Anchor::end;
  scene.items = {count};
  const auto outline = marks_of(scene)[0].pieces[0].points;
  CHECK(outline[0] == Point{20 - 3.4, 10 - 0.72 * 3});
  CHECK(outline[2] == Point{20, 10});
}

TEST_CASE("letters that descend make the box deeper") {
  drawing::Scene scene = clearing();
  scene.items = {written("hedgehog", {20, 10}, 12)};
  CHECK(marks_of(scene)[0].pieces[0].points[2].y == Approx(10 + 0.22 * 3));
}

TEST_CASE("an arrow's shaft and head are one mark") {
  drawing::Scene scene = clearing();
  drawing::Stroke shaft, head;
  shaft.path = line({5, 5}, {15, 5});
  head.path = {{drawing::Verb::move, drawing::Verb::line, drawing::Verb::line}, {{13, 4}, {15, 5}, {13, 6}}};
  scene.items = {shaft, head};
  CHECK(marks_of(scene).size() == 1);
}

TEST_CASE("a curve is cut into chords that keep within .005 mm") {
  constexpr double radius = 40, quarter = 0.5522847498; // the control points of a quarter circle
  drawing::Scene scene = clearing();
  drawing::Stroke arc;
  arc.path = {{drawing::Verb::move, drawing::Verb::curve},
              {{radius, 0}, {radius, radius * quarter}, {radius * quarter, radius}, {0, radius}}};
  scene.items = {arc};
  const auto points = marks_of(scene)[0].pieces[0].points;
  double deepest = 0;
  for (std::size_t i = 1; i < points.size(); ++i) {
    const Point middle = 0.5 * (points[i - 1] + points[i]);
    deepest = std::max(deepest, std::abs(radius - std::hypot(middle.x, middle.y)));
  }
  CHECK(deepest < 0.0165); // .005 of the chords, and .0108 by which the curve itself leaves the circle
}
