#include "typed.hpp"

#include "layout/direction.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace whorl;
using namespace whorl::layout;
using test::Typed;

namespace {

const std::string head =
    "Fox\n\nHEAD\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\nRnd 3: (sc, inc) x 6 (18)\n"
    "Rnd 4: (2 sc, inc) x 6 (24)\nRnd 5: in BLO, sc around (24)\n\n";

std::string ear(const std::string& begun, const std::string& first) {
  return head + "EAR\n" + begun + "\nRow 1: " + first +
         ", turn (6)\nRow 2: ch 1, dec, 2 sc, dec, turn (4)\n" + "Row 3: ch 1, 4 sc (4)\n";
}

/// With the work and against it, in the middle of the round and over its beginning.
const std::vector<std::string> ears{
    ear("Join yarn in the 4th free front loop of Rnd 4 of the head.", "sc in next 6 free loops"),
    ear("Join yarn in the 21st free front loop of Rnd 4 of the head.", "sc in next 6 free loops"),
    ear("Hold the head with its start up. Join yarn in the 4th free front loop of Rnd 4 of the head.",
        "sc in next 6 free loops"),
    ear("Hold the head with its start up. Join yarn in the 15th free front loop of Rnd 4 of the head.",
        "ch 1, sc in next 6 free loops")};

/// The stitch of a ring whose top is nearest to a point.
fabric::StitchId nearest(const Figure& figure, const Ring& ring, Point to) {
  fabric::StitchId found = fabric::none;
  double least = 1e9;
  for (std::uint32_t i = ring.first_item; i < ring.first_item + ring.items; ++i)
    for (std::uint32_t j = 0; j < figure.items[i].count; ++j)
      if (const double far = length(figure.tips[figure.items[i].first_tip + j] - to); far < least)
        least = far, found = figure.items[i].first + j;
  return found;
}

/// The stitches of a figure over which a part's letter stands.
std::vector<fabric::StitchId> lettered(const Figure& figure, const std::string& letter) {
  std::vector<fabric::StitchId> found;
  for (const Placed& placed : figure.placed)
    if (placed.sign == Sign::free_loop && placed.text.text == letter)
      found.push_back(nearest(figure, figure.rings[placed.ring], placed.at));
  std::sort(found.begin(), found.end());
  return found;
}

/// What a part's first row is worked into, in the order of work.
std::vector<fabric::StitchId> loops_of(const fabric::Fabric& fabric, std::uint32_t part) {
  std::vector<fabric::StitchId> loops;
  const fabric::Round& row = fabric.rounds[fabric.parts[part].first_round];
  for (std::uint32_t i = 0; i < row.count; ++i)
    for (const fabric::Leg& leg : fabric::legs_of(fabric, row.first_stitch + i)) loops.push_back(leg.into.of);
  return loops;
}

std::vector<fabric::StitchId> sorted(std::vector<fabric::StitchId> stitches) {
  std::sort(stitches.begin(), stitches.end());
  return stitches;
}

} // namespace

TEST_CASE("rows begun in free loops stand on their owner's faint round, and both pictures agree") {
  for (const std::string& text : ears)
    for (const Hand hand : {Hand::right, Hand::left}) {
      INFO(text);
      const Typed typed(text, hand);
      REQUIRE(typed.figures.size() == 2);
      const Figure& rows = typed.figures.back();
      CHECK(rows.form == Form::rows);
      REQUIRE(rows.rings.size() == 4);
      CHECK(rows.rings[0].owner);
      CHECK(rows.rings[0].echo);
      CHECK(rows.rings[0].round == 3);
      const std::vector<fabric::StitchId> loops = sorted(loops_of(typed.fabric, 1));
      CHECK(loops.size() == 6);
      CHECK(lettered(typed.figures.front(), "B") == loops);
      CHECK(lettered(rows, "B") == loops);
    }
}

