#include "layout/figure.hpp"

#include "balls.hpp"
#include "layout/plan.hpp"

#include <catch2/catch.hpp>
#include <cmath>

using namespace whorl;
using namespace whorl::layout;

namespace {

std::vector<Drawn> drawn(const fabric::Fabric& fabric, const Page& page = {}) {
  const Extents extents = test::extents_of(fabric);
  const Folding folding(fabric);
  std::vector<Drawn> all;
  for (std::uint32_t part = 0; part < fabric.parts.size(); ++part)
    for (const Section& section : sections_of(fabric, part))
      for (Plan& plan : plan_section(fabric, part, section, folding, page, all.size())) {
        plan.keep_problems = true;
        if (!plan.strip) all.push_back(draw_disc(fabric, plan, extents, page));
      }
  return all;
}

Figure figure_of(const fabric::Fabric& fabric, std::size_t number) {
  return drawn(fabric).at(number - 1).figure;
}

std::vector<std::string> inks_of(const fabric::Fabric& fabric) {
  std::vector<std::string> inks;
  for (const Drawn& one : drawn(fabric)) {
    std::string text;
    for (const Ring& ring : one.figure.rings) text += ring.echo ? 'e' : ring.ink == 0 ? 'b' : 'r';
    inks.push_back(text);
  }
  return inks;
}

std::size_t strokes(const Figure& figure, Line line) {
  std::size_t count = 0;
  for (const Stroke& stroke : figure.strokes) count += stroke.line == line ? 1 : 0;
  return count;
}

} // namespace

TEST_CASE("every ring is laid at the optimum, to 1e-9") {
  for (std::uint64_t seed = 0; seed < 300; ++seed)
    for (const Drawn& one : drawn(test::random_ball(seed)))
      for (const Laid& laid : one.laid) {
        const Optimum optimum = check_optimum(laid.strung, laid.at);
        if (optimum.worst_gap > 1e-9 || optimum.worst_force > 1e-9)
          FAIL("seed " << seed << ": gap " << optimum.worst_gap << ", force " << optimum.worst_force);
      }
}

TEST_CASE("the gaps that a ring wants fill it") {
  for (const Drawn& one : drawn(test::gnome()))
    for (const Laid& laid : one.laid) {
      double sum = 0;
      for (const double gap : laid.strung.wanted) sum += gap;
      CHECK(sum == Approx(laid.strung.length).margin(1e-9));
    }
}

TEST_CASE("slots of growing rounds are between 0.96 and 1.5 wide") {
  const Drawn one = drawn(test::ball({6, 12, 18, 24, 30, 36, 42, 48, 54, 60})).at(0);
  for (const Size& size : one.sizes) {
    CHECK(size.slot >= 0.96);
    CHECK(size.slot < 1.5);
  }
}

TEST_CASE("inks alternate along the part, a fold is one ring, a figure does not begin again") {
  // from the centre outward: rounds 1-6, 7-9, 10, 11 | 14 13 12 | 15, 16, 17-22 | 26 25 24 23, echoes marked
  CHECK(inks_of(test::gnome()) == std::vector<std::string>{"brbrbrbrb", "rbre", "ebrb", "brbre"});
}

TEST_CASE("a figure after the first repeats the round before it, faint, next to its own first round") {
  const Figure inward = figure_of(test::gnome(), 2), outward = figure_of(test::gnome(), 3);
  CHECK(inward.rings.back().echo);
  CHECK(inward.rings.back().round == 10);
  CHECK(outward.rings.front().echo);
  CHECK(outward.rings.front().round == 13);
}

TEST_CASE("an echo of a folded ring is its last round alone") {
  const Figure closing = figure_of(test::gnome(), 4);
  CHECK(closing.rings.back().round == 21);
  CHECK(closing.labels.back().runs.at(0).text == "22");
  CHECK(closing.labels.back().tone == Tone::grey);
}

TEST_CASE("an echo carries no loop marks and no second line") {
  test::Ball ball;
  ball.begin("ball").to(6).to(12).to(12, stitch::back).to(6).gather();
  const Figure closing = figure_of(ball.fabric, 2);
  for (std::uint32_t i = closing.rings.back().first_item; i < closing.items.size(); ++i)
    CHECK(closing.items[i].key.loops == stitch::both);
  CHECK(closing.labels.size() == closing.rings.size());
}

TEST_CASE("discs outward run anticlockwise and discs inward clockwise") {
  CHECK_FALSE(figure_of(test::gnome(), 1).clockwise);
  CHECK(figure_of(test::gnome(), 2).clockwise);
  CHECK(figure_of(test::gnome(), 2).form == Form::disc_inward);
}

