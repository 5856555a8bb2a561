#include "told.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

namespace {

const std::string start = "Mouse\n\n1. 6 sc in MR (6)\n2. inc x 6 (12)\n";

} // namespace

TEST_CASE("a number behind a label is a whole round of that many stitches") {
  CHECK(counts(start + "3. 12\n4-6. 12\n7. (2, dec) x 3 (9)\n8. 9 (9)\n") == "6 12 12 12 9 9");
  CHECK(counts("Mouse\n\nRnd 1: 6 sc in MR\nRnd 2: 6\nRnd 3: 6.\n") == "6 6 6");
}

TEST_CASE("a number alone may have its loops beside it") {
  for (const char* round : {"BLO 12", "BLO 12 (12)", "in back loops only: 12", "12 BLO", "12 (12)"}) {
    INFO(round);
    CHECK(counts(start + "3. " + round + "\n") == "6 12 12");
  }
}

TEST_CASE("numbers that run on from 1 are labels without a mark behind them") {
  CHECK(counts("Owl\n\nHead\n1 mc, 6 sc\n2 6 inc 12\n3 1sc inc *6 18\n4 to 6 sc all round 18\n7-8 18 sc\n") ==
        "6 12 18 18 18");
  CHECK(read_text("Owl\n\nHead\n1 mc, 6 sc\n2 6 inc 12\n3 to 6 sc all round 12\n").tree.rounds.back().to ==
        6);
}

TEST_CASE("a round of one stitch in each as the count says is told in no note") {
  for (const char* round : {"sc - 12", "12 sc (12)", "sc 12 = 12"})
    for (const whorl::pattern::Finding& found : read_text(start + "3. " + round + "\n").findings)
      CHECK(found.code != "reading");
}

TEST_CASE("numbers alone stand among increases and decreases where the line states its count") {
  CHECK(counts(start + "3. dec, 10 (11)\n") == "6 12 11");
  CHECK(counts(start + "3. 5, dec, 5 (11)\n") == "6 12 11");
  CHECK(counts(start + "3. inc, 10, inc (14)\n") == "6 12 14");
}

TEST_CASE("a number alone among named stitches lacks one") {
  const auto read = read_text(start + "3. 5 sc, 6, inc (13)\n");
  CHECK(std::any_of(read.findings.begin(), read.findings.end(), [](const whorl::pattern::Finding& found) {
    return found.message == "I do not know what `6` is to do here";
  }));
}

TEST_CASE("so many increases or decreases are spread over the round that the count tells") {
  CHECK(counts("Cap\n\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\nRnd 3: increase 6 evenly around (18)\n"
               "Rnd 4: 6 increases, evenly spaced (24)\nRnd 5: decrease 6 evenly (18)\n") == "6 12 18 24 18");
}

TEST_CASE("increases or decreases at both ends of a row leave the plain stitches to the count") {
  CHECK(counts("Leaf\n\nCh 9\nRow 1: sc in 2nd ch from hook and in each ch (8), turn\n"
               "Row 2: ch 1, increase 1 at each end (10), turn\nRow 3: ch 1, dec at both ends (8)\n") ==
        "8 10 8");
}

TEST_CASE("a last slip stitch by itself joins a round that stands on chains") {
  CHECK(counts("Doily\n\nRnd 1: ch 3, 15 dc in MR, sl st (16)\nRnd 2: ch 1, 16 sc, sl st (16)\n") == "16 16");
}
