/// Ears, thumbs and spikes along a chain in the middle of a round, and stitches that cross. Common practice,
/// no source.

#include "text.hpp"

#include <catch2/catch.hpp>

using namespace whorl;
using test::Text;

namespace {

const std::string head = "Moss gnome\nTerms: US\nHead\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\n"
                         "Rnd 3: (sc, inc) x 6 (18)\nRnd 4: ";

std::string spur_of(const Text& text) {
  for (const fabric::Stitch& stitch : text.worked.fabric.stitches)
    if (const auto& kind = text.worked.fabric.kinds[stitch.kind]; !stitch::back_along(kind).empty())
      return kind.name;
  return "";
}

} // namespace

TEST_CASE("Stitches back along a chain stand on the round and use none of its places") {
  const char* spur = GENERATE("ch 4, sc in 2nd ch from hook, sc in next 2 ch, sc in next 12",
                              "ch 4, starting in 2nd ch from hook sc in next 3 ch, sc in next 12",
                              "ch 4, turn, sc in 2nd ch from hook and next 2 ch, sc in next 12",
                              "ch 4, 3 sc back along the chain, sc in next 12",
                              "ch 4, work back down the ch: 3 sc, sc in next 12",
                              "ch 4, sc in 2nd ch from hook, sc 2, sl st in same st, sc in next 12",
                              "[ch 4, sc in 2nd ch from hook, sc in next 2 ch], sc in next 12");
  CAPTURE(spur);
  const Text text(head + "sc in next 6, " + spur + "\nRnd 5: sc around (18)\n");
  CHECK(text.said == "");
  CHECK(spur_of(text) == "ch4+3sc");
  CHECK(text.last().uses == 18);
}

TEST_CASE("A count may leave the stitches along a chain out or count them") {
  const int count = GENERATE(18, 24);
  const Text text(head + "(sc in next 9, ch 4, sc in 2nd ch from hook, hdc, dc) x 2 (" +
                  std::to_string(count) + ")\nRnd 5: sc around (18)\n");
  CHECK(text.said == "");
}

TEST_CASE("A count that the stitches along a chain do not explain is an error") {
  const Text text(head + "sc 9, ch 4, sc in 2nd ch from hook, sc in next 2 ch, sc 9 (20)\n");
  CHECK(text.said == "round 4 makes 18 stitches, the pattern says 20\n");
}

TEST_CASE("A chain at the head of a piece begins it") {
  const Text text("Leaf\nTerms: US\nRow 1: ch 6, sl st in 2nd ch from hook, sc, hdc, dc, sc (4)\n");
  CHECK(spur_of(text) == "");
}

TEST_CASE("Of crossed stitches the second goes into the place that was skipped") {
  const char* crossed = GENERATE("skip next st, dc in next st, dc in skipped st",
                                 "sk 1, dc in next, working in front of dc just made, dc in skipped st",
                                 "skip 1, dc in next st, working behind, dc in the skipped st");
  CAPTURE(crossed);
  const Text text("Ivy band\nTerms: US\nRow 1: ch 9, sc in 2nd ch from hook and in each ch across, turn (8)\n"
                  "Row 2: ch 1, *" +
                  std::string(crossed) + "; rep from * across (8)\n");
  CHECK(text.said == "");
  CHECK(text.into(1) == "part-1-7");
  CHECK(text.into(2) == "part-1-8");
}

TEST_CASE("A cable goes into the places skipped in the order they lie") {
  const Text text("Ivy band\nTerms: US\nRow 1: ch 9, sc in 2nd ch from hook and in each ch across, turn (8)\n"
                  "Row 2: ch 1, *sk 2, FPtr in next 2, FPtr in the 2 skipped; rep from * across (8)\n");
  CHECK(text.said == "");
  CHECK(text.into(3) == "part-1-8");
  CHECK(text.into(4) == "part-1-7");
}
