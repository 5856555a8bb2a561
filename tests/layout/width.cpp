#include "layout/width.hpp"

#include "balls.hpp"
#include "typed_lace.hpp"
#include "layout/divide.hpp"
#include "layout/place.hpp"

#include "fabric/work.hpp"
#include "pattern/read.hpp"

#include <catch2/catch.hpp>

using namespace whorl;
using namespace whorl::layout;

namespace {

fabric::Fabric worked(const std::string& text) {
  const pattern::Source source(text);
  return fabric::work(pattern::read(source, *words::find_vocabulary("en-US")).tree).fabric;
}

/// That of the last round.
Width last_width(const std::string& rounds) {
  const fabric::Fabric fabric = worked("Moss\n\n" + rounds);
  return widths_of(fabric, {static_cast<std::uint32_t>(fabric.rounds.size() - 1)}).front();
}

std::vector<Form> forms(const std::string& text) {
  const fabric::Fabric fabric = worked(text);
  std::vector<Form> forms;
  for (const Figure& figure : place(fabric, test::extents_of(fabric), {}).figures)
    forms.push_back(figure.form);
  return forms;
}

std::vector<Stretch> divided(const std::vector<Width>& widths, bool gathered = false) {
  return divide(widths, {true, gathered});
}

using Stretches = std::vector<Stretch>;

constexpr Width plain(std::uint64_t stitches) { return {100 * stitches, 100 * stitches}; }
constexpr Width lace(std::uint64_t least, std::uint64_t greatest) { return {100 * least, 100 * greatest}; }

} // namespace

TEST_CASE("a round of plain stitches is as wide as they are") {
  CHECK(last_width("Rnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\n") == Width{1200, 1200});
}

TEST_CASE("a round with chain spaces is as wide as it is pulled") {
  CHECK(last_width("Rnd 1: 12 sc in MR (12)\nRnd 2: ch 1, (sc in next st, ch 3, skip 1) 6 times, join\n") ==
        Width{600 + 18 * 37, 600 + 18 * 100});
}

TEST_CASE("the heads of a shell may crowd") {
  CHECK(last_width("Rnd 1: 6 sc in MR (6)\nRnd 2: (sc in next st, 5 dc in next st) 3 times\n") ==
        Width{300 + 3 * 300, 300 + 3 * 500});
}

TEST_CASE("chains that join two edges and are worked into are no space") {
  CHECK(last_width(
            "LEG (make 2)\nRnd 1: 6 sc in MR (6)\nFasten off the first leg, not the second.\n\nBODY\n"
            "Rnd 2: ch 3, 6 sc around the first leg, sc in each of the 3 ch, 6 sc around the second leg, "
            "sc in the other side of each of the 3 ch (18)\n") == Width{1800, 1800});
}

TEST_CASE("lace that may be as wide as the round before stays in its disc") {
  CHECK(divided({plain(12), plain(24), lace(25, 48), plain(84)}) == Stretches{{0, 3, false}});
  CHECK(divided({plain(12), plain(24), lace(16, 24), plain(24)}) == Stretches{{0, 3, false}});
}

TEST_CASE("lace that draws in by no more than a third makes no neck") {
  CHECK(divided({plain(12), plain(36), plain(60), lace(25, 40), plain(60)}) == Stretches{{0, 4, false}});
  CHECK(divided({plain(12), plain(36), plain(60), lace(25, 39), plain(60)}) ==
        Stretches{{0, 2, false}, {3, 3, true}, {4, 4, false}});
}

TEST_CASE("lace that draws in to a closing is turned inward") {
  CHECK(divided({plain(12), plain(24), lace(16, 23), lace(8, 12)}, true) ==
        Stretches{{0, 1, false}, {2, 3, true}});
}

TEST_CASE("behind lace that drew in a little the same disc goes on") {
  CHECK(divided({plain(30), lace(20, 28), plain(28), plain(36), plain(18), plain(30)}) ==
        Stretches{{0, 3, false}, {4, 4, true}, {5, 5, false}});
}

TEST_CASE("a doily, a mandala, a motif or a bowl of lace is one disc") {
  for (const std::string& text : test::lace()) {
    INFO(text);
    const std::vector<Form> found = forms(text);
    REQUIRE(found.size() == 1);
    CHECK((found.front() == Form::disc || found.front() == Form::motif));
  }
}
