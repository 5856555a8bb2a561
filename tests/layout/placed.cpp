#include "layout/placed.hpp"

#include "ink.hpp"
#include "toys.hpp"

#include <catch2/catch.hpp>
#include <cmath>

using namespace whorl;
using namespace whorl::layout;

namespace {

Placement placed(const fabric::Fabric& fabric, const Page& page = {}) {
  return layout::place(fabric, test::extents_of(fabric), page);
}

std::vector<Placed> signs_of(const Figure& figure, Sign sign) {
  std::vector<Placed> signs;
  for (const Placed& one : figure.placed)
    if (one.sign == sign) signs.push_back(one);
  return signs;
}

double radius(Point p) { return std::sqrt(p.x * p.x + p.y * p.y); }
double angle(Point p) { return std::atan2(-p.x, p.y); } ///< from 12 o'clock, anticlockwise

std::vector<std::string> texts_of(const std::vector<Placed>& signs) {
  std::vector<std::string> texts;
  for (const Placed& sign : signs) texts.push_back(sign.text.text);
  return texts;
}

void check_untouched(std::uint64_t first) {
  for (std::uint64_t seed = first; seed < first + 150; ++seed) {
    const fabric::Fabric fabric = test::random_toy(seed);
    const Extents extents = test::extents_of(fabric);
    Page page;
    page.hand = seed % 3 == 0 ? Hand::left : Hand::right;
    for (const Figure& figure : layout::place(fabric, extents, page).figures) {
      const test::Nearest near = test::nearest(test::patches_of(figure, extents));
      if (near.air < 0.055)
        FAIL_CHECK("seed " << seed << " part " << figure.part << " " << name(figure.form) << ": " << near.one
                           << " is " << near.air << " from " << near.other);
    }
  }
}

} // namespace

TEST_CASE("nothing touches in random toys with eyes, loops, flags and numbers") { check_untouched(700); }
TEST_CASE("nothing touches in as many toys more") { check_untouched(91000); }

TEST_CASE("eyes stand between their rings, near the hole that their stitches name") {
  const Figure figure = placed(test::gnome()).figures.at(0);
  const std::vector<Placed> eyes = signs_of(figure, Sign::eye);
  REQUIRE(eyes.size() == 2);
  const Ring &inner = figure.rings.at(7), &outer = figure.rings.at(8);
  for (const Placed& eye : eyes) {
    CHECK(radius(eye.at) > inner.outer - 0.25);
    CHECK(radius(eye.at) < outer.inner + 0.25);
  }
  const auto head = [&](std::uint32_t n) {
    return angle(figure.tips[figure.items[inner.first_item + n - 1].first_tip]);
  };
  const double turn = angle(eyes[0].at) < 0 ? angle(eyes[0].at) + 2 * 3.14159265358979 : angle(eyes[0].at);
  CHECK(turn > head(14));
  CHECK(std::abs(turn - (head(15) + head(16) + 2 * 3.14159265358979 * (head(16) < 0 ? 1 : 0)) / 2) *
            inner.outer <
        0.8);
}

TEST_CASE("every tenth stitch has a tick where eyes are to be found by counting") {
  CHECK(texts_of(signs_of(placed(test::gnome()).figures.at(0), Sign::tick)) ==
        std::vector<std::string>{"10", "20", "30"});
}

TEST_CASE("where nothing is to be counted there are no ticks") {
  for (const Figure& figure : placed(test::cap()).figures) CHECK(signs_of(figure, Sign::tick).empty());
}

TEST_CASE("numbers stand beside their ring where other stitches follow outside") {
  fabric::Fabric fabric = test::ball({6, 12, 18, 24, 30});
  test::place(fabric, 2, {6, 12});
  const Figure figure = placed(fabric).figures.at(0);
  const std::vector<Placed> ticks = signs_of(figure, Sign::tick);
  CHECK(texts_of(ticks) == std::vector<std::string>{"10"});
  CHECK(radius(ticks.at(0).text_at) < figure.rings.at(3).outer);
}

