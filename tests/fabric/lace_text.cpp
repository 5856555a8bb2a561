#include "text.hpp"

#include <catch2/catch.hpp>

#include <string>

using namespace whorl;
using test::Text;

namespace {

const std::string square = "Moss square\n\n"
                           "Rnd 1: MR, ch 3 (counts as dc), 2 dc, ch 2, (3 dc, ch 2) 3 times, join (12)\n";
const std::string square_of_two =
    square +
    "Rnd 2: sl st to corner sp, (ch 3, 2 dc, ch 2, 3 dc) in corner sp, ch 1, *(3 dc, ch 2, 3 dc) in next "
    "corner sp, ch 1* 3 times, join (24)\n";

std::string row_of_21(const std::string& above) {
  return "Hammock for the snail\n\n" + above +
         "\n\nRow 1: ch 22, sc in 2nd ch from hook and in each ch across (21)\n";
}

} // namespace

// Common practice, no source
TEST_CASE("a chain at the head of the first group of a round stands for a stitch") {
  const Text text(square_of_two);
  CHECK(text.said == "");
  CHECK(text.last().counted == 24);
}

// Common practice, no source
TEST_CASE("each corner takes its own number, the other chain spaces one") {
  const Text text(
      square_of_two +
      "Rnd 3: ch 1, sc in each dc and in each ch-1 space around, 3 sc in each corner space, join (40 sc)\n");
  CHECK(text.said == "");
  CHECK(text.last().counted == 40);
}

// Common practice, no source
TEST_CASE("chains as high as the stitch that follows a slip stitch into a space are no space themselves") {
  const Text text("Fern mandala\n\nRnd 1: MR, ch 3 (counts as dc), 11 dc in ring, join (12)\n"
                  "Rnd 2: ch 1, (sc in next st, ch 3, skip 1) 6 times, join (6 sc, 6 ch-3 sps)\n"
                  "Rnd 3: sl st into ch-3 sp, ch 3, (dc, ch 3) in each ch-3 sp around, join\n"
                  "Rnd 4: ch 1, (sc, dc, sc) in each ch-3 sp around, join\n");
  CHECK(text.said == "");
  CHECK(text.last().counted == 18);
}

// Common practice, no source
TEST_CASE("a group of the pattern's own is worked where it is named, and its stitches are counted") {
  for (const char* explained : {"V-st: (dc, ch 1, dc) in same st.", "V-st = dc, ch 1, dc in one place",
                                "Special stitch - V-st: (dc, ch 1, dc) all "
                                "in the same stitch or space."}) {
    CAPTURE(explained);
    const Text text(row_of_21(explained) +
                    "Row 2: ch 2, turn, (sk 1, V-st in next st, sk 1) x 7 (14 dc)\n"
                    "Row 3: ch 2, turn, V-st in the ch-1 sp of each V-st across (14 dc)\n");
    CHECK(text.said == "");
    CHECK(text.last().counted == 14);
  }
}

// Common practice, no source
TEST_CASE("a shell of the pattern's own is several of a kind in one place") {
  const Text text(
      row_of_21("Shell: 5 dc in one st") +
      "Row 2: ch 1, turn, sc in first st, (skip 1, shell in next st, skip 1, sc in next st) x 5 (31)\n");
  CHECK(text.said == "");
  CHECK(text.last().counted == 31);
}

// Common practice, no source
TEST_CASE("a group of the pattern's own goes by another name too") {
  for (const char* alias : {"bud = Fan", "bud: same as Fan", "bud: another word for Fan",
                            "bud is our name for a fan", "Bud (bd) = fan"}) {
    CAPTURE(alias);
    const test::Text text("Fern ball\nTerms: US\nFan: (2 dc, ch 1, 2 dc) in one st\n" + std::string(alias) +
                          "\n\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\n"
                          "Rnd 3: (sc, skip 1, bud, skip 1) x 3 (15)\n");
    CHECK(text.said == "");
    CHECK(text.last().uses == 12);
  }
}

