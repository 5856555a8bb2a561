/// Lace and ripples in rows, as they are typed.

#include "lace_rows.hpp"
#include "standing.hpp"
#include "typed.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace whorl;
using namespace whorl::layout;

using namespace whorl::test;
using layout::test::Typed;

namespace {

/// Tops of the stitches of a row that count, from left to right.
std::vector<Point> tops_of(const Typed& typed, std::size_t row) {
  const Figure& figure = typed.figures.at(0);
  const Ring& ring = figure.rings.at(row);
  std::vector<Point> tops;
  for (std::uint32_t k = ring.first_item; k < ring.first_item + ring.items; ++k)
    for (std::uint32_t j = 0; j < figure.items[k].count; ++j)
      if (ring.chain || (typed.fabric.stitches[figure.items[k].first + j].flags & fabric::counts) != 0)
        tops.push_back(figure.tips[figure.items[k].first_tip + j]);
  std::sort(tops.begin(), tops.end(), [](Point a, Point b) { return a.x < b.x; });
  return tops;
}

double width_of(const Typed& typed, std::size_t row) {
  const std::vector<Point> tops = tops_of(typed, row);
  return tops.back().x - tops.front().x;
}

} // namespace

TEST_CASE("rows of lace stay as wide as the row beneath") {
  for (const std::string& text : {shells, shells_between, vees, mesh, strap}) {
    const Typed typed(text);
    for (std::size_t row = 2; row < typed.figures.at(0).rings.size(); ++row) {
      INFO(text << row);
      CHECK(std::abs(width_of(typed, row) - width_of(typed, 1)) < 1);
      CHECK(std::abs(tops_of(typed, row).front().x - tops_of(typed, 1).front().x) < 0.6);
    }
  }
}

TEST_CASE("the stitches of a V lean alike to both sides of their place") {
  const Typed typed(vees);
  const Figure& figure = typed.figures.at(0);
  for (std::size_t row = 2; row < figure.rings.size(); ++row) {
    const Ring& ring = figure.rings[row];
    int found = 0;
    for (std::uint32_t k = ring.first_item + 1; k + 1 < ring.first_item + ring.items; ++k) {
      const Item &before = figure.items[k - 1], &behind = figure.items[k + 1];
      if (figure.items[k].feet != 0 || before.feet != 1 || behind.feet != 1) continue;
      CHECK(before.up.x + behind.up.x == Approx(0).margin(0.12));
      ++found;
    }
    CHECK(found == 6);
  }
}

TEST_CASE("the posts of a mesh stand upright over one another, its spaces alike") {
  const Typed typed(mesh);
  const std::vector<Point> first = tops_of(typed, 2);
  for (std::size_t row = 2; row < typed.figures.at(0).rings.size(); ++row) {
    const std::vector<Point> posts = tops_of(typed, row);
    REQUIRE(posts.size() == 11);
    for (std::size_t i = 0; i < posts.size(); ++i) CHECK(posts[i].x == Approx(first[i].x).margin(0.05));
    for (std::size_t i = 1; i < posts.size(); ++i)
      CHECK(posts[i].x - posts[i - 1].x == Approx(2).margin(0.05));
  }
}

TEST_CASE("many stitches in one space spread over its chains") {
  const std::vector<Point> tops = tops_of(Typed(strap), 3);
  for (std::size_t i = 1; i < tops.size(); ++i) CHECK(tops[i].x - tops[i - 1].x == Approx(1).margin(0.1));
}

TEST_CASE("chains that have no room to lie straight bow up from head to head") {
  const Typed typed(net);
  CHECK(width_of(typed, 1) == Approx(width_of(typed, 0)).margin(0.5));
  const Figure& figure = typed.figures.at(0);
  const Ring& ring = figure.rings.at(1);
  int bowed = 0;
  for (std::uint32_t k = ring.first_item + 1; k < ring.first_item + ring.items; ++k)
    bowed += figure.items[k].feet == 0 && figure.items[k].foot.y > ring.outer ? 1 : 0;
  CHECK(bowed >= 3 * (static_cast<int>(tops_of(typed, 1).size()) - 1));
}

TEST_CASE("the peaks and valleys of a ripple stand over one another") {
  for (const std::string& text : {ripple, tall_ripple}) {
    const Typed typed(text);
    const std::vector<Point> beneath = tops_of(typed, 1);
    for (std::size_t row = 1; row < typed.figures.at(0).rings.size(); ++row) {
      const std::vector<Point> tops = tops_of(typed, row);
      REQUIRE(tops.size() == 31);
      for (const std::size_t valley : {5, 15, 25}) {
        CHECK(tops[valley].x == Approx(beneath[valley].x).margin(0.01));
        CHECK(tops[valley].y < tops[valley - 2].y);
        CHECK(tops[valley - 2].y == Approx(tops[valley + 2].y).margin(0.01));
      }
      for (const std::size_t peak : {10, 20}) CHECK(tops[peak].y > tops[peak - 3].y);
    }
  }
}

TEST_CASE("the ripple of a left hand is the mirror image") {
  const Typed right(ripple), left(ripple, Hand::left);
  for (std::size_t row = 0; row < right.figures.at(0).rings.size(); ++row) {
    const std::vector<Point> one = tops_of(right, row), other = tops_of(left, row);
    REQUIRE(one.size() == other.size());
    for (std::size_t i = 0; i < one.size(); ++i) {
      CHECK(one[i].x == Approx(0 - other[one.size() - 1 - i].x).margin(0.01));
      CHECK(one[i].y == Approx(other[one.size() - 1 - i].y).margin(0.01));
    }
  }
}

TEST_CASE("lace and ripples in rows stand by their places, in order, and nothing touches") {
  for (const std::string& text : lace_rows) {
    INFO(text);
    const Typed typed(text);
    REQUIRE(typed.figures.size() == 1);
    CHECK(typed.air() > 0.055);
    CHECK(layout::test::nearness_of(typed.fabric, typed.figures[0]).which == "");
    CHECK(layout::test::out_of_order(typed.fabric, typed.figures[0]) == "");
    CHECK(layout::test::crossing_stems(typed.fabric, typed.figures[0]) == "");
    CHECK(layout::test::not_shown_once(typed.fabric, typed.figures) == "");
    CHECK(std::none_of(typed.figures[0].strokes.begin(), typed.figures[0].strokes.end(),
                       [](const Stroke& stroke) { return stroke.line == Line::stem; }));
  }
}