TEST_CASE("rings move apart where an eye finds no room between them") {
  fabric::Fabric fabric = test::ball({12, 24, 24, 24});
  const double close = placed(fabric).figures.at(0).rings.at(2).inner;
  test::place(fabric, 1, {1, 2, 3, 4, 5, 6, 7, 8, 9, 10});
  CHECK(placed(fabric).figures.at(0).rings.at(2).inner > close);
}

TEST_CASE("a pair of eyes shows the front, a marker alone does not") {
  fabric::Fabric marked = test::ball({6, 12, 18});
  test::place(marked, 1, {3}, pattern::What::marker);
  CHECK(texts_of(signs_of(placed(marked).figures.at(0), Sign::front)) == std::vector<std::string>{"front"});
  CHECK(signs_of(placed(test::gnome()).figures.at(0), Sign::front).empty());
}

TEST_CASE("the front is at the bottom of the figure") {
  fabric::Fabric marked = test::ball({6, 12, 18});
  test::place(marked, 1, {3}, pattern::What::marker);
  const Figure figure = placed(marked).figures.at(0);
  const Placed front = signs_of(figure, Sign::front).at(0);
  CHECK(front.at.x == 0);
  CHECK(front.at.y < -figure.rings.back().outer);
}

TEST_CASE("a round whose loops are used has the part's letter outside each head, and room for it") {
  const Figure stem = placed(test::toadstool()).figures.at(0);
  const std::vector<Placed> loops = signs_of(stem, Sign::free_loop);
  CHECK(texts_of(loops) == std::vector<std::string>(24, "B"));
  const Ring& owner = stem.rings.at(4);
  for (const Placed& loop : loops) CHECK(radius(loop.at) == Approx(owner.outer + 0.48));
  CHECK(stem.rings.at(5).inner - owner.outer == Approx(0.30 + 0.46 + 0.72));
}

TEST_CASE("a part in loops is drawn on its owner's faint round, from an open centre that says which") {
  const Figure skirt = placed(test::toadstool()).figures.back();
  REQUIRE(skirt.rings.size() == 2);
  CHECK(skirt.rings[0].echo);
  CHECK(skirt.rings[0].owner);
  CHECK(skirt.rings[0].round == 4);
  CHECK(skirt.form == Form::disc);
  CHECK(skirt.centre == Centre::open);
  CHECK(skirt.centre_text.at(0).text == "stem");
  CHECK(skirt.centre_text.at(1).text == "round 5");
}

TEST_CASE("an owner's round has numbers in its own order and no pointer") {
  const Figure skirt = placed(test::toadstool()).figures.back();
  CHECK(texts_of(signs_of(skirt, Sign::tick)) == std::vector<std::string>{"1", "5", "10", "15", "20"});
  CHECK(skirt.pointers.size() == 1);
}

TEST_CASE("yarn is joined at the first loop, before its first stitch") {
  const Figure skirt = placed(test::toadstool()).figures.back();
  const std::vector<Placed> attach = signs_of(skirt, Sign::attach), loops = signs_of(skirt, Sign::free_loop);
  REQUIRE(attach.size() == 1);
  CHECK(radius(attach[0].at - loops[0].at) == Approx(0.50));
  CHECK(angle(attach[0].at) < angle(loops[0].at));
}

TEST_CASE("a part that runs with its owner shows the owner's stitches in their order") {
  const Figure skirt = placed(test::toadstool()).figures.back();
  CHECK_FALSE(skirt.rings[0].against);
  CHECK(skirt.items[0].first < skirt.items[1].first);
}

TEST_CASE("a part that runs against its owner shows it from the other end") {
  const Figure skirt = placed(test::toadstool({4, 2, 0, 0, true})).figures.back();
  CHECK(skirt.rings[0].against);
  CHECK(skirt.items[0].first > skirt.items[1].first);
  CHECK_FALSE(skirt.clockwise);
}

