/// The errors that authors make, typed: the whole message of each, and its mend where one smallest change
/// fits. Common practice, no source.

#include "fabric/check.hpp"
#include "fabric/work.hpp"
#include "pattern/read.hpp"

#include <catch2/catch.hpp>

using namespace whorl;

namespace {

/// Three right rounds, and what follows them.
std::string acorn(const std::string& rounds) {
  return "Acorn\nTerms: US\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\nRnd 3: (sc, inc) x 6 (18)\n" + rounds;
}

/// Every finding but those that only repeat that the chart ends there: "error: …", a mend behind an arrow.
std::string told(const std::string& text) {
  const pattern::Source source(text);
  const pattern::Read read = pattern::read(source, *words::find_vocabulary("en-US"));
  const fabric::Worked worked = fabric::work(read.tree);
  std::string said;
  const auto tell = [&said](const std::vector<pattern::Finding>& findings) {
    for (const pattern::Finding& finding : findings) {
      if (finding.message.find("is drawn up to") != std::string::npos) continue;
      const bool note = finding.severity == pattern::Severity::note;
      said += finding.severity == pattern::Severity::error ? "error: " : note ? "note: " : "warning: ";
      said += finding.message + (finding.mend.empty() ? "" : " -> " + finding.mend) + "\n";
    }
  };
  tell(read.findings);
  tell(worked.findings);
  tell(fabric::check(read.tree, worked.fabric));
  return said;
}

} // namespace

TEST_CASE("A count copied from the line above is told with what the round makes") {
  CHECK(told(acorn("Rnd 4: (2 sc, inc) x 6 (18)\nRnd 5: sc around (24)\n")) ==
        "error: round 4 makes 24 stitches, the pattern says 18\n");
}

TEST_CASE("So is a count that is out by one repeat") {
  CHECK(
      told("Leaf\nTerms: US\nRnd 1: 10 sc in MR (10)\nRnd 2: 3 sc in each st around (30)\nRnd 3: (3 sc) x 10 "
           "(33)\n") == "error: round 3 makes 30 stitches, the pattern says 33\n");
}

TEST_CASE("An oval whose ends were counted once is told with both its sides") {
  CHECK(told("Leaf\nTerms: US\nRnd 1: Ch 7, sc in 2nd ch from hook, sc in next 4 ch, 3 sc in last ch, on the "
             "other "
             "side of the chain sc in next 4 ch, 2 sc in last ch (12)\nRnd 2: sc around (14)\n") ==
        "error: round 1 makes 14 stitches, the pattern says 12: 8 on the first side of the chain and 6 on "
        "the other, "
        "where each end should be gone round once\n");
}

TEST_CASE("A free-form round that does not use up the round before leaves stitches over") {
  CHECK(told(acorn("Rnd 4: 4 sc, inc, 3 sc, inc, 2 sc, inc, 4 sc (19)\nRnd 5: sc around (19)\n")) ==
        "warning: round 4 leaves 2 of the 18 stitches of round 3 unworked\n");
}

TEST_CASE("A free-form round that asks for more than there is needs what the round before has not") {
  CHECK(told(acorn("Rnd 4: hdc, inc, 6 sc, inc, 6 sc, inc, 4 sc (23)\nRnd 5: sc around (23)\n")) ==
        "note: `inc` stands among other stitches and is taken to be of sc; where another is meant, name it\n"
        "error: round 4 needs 20 stitches, round 3 has 18\n");
}

TEST_CASE("A repeat that does not divide is told with what would be left") {
  CHECK(told("Ball\nTerms: US\nRnd 1: 8 sc in MR (8)\nRnd 2: 5 sc in each st (40)\nRnd 3: inc around (80)\n"
             "Rnd 4: (5 sc, dec) around (68)\n") == "error: round 4: the repeat takes 7 stitches a time and "
                                                    "has 80 to go into: 3 stitches would be left over\n");
}

TEST_CASE("A repeat number with the ends written out is one too many") {
  CHECK(told(acorn("Rnd 4: sc, inc, (2 sc, inc) x 6, sc (24)\nRnd 5: sc around (24)\n")) ==
        "error: round 4 needs 21 stitches, round 3 has 18 -> Rnd 4: sc, inc, (2 sc, inc) x 5, sc (24)\n");
}

