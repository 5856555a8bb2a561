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