TEST_CASE("a part begun in the middle of its owner's round begins beside the gutter") {
  const Figure skirt = placed(test::toadstool({4, 1, 7, 0, false})).figures.back();
  CHECK(fabric::index_in_round(test::toadstool(), skirt.items[0].first) == 8);
  CHECK(skirt.rings[0].items == 24);
}

TEST_CASE("of an owner only a few of whose loops are used, these are shown") {
  CHECK(placed(test::toadstool({4, 2, 3, 5, false})).figures.back().rings[0].items == 5);
}

TEST_CASE("a part that draws its loops together at once is a disc inward") {
  test::Ball ball;
  ball.begin("stem").to(6).to(12).to(24).to(24, stitch::back);
  ball.begin("lid", fabric::Start::free_loops).round(test::Steps(12, {"sc2tog"})).to(6).gather();
  const fabric::Round& first = ball.fabric.rounds[4];
  for (std::uint32_t i = 0; i < 24; ++i)
    ball.fabric.legs[ball.fabric.stitches[first.first_stitch].first_leg + i].into = {
        ball.fabric.rounds[2].first_stitch + i, fabric::On::top, stitch::front};
  const Figure lid = placed(ball.fabric).figures.back();
  CHECK(lid.form == Form::disc_inward);
  CHECK(lid.rings.back().owner);
}

TEST_CASE("a whole round in another yarn has a flag behind its count, and one where the yarn changes back") {
  fabric::Fabric fabric = test::ball({6, 12, 18, 24});
  test::dye(fabric, 2, 2);
  const std::vector<Placed> flags = signs_of(placed(fabric).figures.at(0), Sign::flag);
  CHECK(texts_of(flags) == std::vector<std::string>{"2", "1"});
  CHECK(flags.at(0).ring == 2);
}

TEST_CASE("stitches in another yarn than the main one lie on a ground, side by side on one") {
  fabric::Fabric fabric = test::ball({6, 12, 24});
  test::dye(fabric, 2, 2, 3, 5);
  test::dye(fabric, 2, 2, 8, 9);
  const Figure figure = placed(fabric).figures.at(0);
  REQUIRE(figure.grounds.size() == 2);
  CHECK(figure.grounds[0].yarn == 2);
  CHECK(figure.grounds[0].outline.size() % 3 == 1);
  CHECK(figure.grounds[0].outline.front() == figure.grounds[0].outline.back());
}

TEST_CASE("a part in another yarn than most of the piece lies on a ground and has a flag") {
  test::Ball ball;
  ball.begin("cap").to(6).to(12).to(18).begin("stem").to(6).to(6);
  for (const std::uint32_t round : {3U, 4U}) test::dye(ball.fabric, round, 2);
  const Placement placement = placed(ball.fabric);
  CHECK(placement.figures.front().grounds.empty());
  CHECK_FALSE(placement.figures.back().grounds.empty());
  std::vector<std::string> flags;
  for (const Figure& figure : placement.figures)
    for (const std::string& text : texts_of(signs_of(figure, Sign::flag))) flags.push_back(text);
  CHECK(flags == std::vector<std::string>{"2"});
}

TEST_CASE("a piece wholly in the second yarn has no ground") {
  fabric::Fabric fabric = test::ball({6, 12});
  for (std::uint32_t round = 0; round < 2; ++round) test::dye(fabric, round, 2);
  CHECK(placed(fabric).figures.at(0).grounds.empty());
}

TEST_CASE("a faint round has no ground and no loops of other parts") {
  fabric::Fabric fabric = test::ball({6, 12, 6}, true);
  test::dye(fabric, 1, 2);
  for (const Figure& figure : placed(fabric).figures)
    for (const Ground& ground : figure.grounds) CHECK_FALSE(figure.rings[ground.ring].echo);
}
