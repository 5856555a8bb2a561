#include "text.hpp"

#include <catch2/catch.hpp>

#include <string>

using namespace whorl;
using test::Text;

namespace {

const std::string disc = "Moss doily\n\nRnd 1: MR, ch 3 (counts as dc), 11 dc in ring, join. (12 dc)\n"
                         "Rnd 2: ch 3 (counts as dc), dc in same st, 2 dc in each st around, join. (24 dc)\n";
const std::string loops = disc + "Rnd 3: *ch 5, skip 1, sc in next* 12 times. (12 loops)\n";

} // namespace

// Common practice, no source
TEST_CASE("chains at the head of a repeat are a loop in its first pass too") {
  const Text text(loops + "Rnd 4: 5 sc in each loop around, join. (60)\n");
  CHECK(text.said == "");
  CHECK(text.last().counted == 60);
}

TEST_CASE("chains at the head of a round that lead over skipped stitches are a loop") {
  const Text text(disc +
                  "Rnd 3: ch 5, skip 1, sc in next, *ch 5, skip 1, sc in next; rep from * around. (12 sc)\n"
                  "Rnd 4: 5 sc in each loop around, join. (60)\n");
  CHECK(text.said == "");
  CHECK(text.last().counted == 60);
}

TEST_CASE("a number of stitches goes into the chains over a thumb hole as into stitches") {
  const std::string hand =
      "Mitt\n\nRnd 1: 32 sc in MR (32)\nRnd 2: sc in 12, ch 2, sk 8, sc in 12 (26)\nRnd 3: ";
  for (const char* work : {"sc in 12, sc in 2 ch, sc in 12", "sc in 12, sc in next 2 chs, sc in 12",
                           "12 sc, 2 sc into the chains, 12 sc", "sc around"}) {
    const Text text(hand + work + " (26)\n");
    INFO(work);
    CHECK(text.said == "");
    CHECK(text.last().counted == 26);
  }
}

TEST_CASE("chains at the head of a round that climb are none") {
  const Text text(disc + "Rnd 3: ch 1, sc in each st around, join. (24)\n");
  CHECK(text.said == "");
  CHECK(text.last().spaces == 0);
}

// Common practice, no source
TEST_CASE("a loop of chains is named in many ways, and its number is no count") {
  for (const char* name : {"ch-5 loop", "ch-5 lp", "ch 5 loop", "5-ch loop", "ch5 lp", "chain-5 loop", "loop",
                           "lp", "ch-5 sp", "ch loop", "arch", "ch-5 arch", "5 ch lp"}) {
    CAPTURE(name);
    const Text text(loops + "Rnd 4: (sc, hdc, 5 dc, hdc, sc) in each " + name + " around, join.\n");
    CHECK(text.said == "");
    CHECK(text.last().counted == 108);
    CHECK(text.last().stated == -1);
    const Text next(loops + "Rnd 4: (6 sc in next " + std::string(name) + ") around, join.\n");
    CHECK(next.said == "");
    CHECK(next.last().counted == 72);
  }
}

// Common practice, no source
TEST_CASE("a slip stitch to the middle of a loop leads there, and the loop is what follows goes into") {
  for (const char* lead : {"sl st to middle of first ch-5 loop, ch 1, sc in loop",
                           "sl st to center of next lp, ch 1, sc in same lp",
                           "sl st in next 2 chs to center of loop, ch 1, sc in same loop",
                           "sl st in next ch-5 sp, ch 1, sc in same sp",
                           "slip stitch into the centre of the first loop, ch 1, sc in loop"}) {
    CAPTURE(lead);
    const Text text(loops + "Rnd 4: " + std::string(lead) +
                    ", (ch 6, sc in next ch-5 loop) 11 times, ch 6, join. (12 sc)\n");
    CHECK(text.said == "");
    CHECK(text.last().counted == 12);
    CHECK(text.last().spaces == 12);
    CHECK(text.into("part", 4, 1) == "part-3-sp-1");
    CHECK(text.into("part", 4, 2) == "part-3-sp-1");
  }
}

TEST_CASE("loops are stitches where no chains stand between them") {
  const Text text("Moss\n\nRnd 1: 6 sc in MR (6)\nRnd 2: 2 sc in each loop around (12)\n");
  CHECK(text.said == "");
  CHECK(text.last().counted == 12);
}