TEST_CASE("a beginning cluster of chains and stitches is one group") {
  const Text text(
      "Wood sorrel\n\nBeg-CL = ch 2, dc2tog in same st\nCL = dc3tog, all in the same st\n\n"
      "Rnd 1: in MR ch 1, 8 sc, join (8 sc)\n"
      "Rnd 2: Beg-CL in first st, ch 2, *CL in next st, ch 2; rep from * 6 more times, join in top of "
      "Beg-CL (8 ch-2 sps)\nRnd 3: ch 1, 3 sc in each ch-2 sp, join (24 sc)\n");
  CHECK(text.said == "");
  CHECK(text.last().counted == 24);
}

// Common practice, no source
TEST_CASE("words in brackets behind a chain say that it stands for a stitch") {
  for (const char* said :
       {"(counts as dc)", "(for the first dc)", "(is a dc)", "(= 1 dc)", "(is the first dc)"}) {
    CAPTURE(said);
    const Text text("Moss\n\nRnd 1: MR, ch 3 " + std::string(said) + ", 11 dc in ring, join (12 dc)\n");
    CHECK(text.said == "");
    CHECK(text.last().counted == 12);
  }
}

TEST_CASE("the first stitch is the one that a counting chain stands on") {
  const Text text(
      "Fern shawl\n\nRow 1: ch 4, (2 dc, ch 2, 3 dc) in 4th ch from hook; the 3 skipped chains are the first "
      "dc. (6 dc)\nRow 2: ch 3 (= 1 dc), turn, 2 dc in first dc, ch 1, (3 dc, ch 2, 3 dc) in the ch-2 sp, "
      "ch 1, 3 dc in last st (12 dc)\n");
  CHECK(text.said == "");
  CHECK(text.last().counted == 12);
}

TEST_CASE("what is joined in the yarn of its round is joined in that yarn") {
  const Text text("Badger tail\n\nRnd 1: with white, 6 sc in mr, join (6)\nRnd 2: ch 1, inc x 6, join (12)\n"
                  "Rnd 3: with grey, ch 1, sc around, join with sl st (12)\n");
  CHECK(text.said == "");
  CHECK(text.worked.fabric.stitches.back().yarn == 2);
}

// Common practice, no source
TEST_CASE("a round whose kinds are counted one by one has as many stitches as all together") {
  const Text text("Moss\n\nRnd 1: 12 sc in MR (12)\nRnd 2: (sc, dc) x 6 (6 sc, 6 dc)\n");
  CHECK(text.said == "");
  CHECK(text.last().counted == 12);
  CHECK(text.last().stated == 12);
}

TEST_CASE("chains and a slip stitch in the first stitch close a round with its last arch, and are no picot") {
  for (const char* const end : {"sl st in first sc", "join with sl st to first sc", "sl st in first st"}) {
    CAPTURE(end);
    const Text text(
        "Moss doily\n\nRnd 1: MR, 8 sc in ring, join. (8)\nRnd 2: Ch 1, sc in same st, *ch 5, sc in "
        "next sc; rep from * 6 more times, ch 5, " +
        std::string(end) + ". (8 sps)\n");
    CHECK(text.said == "");
    CHECK(text.last().spaces == 8);
  }
  const Text picots("Moss doily\n\nRnd 1: MR, 8 sc in ring, join. (8)\nRnd 2: *sc in next st, ch 3, sl st in "
                    "first ch; rep from * around. (8)\n");
  CHECK(picots.said == "");
  CHECK(picots.last().spaces == 0);
}

TEST_CASE("the last stitches of a round are worked into one after the other") {
  const Text text("Moss\n\nRnd 1: MR, 8 sc (8)\nRnd 2: sc in next 4 sts, dc in last 4 sts (8)\n");
  const fabric::Fabric& worked = text.worked.fabric;
  const fabric::StitchId first = worked.rounds[1].first_stitch;
  for (fabric::StitchId i = 0; i < 8; ++i)
    CHECK(fabric::legs_of(worked, first + i).begin()->into.of == worked.rounds[0].first_stitch + i);
}
