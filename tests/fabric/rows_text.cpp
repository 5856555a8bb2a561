#include "text.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace whorl;
using test::Text;

namespace {

const std::string fin = "Fin\n\nRow 1: ch 7, sc in 2nd ch from hook and in each ch across (6)\n"
                        "Rows 2-8: ch 1, turn, sc in each st across (6)\n";
const std::string acorn = "Acorn\n\nRnd 1: 6 sc in magic ring (6)\nRnd 2: inc x 6 (12)\n";

} // namespace

// The ends of rows are an edge (fabric.md); one place a row end is common practice, no source

TEST_CASE("Each row end is one place") {
  const Text text(fin + "Row 9: ch 1, do not turn, sc in each row end (8)\n");
  CHECK(text.said.empty());
  CHECK(text.last().counted == 8);
}

TEST_CASE("A count that each row end does not give is an error") {
  const Text text(fin + "Row 9: ch 1, do not turn, sc in each row end (10)\n");
  CHECK(text.said == "row 9 makes 8 stitches, the pattern says 10\n");
}

TEST_CASE("Work along the ends of rows begins at the row that was worked last") {
  const Text text(fin + "Row 9: ch 1, do not turn, sc in each row end (8)\n");
  CHECK(text.into(1) == "part-8-end");
  CHECK(text.into(2) == "part-7-start");
}

TEST_CASE("So many stitches along the row ends spread over them evenly") {
  const Text text(
      fin + "Row 9: pick up and sc 12 sts along the row ends (12)\nRow 10: ch 1, turn, sc across (12)\n");
  CHECK(text.said.empty());
}

TEST_CASE("Evenly along a side makes what the text counts") {
  const Text text(fin + "Edging: ch 1, sc evenly along the side (12)\n");
  CHECK(text.said.empty());
  CHECK(text.last().counted == 12);
}

TEST_CASE("Evenly along a side without a count goes into each row end once") {
  const Text text(fin + "Edging: ch 1, sc evenly along the side\n");
  CHECK(text.last().counted == 8);
}

TEST_CASE("A border goes down one side, along the bottom and up the other side") {
  const Text text(fin +
                  "Rnd 9: ch 1, 8 sc evenly down the side edge, 3 sc in corner, 4 sc along the bottom edge, "
                  "3 sc in corner, 8 sc evenly up the other side (26)\n");
  CHECK(text.said.empty());
  CHECK(text.last().counted == 26);
}

TEST_CASE("Around the edge is along all edges of a flat piece") {
  const Text text(fin + "Border: sc evenly around the edge (28)\n");
  CHECK(text.said.empty());
  CHECK(text.last().counted == 28);
}

TEST_CASE("Around the edge of a round piece is the round") {
  const Text text(acorn + "Rnd 3: sc evenly around the edge (12)\n");
  CHECK(text.said.empty());
}

// Turning chains: dc and taller count unless said, hdc half of the writers say no (trade rules)

TEST_CASE("A turning chain at a row's end is the next row's first stitch where its counts say so") {
  const Text text("Fin\n\nRow 1: Ch 7, sc in 2nd ch from hook and across, ch 3, turn (6)\n"
                  "Row 2: dc in next 5, ch 3, turn (6)\nRow 3: dc in next 5 (6)\n");
  CHECK(text.said.empty());
}

TEST_CASE("A stitch skipped behind a turning chain that counts is the one under it") {
  const Text text("Fin\n\nRow 1: Ch 7, sc in 2nd ch from hook and across, ch 3, turn (6)\n"
                  "Row 2: sk first st, dc in next 5 sts (6)\n");
  CHECK(text.said.empty());
}