// Common practice, no source
TEST_CASE("the same chain is the one that was named, though other chains were made since") {
  const Text text(
      "Bracken shawl\n\nRow 1: ch 4, 2 dc in 4th ch from hook, ch 2, 3 dc in same ch, turn.\n"
      "Row 2: ch 3, 2 dc in first st, ch 1, (3 dc, ch 2, 3 dc) in ch-2 sp, ch 1, 3 dc in last st, turn.\n"
      "Row 3: ch 3, 2 dc in first st, ch 1, 3 dc in ch-1 sp, ch 1, (3 dc, ch 2, 3 dc) in ch-2 sp, ch 1, "
      "3 dc in ch-1 sp, ch 1, 3 dc in last st, turn.\n");
  CHECK(text.said == "");
  CHECK(text.last().counted == 18);
  CHECK(text.into("part", 1, 5) == text.into("part", 1, 1));
  CHECK(text.worked.fabric.parts[0].start == fabric::Start::chain);
}

TEST_CASE("spaces are named with their number before or behind, and those that remain are all of them") {
  for (const char* name : {"each ch-5 sp", "each 5-ch sp", "each rem ch-5 sp", "each of next 12 ch-5 sps",
                           "each of next 12 5-ch loops", "each remaining space"}) {
    CAPTURE(name);
    const Text text(loops + "Rnd 4: 5 sc in " + name + " around, join. (60)\n");
    CHECK(text.said == "");
    CHECK(text.last().counted == 60);
  }
}

TEST_CASE("a right round of spaces is read in silence") {
  const Text text(disc +
                  "Rnd 3: ch 5 (counts as dc, ch 2), skip next dc, *dc in next dc, ch 2, skip next dc; rep "
                  "from * around, join in 3rd ch of beg ch-5. (12 ch-2 sps)\n"
                  "Rnd 4: sl st in first ch-2 sp, ch 3, 4 dc in same sp, ch 1, (5 dc in next ch-2 sp, ch 1) "
                  "around, join. (60 dc)\n");
  CHECK(text.said == "");
  CHECK(text.last().counted == 60);
  for (const pattern::Finding& finding : text.read.findings) CHECK(finding.code != "reading");
}

// Common practice, no source
TEST_CASE("chains skipped at the hook beyond the first stitch are the first space of a mesh") {
  const Text mesh("Fern filet\n\nCh 22.\nRow 1: dc in 6th ch from hook, *ch 1, sk 1 ch, dc in next ch; rep "
                  "from * to end, "
                  "turn. (10 dc, 9 sps)\nRow 2: ch 4 (counts as dc, ch 1), sk first sp, dc in next dc, *ch "
                  "1, sk next sp, "
                  "dc in next dc; rep from * to end, last dc in turning ch, turn. (10 dc)\n");
  CHECK(mesh.said == "");
  CHECK(mesh.last().counted == 10);
}

// Common practice, no source
TEST_CASE("the turning chain before a chain space is a space of the next row") {
  const Text moss(
      "Moss cloth\n\nCh 22.\nRow 1: sc in 4th ch from hook, *ch 1, sk 1 ch, sc in next ch; rep from * "
      "across. "
      "Turn. (10 sc)\nRow 2: ch 2, sc in first ch-1 sp, *ch 1, sc in next ch-1 sp; rep from * across, ending "
      "with ch 1, sc in the turning ch sp. Turn. (10 sc)\n"
      "Row 3: ch 2, *sc in next ch-1 sp, ch 1; rep from * across, sc in turning ch-2 sp. (10 sc)\n");
  CHECK(moss.said == "");
  CHECK(moss.into("part", 2, 10) == "part-0-sp-1");
  CHECK(moss.last().counted == 10);
}

// Common practice, no source
TEST_CASE(
    "a petal goes down again by chains; it is no picot, and what is repeated has no first stitch of chains") {
  const Text text("Wood anemone\n\nRnd 1: ch 2, 6 sc in second chain from hook, sl st in first sc. 6\n"
                  "Rnd 2: (ch 2, 3 dc in next st, ch 2, sl st in same st) 6 times. 6 petals\n"
                  "Rnd 3: working behind petals: *ch 3, sl st between next 2 petals* 6 times\n"
                  "Rnd 4: 5 dc in each ch-3 sp around, join (30)\n");
  CHECK(text.said == "");
  for (const fabric::Round& round : text.worked.fabric.rounds)
    if (round.number == 2) CHECK(round.uses == 6);
  CHECK(text.last().counted == 30);
}