TEST_CASE("each stitch of rows begun in free loops stands above its own loop") {
  for (const std::string& text : ears)
    for (const Hand hand : {Hand::right, Hand::left}) {
      INFO(text);
      const Typed typed(text, hand);
      const Figure& rows = typed.figures.back();
      const std::vector<fabric::StitchId> loops = loops_of(typed.fabric, 1);
      std::size_t met = 0;
      for (std::uint32_t i = rows.rings[1].first_item; i < rows.rings[1].first_item + rows.rings[1].items;
           ++i)
        for (std::uint32_t foot = 0; foot < rows.items[i].feet; ++foot)
          CHECK(nearest(rows, rows.rings[0], rows.feet[rows.items[i].first_foot + foot]) == loops.at(met++));
      CHECK(met == 6);
      CHECK(rows.rings[0].leftward == rows.rings[1].leftward);
    }
}

TEST_CASE("yarn is joined before the first loop of rows begun there") {
  for (const std::string& text : ears)
    for (const Hand hand : {Hand::right, Hand::left}) {
      INFO(text);
      const Typed typed(text, hand);
      const Figure& rows = typed.figures.back();
      const auto attach = std::find_if(rows.placed.begin(), rows.placed.end(), [](const Placed& placed) {
        return placed.sign == Sign::attach && placed.ring == 0;
      });
      REQUIRE(attach != rows.placed.end());
      std::vector<double> loops;
      for (const Placed& placed : rows.placed)
        if (placed.sign == Sign::free_loop) loops.push_back(placed.at.x);
      const auto ends = std::minmax_element(loops.begin(), loops.end());
      CHECK((rows.rings[0].leftward ? attach->at.x > *ends.second : attach->at.x < *ends.first));
    }
}

TEST_CASE("an owner's line of rows has numbers in its own order, and neither label nor pointer") {
  const Typed typed(ears[1]);
  const Figure& rows = typed.figures.back();
  std::vector<std::string> numbers;
  for (const Placed& placed : rows.placed)
    if (placed.sign == Sign::tick) numbers.push_back(placed.text.text);
  CHECK(numbers == std::vector<std::string>{"1"});
  for (const Label& label : rows.labels) CHECK(label.ring != 0);
  for (const Pointer& pointer : rows.pointers) CHECK(pointer.ring != 0);
}

TEST_CASE("a part along the other side of a chain has its letter beneath the chain, and stands on it") {
  for (const Hand hand : {Hand::right, Hand::left}) {
    const Typed typed(
        "Fern\n\nSTEM\nCh 7.\nRow 1: sc in 2nd ch from hook and in each ch across (6)\n\nFROND\n"
        "Join yarn in the other side of the stem's chain.\nRow 1: ch 1, sc in each ch across (6)\n"
        "Row 2: ch 1, turn, dec, 2 sc, dec (4)\n",
        hand);
    REQUIRE(typed.figures.size() == 2);
    const Figure &stem = typed.figures.front(), &frond = typed.figures.back();
    const std::vector<fabric::StitchId> loops = sorted(loops_of(typed.fabric, 1));
    CHECK(loops.size() == 6);
    CHECK(lettered(stem, "B") == loops);
    CHECK(lettered(frond, "B") == loops);
    for (const Placed& placed : stem.placed)
      if (placed.sign == Sign::free_loop) CHECK(placed.at.y < stem.rings[0].inner);
    for (const Placed& placed : frond.placed)
      if (placed.sign == Sign::free_loop) CHECK(placed.at.y > frond.rings[0].outer);
    for (std::size_t i = 0; i < 2; ++i) CHECK(typed.air(i) >= 0.055);
  }
}

TEST_CASE("nothing touches in rows begun in free loops") {
  for (const std::string& text : ears)
    for (const Hand hand : {Hand::right, Hand::left}) {
      const Typed typed(text, hand);
      for (std::size_t i = 0; i < typed.figures.size(); ++i) CHECK(typed.air(i) >= 0.055);
    }
}