TEST_CASE("Two turning chains before hdc are what the counts say") {
  const Text counted("Fin\n\nRow 1: ch 8, hdc in 3rd ch from hook and across, ch 2, turn (6)\n"
                     "Row 2: hdc in next 5 (6)\n");
  CHECK(counted.said.empty());
  const Text plain("Fin\n\nRow 1: ch 8, hdc in 3rd ch from hook and across, ch 2, turn (6)\n"
                   "Row 2: hdc in next 6 (6)\n");
  CHECK(plain.said.empty());
}

// Kinds

TEST_CASE("How many of which stitch a popcorn, bobble, cluster or puff has may stand before it") {
  const Text text(acorn +
                  "Rnd 3: (5-dc popcorn, sc) x 6 (12)\nRnd 4: (4-dc bobble, sc) x 6 (12)\n"
                  "Rnd 5: (bobble of 6 dc, sc) x 6 (12)\nRnd 6: (4-hdc puff, sc) x 6 (6 puffs, 6 sc)\n"
                  "Rnd 7: (3-dc cluster, sc) x 6 (12)\nRnd 8: cluster in each st around (12)\n");
  CHECK(text.said.empty());
}

TEST_CASE("A loop stitch needs no list to be known") {
  const Text text(acorn + "Rnd 3: loop st in each st around (12)\nRnd 4: (lp st 1, sc 1) x 6 (12)\n");
  CHECK(text.said.empty());
}

TEST_CASE("A picot is one thing that uses no stitch and leaves none") {
  const Text text(acorn + "Rnd 3: (sc 2, ch 3, sl st in 3rd ch from hook) x 6 (12)\nRnd 4: sc around (12)\n");
  CHECK(text.said.empty());
  CHECK(text.worked.fabric
            .kinds[text.worked.fabric.stitches[text.worked.fabric.rounds[2].first_stitch + 2].kind]
            .moves == "(c)3 i* p1");
}

TEST_CASE("A picot on chains does not part them") {
  const Text text(acorn +
                  "Rnd 3: (sc 2, ch 2, picot, ch 2) x 6 (12)\nRnd 4: 3 sc in each ch-sp around (18)\n");
  CHECK(text.said.empty());
}

// Errors authors make, with their mends (notation habits)

namespace {

std::string mend_of(const std::string& text) {
  const Text all(text);
  for (const pattern::RoundText& round : all.read.tree.rounds)
    if (!round.mend.empty()) return round.mend;
  return {};
}

} // namespace

TEST_CASE("The tail of a staggered round that was forgotten is the mend") {
  CHECK(
      mend_of(acorn +
              "Rnd 3: (sc, inc) x 6 (18)\nRnd 4: 1 sc, inc, (2 sc, inc) x 5 (24)\nRnd 5: sc around (24)\n") ==
      "Rnd 4: 1 sc, inc, (2 sc, inc) x 5, 1 sc (24)");
}

TEST_CASE("A left-over word of another language is the increase that the counts ask for") {
  CHECK(mend_of(acorn + "Rnd 3: (sc, aum) x 6 (18)\n") == "Rnd 3: (sc, inc) x 6 (18)");
}

TEST_CASE("A number whose full stop was forgotten is known from the rounds around it") {
  const Text text("Acorn\n\n1. 6 sc in magic ring (6)\n2 inc x 6 (12)\n3. (sc, inc) x 6 (18)\n");
  CHECK(text.said.empty());
  CHECK(text.last().counted == 18);
}

// Rounds

TEST_CASE("Magic ring 6 above round 2 is round 1") {
  const Text text("Acorn\n\nMagic ring 6\nRnd 2: inc x 6 (12)\n");
  CHECK(text.worked.fabric.rounds.front().counted == 6);
}

TEST_CASE("An invisible decrease in back loops is warned of once a line") {
  const Text text(acorn + "Rnd 3: BLO: (sc, invdec) x 4 (8)\n");
  CHECK(text.said ==
        "an invisible decrease takes front loops: in back loops it is worked as the plain decrease\n");
}