TEST_CASE("a neck is an open centre with its name and where it comes from") {
  const Figure inward = figure_of(test::gnome(), 2), outward = figure_of(test::gnome(), 3);
  CHECK(inward.centre == Centre::open);
  CHECK(inward.centre_text.at(0).text == "neck");
  CHECK(inward.centre_text.at(1).text == "open");
  CHECK(outward.centre == Centre::open);
  CHECK(outward.centre_text.at(1).text == "from figure 2");
}

TEST_CASE("the name of a neck has room in the middle of a very narrow one") {
  test::Ball ball;
  ball.begin("ball").to(6).to(12).to(4).to(8);
  const Figure neck = figure_of(ball.fabric, 3);
  CHECK(neck.centre_radius > neck.centre_text.at(1).width / 2);
}

TEST_CASE("a closing is gathered inside a dashed circle, within its last ring") {
  const Figure closing = figure_of(test::gnome(), 4);
  CHECK(closing.centre == Centre::gathered);
  CHECK(strokes(closing, Line::gathering) == 1);
  CHECK(closing.centre_radius < closing.rings.front().inner - 0.29);
}

TEST_CASE("the first disc has what the part begins with in its middle") {
  CHECK(figure_of(test::ball({6}), 1).centre == Centre::magic_ring);
  test::Ball chain;
  chain.begin("ball", fabric::Start::second_chain).to(6);
  CHECK(figure_of(chain.fabric, 1).centre == Centre::second_chain);
  test::Ball ring;
  ring.begin("ball", fabric::Start::chain_ring).to(24);
  CHECK(figure_of(ring.fabric, 1).centre == Centre::chain_ring);
}

TEST_CASE("six stitches in one chain are six symbols, two in one stitch are one") {
  test::Ball chain;
  chain.begin("ball", fabric::Start::second_chain).to(6).to(12);
  for (fabric::StitchId s = 0; s < 6; ++s)
    chain.fabric.legs[s].into = {0, fabric::On::chain_side, stitch::both};
  const Figure figure = figure_of(chain.fabric, 1);
  CHECK(figure.rings[0].items == 6);
  CHECK(figure.rings[1].items == 6);
}

TEST_CASE("a break line stands outside every folded ring, also when it is the last") {
  const Figure figure = figure_of(test::ball({6, 12, 18, 18, 18, 18}), 1);
  CHECK(figure.rings.back().last_before_break);
  CHECK(strokes(figure, Line::fold_break) == 1);
  CHECK(strokes(figure_of(test::ball({6, 12, 18, 18, 18}), 1), Line::fold_break) == 0);
}

TEST_CASE("a break line's ring stands apart from the next") {
  const Figure figure = figure_of(test::ball({6, 12, 18, 18, 18, 18, 24}), 1);
  CHECK(figure.rings.at(4).inner - figure.rings.at(3).outer == Approx(0.30 + 0.85));
}

TEST_CASE("without folding every round is a ring") {
  Page page;
  page.fold = false;
  CHECK(drawn(test::ball({6, 12, 18, 24, 24, 24, 24}), page).at(0).figure.rings.size() == 7);
}

TEST_CASE("every ring has a label and a pointer that lies on it along the work") {
  for (const Drawn& one : drawn(test::gnome())) {
    const Figure& figure = one.figure;
    CHECK(figure.pointers.size() == figure.rings.size());
    for (const Pointer& pointer : figure.pointers) {
      const Point middle = pointer.tip - pointer.length / 2 * pointer.direction;
      CHECK(std::sqrt(middle.x * middle.x + middle.y * middle.y) ==
            Approx(figure.rings[pointer.ring].middle));
      CHECK((pointer.direction.x > 0) == figure.clockwise);
    }
  }
}

TEST_CASE("an arrow of one shaft and one head shows the direction") {
  const Figure figure = figure_of(test::gnome(), 1);
  CHECK(strokes(figure, Line::direction) == 2);
}

TEST_CASE("an invisible decrease carries no mark for the front loops it takes by nature") {
  test::Ball ball;
  ball.begin("ball").to(6).round(
      {{"invdec", 1, stitch::front}, {"invdec", 1, stitch::front}, {"sc"}, {"sc"}});
  for (const Item& item : figure_of(ball.fabric, 1).items) CHECK(item.key.loops == stitch::both);
}

TEST_CASE("two stitches of two kinds in one place stand side by side over it") {
  test::Ball ball;
  ball.begin("ball").to(12).round(test::Steps(12, test::Step{}));
  fabric::Fabric& fabric = ball.fabric;
  fabric.stitches[13].kind = *stitch::find_kind(fabric.kinds, "hdc");
  fabric.legs[13].into = fabric.legs[12].into;
  const Figure figure = figure_of(fabric, 1);
  CHECK(figure.rings[1].items == 12);
  CHECK(figure.items[13].at > figure.items[12].at);
}