TEST_CASE("A repeat from a star too few is solved from the count") {
  CHECK(told(acorn("Rnd 4: *2 sc, inc; rep from * 3 times (24)\nRnd 5: sc around (24)\n")) ==
        "error: round 4 makes 16 stitches and leaves 6 of the 18 stitches of round 3 unworked, the pattern "
        "says 24 -> "
        "Rnd 4: *2 sc, inc; rep from * 5 times (24)\n");
}

TEST_CASE("Numbers that overlap, stand twice or skip are warnings") {
  CHECK(told(acorn("Rnd 3: sc around (18)\nRnd 4: sc around (18)\n")) == "warning: number 3 stands twice\n");
  CHECK(told(acorn("Rnds 4-6: sc around (18)\nRnd 6: (sc, dec) x 6 (12)\n")) ==
        "warning: number 6 stands twice\n");
  CHECK(told(acorn("Rnd 5: sc around (18)\n")) == "warning: 5 stands after 3: 4 is missing\n");
}

TEST_CASE("A count that is right only with the join is told so, and mended") {
  CHECK(
      told("Nut\nTerms: US\nRnd 1: 6 sc in MR, sl st to join (7)\nRnd 2: ch 1, inc x 6, join (12)\n") ==
      "error: round 1 makes 6 stitches, the pattern says 7: that is right only if the joining slip stitch is "
      "counted -> Rnd 1: 6 sc in MR, sl st to join (6)\n");
}

TEST_CASE("A count that is right only without the starting chain is told so") {
  CHECK(told("Cap\nTerms: US\nRnd 1: MR, ch 3 (counts as dc), 11 dc, join (11)\n"
             "Rnd 2: ch 3 (counts as dc), dc in same st, 2 dc in each st around, join (24)\n") ==
        "error: round 1 makes 12 stitches, the pattern says 11: that is right only if the starting chain is "
        "not "
        "counted\n");
}

TEST_CASE("A staggered round whose tail was forgotten is mended by its tail") {
  CHECK(told(acorn("Rnd 4: sc, inc, (2 sc, inc) x 5 (24)\nRnd 5: sc around (24)\n")) ==
        "error: round 4 makes 23 stitches and leaves 1 of the 18 stitches of round 3 unworked, the pattern "
        "says 24 -> "
        "Rnd 4: sc, inc, (2 sc, inc) x 5, 1 sc (24)\n");
}

TEST_CASE("The wrong abbreviation is mended by the one that fits") {
  CHECK(told(acorn("Rnd 4: (sc, dc) x 6 (12)\nRnd 5: sc around (12)\n")) ==
        "warning: round 4 leaves 6 of the 18 stitches of round 3 unworked -> Rnd 4: (sc, dec) x 6 (12)\n");
}

TEST_CASE("A word left over from another language is mended by the one that fits") {
  CHECK(told(acorn("Rnd 4: (2 sc, Zun) x 6 (24)\nRnd 5: sc around (24)\n")) ==
        "error: I cannot read `Zun` here; after `(2 sc` I can read: 3 sc, inc, dec -> Rnd 4: (2 sc, inc) x 6 "
        "(24)\n");
}

TEST_CASE("A full stop that is missing behind a number is a note") {
  CHECK(told("Acorn\nTerms: US\n1. 6 sc in MR (6)\n2 inc x 6 (12)\n3. (sc, inc) x 6 (18)\n") ==
        "note: `2` is read as the number of this round -> 2. inc x 6 (12)\n");
}

TEST_CASE("Letters and figures that a scanner took for each other are notes") {
  CHECK(told(acorn("Rnd 4: 18 5C (18)\nRnd 5: sc in next l8 (18)\n")) ==
        "note: `5C` is read as sc -> Rnd 4: 18 SC (18)\nnote: `l8` is read as 18 -> Rnd 5: sc in next 18 "
        "(18)\n");
}

TEST_CASE("Letters of another alphabet that look alike are read in silence") {
  CHECK(told(acorn("Rnd 4: (2 s\u0441, in\u0441) x 6 (24)\n")).empty());
}