TEST_CASE("A bare increase among several stitches is said to be single crochet") {
  const Text text(acorn + "Rnd 3: (sc, hdc, inc) x 4 (16)\n");
  CHECK(text.said.empty());
  CHECK(std::any_of(text.read.findings.begin(), text.read.findings.end(),
                    [](const pattern::Finding& finding) { return finding.code == "mixed"; }));
}

TEST_CASE("A bare increase that the list explains is not remarked on") {
  const Text text(
      "Acorn\n\nAbbreviations\ninc: 2 sc in one stitch\nsc: single crochet\nhdc: half double crochet\n\n"
      "Rnd 1: 6 sc in magic ring (6)\nRnd 2: inc x 6 (12)\nRnd 3: (sc, hdc, inc) x 4 (16)\n");
  CHECK(std::none_of(text.read.findings.begin(), text.read.findings.end(),
                     [](const pattern::Finding& finding) { return finding.code == "mixed"; }));
}

TEST_CASE("Three on the chain between joined legs are one in each chain") {
  const std::string leg = "Rnd 1: 7 sc in magic ring (7)\nRnd 2: inc x 7 (14)\nFasten off.\n\n";
  const Text text("Gnome\n\nLeg 1\n" + leg + "Leg 2\n" + leg.substr(0, leg.size() - 13) +
                  "\n\nBody\nRnd 3: ch 3, join to leg 1, 14 sc on leg 1, 3 sc on the ch, 14 sc on leg 2, "
                  "3 sc on the ch (34)\nRnd 4: sc around (34)\n");
  CHECK(text.said.empty());
}

TEST_CASE("a row that begins with chains and a turn is worked with the side that faces then") {
  const Text text("Scarf\n\nRow 1: Ch 5, sc in 2nd ch from hook and across (4)\n"
                  "Row 2: ch 1, turn, sc across (4)\nRow 3: ch 1, turn, sc across (4)\n");
  const auto& rounds = text.worked.fabric.rounds;
  CHECK(rounds[1].side == fabric::Side::right);
  CHECK(rounds[2].side == fabric::Side::wrong);
  CHECK(rounds[3].side == fabric::Side::right);
}

// Common practice, no source: the stitches of "the last 3 sts" follow one another as those before them did.

TEST_CASE("Stitches in the last ones of a row go into these in order") {
  const Text text(fin + "Row 9: ch 1, turn, sc in first 3 sts, hdc in last 3 sts (6)\n");
  CHECK(text.into(4) == "part-8-4");
  CHECK(text.into(6) == "part-8-2");
}

TEST_CASE("A stitch in the top of the chain that turned a row goes into it past what was skipped") {
  const Text text(
      "Fin\n\nRow 1: ch 7, sc in 2nd ch from hook and in each ch across (6)\n"
      "Row 2: ch 3 (counts as dc), turn, sk 1, dc in next st, (dc, ch 1, dc) in next st, dc in last st\n"
      "Row 3: ch 3, turn, dc in ch-1 sp, dc in top of ch-3\n");
  CHECK(text.into(4) == "part-2-3");
}

TEST_CASE("a repeat into chain spaces that ends before the last stitch goes into every space") {
  for (const char* row : {"*(dc, ch 1, dc) in next ch-1 sp* across, dc in last st, turn",
                          "*(dc, ch 1, dc) in next ch-1 sp; rep from * across, dc in top of turning ch, turn",
                          "(dc, ch 1, dc) in each ch-1 sp across, dc in last st, turn"}) {
    INFO(row);
    const Text text(
        "Fern scarf\n\nTerms: US\n\nCh 23.\nRow 1: (dc, ch 1, dc) in 5th ch from hook, *sk 2 ch, (dc, ch "
        "1, dc) in next ch* 5 times, sk 2 ch, dc in last ch, turn\nRow 2: ch 3, " +
        std::string(row) + "\nRow 3: ch 3, " + std::string(row) + "\n");
    CHECK(text.said == "");
    CHECK(text.last().spaces == 6);
  }
}
