/// Groups of stitches with chains among them, in one stitch of a disc.

#include "layout/sign.hpp"

#include "law.hpp"
#include "standing.hpp"
#include "typed.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

using namespace whorl;
using namespace whorl::layout;

using test::Typed;

namespace {

const std::string disc = "Thistle\n\nTerms: US\n\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\n";

Point head(const Item& item) { return item.foot + item.height * item.up; }

double apart(Point a, Point b) { return std::sqrt((a.x - b.x) * (a.x - b.x) + (a.y - b.y) * (a.y - b.y)); }

/// The items of a ring that go into something, in the order of work.
std::vector<Item> standing_in(const Figure& figure, const Ring& ring) {
  std::vector<Item> all;
  for (std::uint32_t i = ring.first_item; i < ring.first_item + ring.items; ++i)
    if (figure.items[i].feet > 0) all.push_back(figure.items[i]);
  return all;
}

} // namespace

TEST_CASE("stitches with chains between them fan out of the one stitch that they go into") {
  const Typed typed(disc + "Rnd 3: (sc, inc) x 6 (18)\nRnd 4: (sc, skip 1, (hdc, ch 2, hdc) in next) x 6\n");
  REQUIRE(typed.figures.size() == 1);
  const Ring& ring = typed.ring(3);
  const std::vector<Item> items = standing_in(typed.figures[0], ring);
  REQUIRE(items.size() == 18);
  for (std::size_t i = 0; i < 18; i += 3)
    CHECK(apart(items[i + 1].foot, items[i + 2].foot) < 0.5 * apart(head(items[i + 1]), head(items[i + 2])));
  CHECK(ring.inner < typed.ring(2).outer + 0.6);
  test::check_law(typed);
}

TEST_CASE("the chains of a petal lead up beside its tall stitches") {
  const Typed typed("Wood anemone\n\nTerms: US\n\nRnd 1: 12 sc in MR (12)\n"
                    "Rnd 2: (sl st, ch 3, 2 dc, ch 3, sl st) in each st around\n");
  REQUIRE(typed.figures.size() == 1);
  const Figure& figure = typed.figures[0];
  const Ring& ring = typed.ring(1);
  CHECK(ring.outer < typed.ring(0).outer + 5);
  double low = 1e9, high = 0; // of the chains
  for (std::uint32_t i = ring.first_item; i < ring.first_item + ring.items; ++i)
    if (figure.items[i].feet == 0) {
      const double far = apart(figure.items[i].foot, {0, 0});
      low = std::min(low, far), high = std::max(high, far);
    }
  CHECK(high - low > 1.2);
  test::check_law(typed);
}

TEST_CASE("chains between two low stitches bow outward") {
  test::check_law(Typed(disc + "Rnd 3: (sc, ch 3, sc) in each st around\n"));
}

TEST_CASE("groups give way where a figure would be much larger for them") {
  const Typed typed(disc +
                    "Rnd 3: ((sc, ch 2, sc) in next, sc in next) x 6 (18)\nRnd 4: (skip 1, 2 sc) x 6\n");
  REQUIRE(typed.figures.size() == 2);
  CHECK(typed.figures[1].high.x < 8);
}

TEST_CASE("a line that leads a leg on begins at the end of the leg") {
  const Typed typed(
      "Cliff fern\n\nTerms: US\n\nRow 1: ch 34, dc in 4th ch from hook, dc in next 3 ch, dc3tog, dc in "
      "next 3 ch, (3 dc in next ch, dc in next 3 ch, dc3tog, dc in next 3 ch) x 2, 2 dc in last ch, "
      "turn\nRow 2: ch 3 (counts as dc), dc in next 3, dc3tog, dc in next 3, (3 dc in next, dc in next 3, "
      "dc3tog, dc in next 3) x 2, dc in last st\n");
  REQUIRE(typed.figures.size() == 1);
  const Figure& figure = typed.figures[0];
  int lines = 0;
  for (const Stroke& stroke : figure.strokes) {
    if (stroke.line != Line::stem) continue;
    ++lines;
    const auto ends_there = [&](const test::Patch& patch) {
      return patch.what != "line" && layout::distance(patch.outline, Convex{stroke.points.front()}) < 0.05;
    };
    const std::vector<test::Patch> patches = test::patches_of(figure, typed.extents);
    CHECK(std::any_of(patches.begin(), patches.end(), ends_there));
  }
  CHECK(lines > 0);
  CHECK(typed.air() > 0.05);
}

TEST_CASE("what shares a stitch of an oval fans out of it as in a disc") {
  const Typed typed(
      "Oak leaf\n\nTerms: US\n\nCh 8.\nRnd 1: 3 sc in 2nd ch from hook, sc in next 5 ch, 3 sc in last ch, "
      "working along other side sc in next 5 ch. (16)\nRnd 2: 2 sc in next 3 sts, sc in next 5, 2 sc in next "
      "3 "
      "sts, sc in next 5. (22)\nRnd 3: sc in next 2 sts, ((hdc, dc, hdc) in next st, sc in next 3 sts) 5 "
      "times. (32)\n");
  test::check_law(typed);
  const Figure& figure = typed.figures.at(0);
  REQUIRE(figure.form == Form::oval);
  const std::vector<Item> standing = standing_in(figure, typed.ring(3));
  REQUIRE(standing.size() == 32);
  for (std::size_t i = 2; i < standing.size(); i += 6) {
    CHECK(apart(standing[i].foot, standing[i + 2].foot) < 0.8);
    CHECK(apart(head(standing[i]), head(standing[i + 2])) > apart(standing[i].foot, standing[i + 2].foot));
  }
}

TEST_CASE("an oval whose first round is joined to the top of the chains skipped is an oval") {
  const Typed typed(
      "Bark bag\n\nTerms: US\n\nCh 10.\nRnd 1: dc in 4th ch from hook, dc in next 5 ch, 6 dc in last "
      "ch, working along other side dc in next 5 ch, 4 dc in next ch, sl st to top of ch.\n");
  CHECK(test::not_shown_once(typed.fabric, typed.figures) == "");
  const Figure& figure = typed.figures.at(0);
  CHECK(figure.form == Form::oval);
  for (const Item& item : figure.items) CHECK(item.count == 1); // they fan round both ends
}
