/// Figures of patterns as they are typed.

#include "typed.hpp"
#include "layout/items.hpp"
#include "layout/place.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

using namespace whorl;
using namespace whorl::layout;

using test::Typed;

namespace {

const std::string coaster =
    "Coaster\n\nRnd 1: Ch 3 (counts as dc), 11 dc in MR, join with sl st to top of "
    "ch-3 (12)\nRnd 2: Ch 3 (counts as dc), dc in same st, 2 dc in each st around, join "
    "with sl st to top of ch-3 (24)\nFasten off.\n";

double radius(Point p) { return std::sqrt(p.x * p.x + p.y * p.y); }

Point middle(const Item& chain) { return chain.foot + chain.height / 2 * chain.up; }

} // namespace

TEST_CASE("the chains that a joined round starts with stand on end in the place of one stitch") {
  const Figure figure = Typed(coaster).figures.at(0);
  for (const Ring& ring : figure.rings) {
    const Item* chains = &figure.items[ring.first_item + 1]; // behind the dot that joins
    CHECK(chains[0].at == chains[2].at);
    CHECK(radius(middle(chains[1])) - radius(middle(chains[0])) == Approx(0.72).margin(0.1));
    CHECK(chains[3].at - chains[2].at < 2.5);
  }
}

TEST_CASE(
    "the dot that joins a round stands beside the top of its first stitch, or of the chains before it") {
  const std::string spiral = "Disc\n\nRnd 1: MR, 6 hdc in ring, join (6)\nRnd 2: 2 hdc in each, join (12)\n";
  for (const std::string& text : {coaster, spiral}) {
    const Figure figure = Typed(text).figures.at(0);
    for (const Ring& ring : figure.rings) {
      const Item &dot = figure.items[ring.first_item], &next = figure.items[ring.first_item + 1];
      CHECK(dot.height == Approx(0.30));
      CHECK(dot.at < next.at);
      CHECK(next.at - dot.at < 1);
      CHECK(radius(dot.foot + dot.height * dot.up) == Approx(ring.outer).margin(0.1));
    }
  }
}

TEST_CASE("every chain and stitch of joined rounds is drawn once") {
  const Typed typed(coaster);
  std::vector<int> shown(typed.fabric.stitches.size(), 0);
  for (const Item& item : typed.figures.at(0).items)
    for (std::uint32_t j = 0; j < item.count; ++j) ++shown[item.first + j];
  CHECK(std::count(shown.begin(), shown.end(), 1) == static_cast<std::ptrdiff_t>(shown.size()));
}

TEST_CASE("nothing touches in joined rounds") { CHECK(Typed(coaster).air(0) > 0.055); }

TEST_CASE("the mark of a cut yarn stands clear of the picot that is worked last") {
  const Typed typed(
      "Cap\n\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\nRnd 3: (sc 2, picot) x 6 (12)\nFasten off.\n");
  CHECK(radius(typed.figures.at(0).cut.tip) > 0);
  CHECK(typed.air(0) > 0.055);
}

TEST_CASE("a part that is not cut off has no mark of it") {
  CHECK(Typed("Cap\n\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\n").figures.at(0).cut == Cut{});
}

TEST_CASE("a part in loops whose rounds go on as a strip keeps its first round beside its owner") {
  const Typed typed(
      "Cap\n\nCAP\nRnd 1: 5 sc in MR (5)\nRnd 2: inc x 5 (10)\nRnd 3: BLO: sc around (10)\nFasten "
      "off.\n\nFRILL\nRnd 1: working in the free front loops of Rnd 2 of the cap, sc around "
      "(10)\nRnd 2: sc around (10)\nRnd 3: sc around (10)\nFasten off.\n");
  for (const Figure& figure : typed.figures)
    CHECK(std::any_of(figure.rings.begin(), figure.rings.end(), [](const Ring& ring) { return !ring.echo; }));
}

TEST_CASE("the end of a row is no stitch") {
  CHECK_FALSE(is_stitch({3, fabric::On::row_end, stitch::front}));
  CHECK(is_stitch({3, fabric::On::top, stitch::both}));
}

TEST_CASE("a long chain joined to a ring stands inside the round that is worked into its chains one by one") {
  const Typed typed(
      "Cowl\n\nCh 60, join with sl st to form a ring.\nRnd 1: Ch 1, sc in each ch around, sl st to first "
      "sc. (60)\nRnd 2: Ch 3, dc in each st around, sl st to top of ch-3. (60)\n");
  const Figure& figure = typed.figures.at(0);
  REQUIRE(figure.rings.size() == 3);
  CHECK(figure.rings[0].chain);
  CHECK(figure.rings[0].items == 60);
  CHECK(figure.rings[0].outer < figure.rings[1].inner);
  CHECK(figure.labels.at(0).runs.front().text == "60");
  CHECK(typed.fabric.rounds[figure.first_round].number == 1);
  CHECK(typed.air(0) > 0.055);
  CHECK_FALSE(
      Typed("Disc\n\nCh 6, join.\nRnd 1: Ch 1, 12 sc in ring, join. (12)\n").figures.at(0).rings[0].chain);
}
