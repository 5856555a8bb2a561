/// Counts of groups of the pattern's own: "(6 V-sts)".

#include "fabric/text.hpp"

#include <catch2/catch.hpp>

namespace {

std::string said(const std::string& explained, const std::string& round) {
  return test::Text("Fern coaster\nTerms: US\n\n" + explained +
                    "\n\nRnd 1: 12 dc in MR, join (12 dc)\nRnd 2: " + round + "\n")
      .said;
}

const std::string v_stitch = "V-st: (dc, ch 1, dc) in the same st";
const std::string shell = "Shell: 5 dc in one st";

} // namespace

TEST_CASE("A number of groups is compared with the groups of the round") {
  CHECK(said(v_stitch, "(V-st in next st, skip 1) x 6, join (6 V-sts)") == "");
  CHECK(said(v_stitch, "V-st in each st around = 12 V-sts") == "");
  CHECK(said(v_stitch, "*V-st in next st, skip 1; rep from * around (12 sts, 6 V-sts)") == "");
  CHECK(said(v_stitch, "(V-st in next st, skip 1) x 6, join (7 V-sts)") ==
        "round 2 has 6 V-sts, the pattern says 7\n");
  CHECK(said(v_stitch, "V-st in each st around = 6 V-sts") == "round 2 has 12 V-sts, the pattern says 6\n");
}

TEST_CASE("Shells are groups, of whatever they are made") {
  CHECK(said(shell, "*shell in next st, skip 1; rep from * around, join (6 shells)") == "");
  CHECK(said(shell, "*shell in next st, skip 1, sc in next st, skip 1; rep from * around (3 shells, 3 sc)") ==
        "");
  CHECK(said(shell, "*shell in next st, skip 1; rep from * around, join (5 shells)") ==
        "round 2 has 6 shells, the pattern says 5\n");
}

TEST_CASE("A group that is told by its chains or written out may be counted with the others") {
  const std::string rest = ", skip 1, (V-st in next st, skip 1) x 5, join";
  CHECK(said(v_stitch, "ch 4, dc in same st" + rest + " (6 V-sts)") == "");
  CHECK(said(v_stitch, "ch 4, dc in same st" + rest + " (5 V-sts)") == "");
  CHECK(said(v_stitch, "(dc, ch 1, dc) in next st" + rest + " (6 V-sts)") == "");
  CHECK(said(shell,
             "(ch 3, 4 dc) in same st, *skip 1, shell in next st; rep from * 4 times more, skip 1, join "
             "(6 shells)") == "");
  CHECK(said(v_stitch, "ch 4, dc in same st" + rest + " (8 V-sts)") ==
        "round 2 has 5 V-sts, the pattern says 8\n");
}

TEST_CASE("Stitches beside the groups are counted apart, or with those in them") {
  const std::string rows = "Shawl\nTerms: US\nV-st = (dc, ch 1, dc) in one stitch or space.\n\n"
                           "Row 1: ch 20, sc in 2nd ch from hook and in each ch across, turn. [19 sc]\n";
  const std::string row =
      "Row 2: ch 3 (counts as dc), *skip 2 sts, V-st in next st; rep from * to last 3 sts, skip 2 "
      "sts, dc in last st, turn. ";
  for (const char* count : {"[5 V-sts, 2 dc]", "[5 V-sts, 12 dc]", "[5 V-sts]"}) {
    CAPTURE(count);
    const test::Text text(rows + row + count + "\n");
    CHECK(text.said == "");
    CHECK(text.last().makes == 12);
  }
  CHECK(test::Text(rows + row + "[5 V-sts, 3 dc]\n").said != "");
}

TEST_CASE(
    "What is counted of a round is its groups, where the text counts these alone; else all its stitches") {
  const std::string coaster =
      "Coaster\nTerms: US\n" + v_stitch +
      "\n\nRnd 1: 6 dc in MR, join (6 dc)\nRnd 2: *V-st in next st, dc in next st; rep from * "
      "around, join ";
  CHECK(test::Text(coaster + "(3 V-sts)\n").last().counted == 3);
  CHECK(test::Text(coaster + "(3 V-sts, 3 dc)\n").last().counted == 9);
  CHECK(test::Text(coaster + "(9 sts, 3 V-sts)\n").last().counted == 9);
}

TEST_CASE("A repeat that goes into spaces too is worked as often as there are spaces") {
  const test::Text text(
      "Cowl\nTerms: US\nShell: (2 dc, ch 1, 2 dc) in one st\n\n"
      "Row 1: Ch 26, sc in 2nd ch from hook and in each ch across. (25 sc)\n"
      "Row 2: Ch 3 (counts as dc), turn, *skip 2 sts, shell in next st, skip 2 sts, dc in next st; "
      "rep from * across. (4 shells, 5 dc)\n"
      "Row 3: Ch 3 (counts as dc), turn, *shell in next shell, skip 2 dc, dc in next dc; rep from * "
      "across. (4 shells, 5 dc)\n");
  CHECK(text.said == "");
  CHECK(text.last().makes == 21);
}

TEST_CASE("What goes into spaces leaves none of them for a stitch that follows") {
  const test::Text text(
      "Shawl\nTerms: US\nV-st = (dc, ch 1, dc) in one stitch or space.\n\n"
      "Row 1: ch 20, sc in 2nd ch from hook and in each ch across, turn. [19 sc]\n"
      "Row 2: ch 3 (counts as dc), *skip 2 sts, V-st in next st; rep from * to last 3 sts, skip 2 "
      "sts, dc in last st, turn. [5 V-sts, 2 dc]\n"
      "Row 3: ch 3 (counts as dc), V-st in the ch-1 sp of each V-st across, dc in top of ch-3, turn. "
      "[5 V-sts, 2 dc]\n");
  CHECK(text.said == "");
  CHECK(text.last().makes == 12);
}

TEST_CASE("A number of groups with its sizes in brackets is no work") {
  const test::Text text(
      "Cowl\nTerms: US\nSize S (M, L)\nShell: (2 dc, ch 1, 2 dc) in one st\n\n"
      "Row 1: Ch 26 (32, 38), sc in 2nd ch from hook and in each ch across. 25 (31, 37) sc\n"
      "Row 2: Ch 3 (counts as dc), turn, *skip 2 sts, shell in next st, skip 2 sts, dc in next st; "
      "rep from * across. 4 (5, 6) shells\n");
  CHECK(text.said == "");
  CHECK(text.last().makes == 21);
}
