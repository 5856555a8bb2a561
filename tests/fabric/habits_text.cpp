#include "text.hpp"

#include <catch2/catch.hpp>

#include <string>

using namespace whorl;
using test::Text;

namespace {

/// The last round of a text of which nothing is to be said.
fabric::Round last_of(const std::string& typed) {
  INFO(typed);
  const Text text(typed);
  CHECK(text.said == "");
  return text.last();
}

} // namespace

TEST_CASE("a number alone names the round that is repeated") {
  CHECK(last_of("Pixie dress\n\n1) 18 sc in a magic ring - 18\n2) sc around - 18\n3-4) repeat 2 - 18\n")
            .number == 4);
}

TEST_CASE("a colour between two numbers makes no range of them") {
  CHECK(last_of("ladybug\n\nr1 black 6sc in mr (6)\nr2 red 2sc, black 2sc, red 2sc (6)\n").number == 2);
}

TEST_CASE("work turned round the end of a chain is not turned over") {
  const Text text(
      "Rug\n\nROUND 1 - ch 9, sc in 2nd ch from hook, sc in next 6 ch, 3 sc in last ch, turn the work, sc "
      "in next 6 ch on the other side of the chain, 2 sc in last ch (18)\n");
  CHECK(text.said == "");
  CHECK(text.last().makes == 18);
  CHECK_FALSE(text.last().turned);
}

// Common practice, no source

TEST_CASE("stitches left behind a turn are those in front of it, and may be taken up again") {
  CHECK(last_of(
            "Slug\n\nRow 1: ch 15, sc in 2nd ch from hook, sc in each ch to end, turn. 14 sc\n"
            "Row 2: ch 1, sc in each of next 10 sts, turn, leaving the last 4 sts unworked. 10 sc\n"
            "Row 3: ch 1, sc in each st to end, turn. 10 sc\n"
            "Row 4: ch 1, sc in each of next 10 sts, sc in each of the 4 unworked sts of Row 1, turn. 14 sc\n"
            "Rows 5 to 7: Repeat Rows 2 to 4.\n")
            .makes == 14);
}

TEST_CASE("the slip stitch that joins a round leaves its loops free") {
  CHECK(
      last_of(
          "Bonnet\n\nRnd 1: MR, 20 sc in ring, join (20)\nRnd 2: ch 1, BLO, sc in each st around, join (20)\n"
          "Ruffle: join yarn in any free front loop of Rnd 1, 3 hdc in each of the 20 front loops, join "
          "(60)\n")
          .makes == 60);
}

TEST_CASE("loops behind a skirt are those that its round left free") {
  CHECK(last_of("Mushroom\n\n1. 5sc in MR [5]\n2. inc*5 [10]\n3. FLO 2 hdc in each st [20]\n"
                "4. back to the BLO behind the skirt, 10sc [10]\n")
            .makes == 10);
}

TEST_CASE("three ordinals and a word label their rounds") {
  CHECK(last_of("Acorn\n\n1st Round.-6 sc in a ring.\n2nd, 3rd and 4th Rounds.-1 sc in every sc. 6 sc.\n")
            .number == 4);
}

TEST_CASE("a sentence that talks of stitches is no work where the counts say so") {
  CHECK(last_of("Primrose\n\nRound 1: 10 sc in magic ring (10)\n"
                "Round 2: *Sc in the next st, 5 dc in the next st*, and repeat from * to * 4 more times. The "
                "five dc "
                "fan out: that is one petal! (30 sts)\n")
            .makes == 30);
}

TEST_CASE("a chain told with the one that turns is one chain") {
  const Text text("Ear\n\nRow 1: 6 ch + 1 turning ch, 6 sc back = 6\nRow 2: 1 turning ch, 6 sc = 6\n");
  CHECK(text.said == "");
  CHECK(text.worked.fabric.rounds[0].count == 7);
}

TEST_CASE("a decrease of one stitch is one decrease") {
  CHECK(last_of("Head\n\n1st rnd: 18 sc in a ring (18 sc).\n"
                "2nd rnd: * Sc in each of next 4 sc, dec 1 sc; repeat from * around (15 sc).\n")
            .makes == 15);
}

TEST_CASE("stitches glued to inc and dec are increased and decreased themselves") {
  CHECK(
      last_of("Hump\n\nR1: mc, 18 hdc = 18\nR2: sc 5, hdcdec x 4, sc 5 = 14\nR3: hdcinc x 14 = 28\n").makes ==
      28);
}

TEST_CASE("a colour in brackets before a passage between stars is no piece of it") {
  CHECK(last_of("Ladybird\n\nRnd 1. (black) 12 sc in MR (12)\nRnd 2. (red) *1 sc, inc* x 6 (18)\n").makes ==
        18);
}

TEST_CASE("three numbers behind a word label three rounds, be they closed or not") {
  CHECK(last_of("Tail\n\nr1 5sc in mr\nr2 5inc (10)\nr3,4,5 just sc (10)\n").number == 5);
}

TEST_CASE("a row along the other side of the chain ends in a slip stitch of its own") {
  CHECK(last_of(
            "Leaf\n\nCh 6.\nRow 1: sl st in 2nd ch from hook, sc in next 4 ch (5)\n"
            "Row 2: Rotate, working along the other side of the ch: sc in first 4 ch, sl st in last ch (5)\n")
            .counted == 5);
}

TEST_CASE("a count that is a step of a list is the round's, wherever it stands in it") {
  CHECK(last_of("Owl head\n\nRound 1:\n- magic ring\n- 8 sc in the ring\n- 8 sts total\n\nRound 2:\n- inc in "
                "every st\n"
                "- 16 sts total\n- put the eyes in now!\n")
            .makes == 16);
}

TEST_CASE("a sentence that says which terms are used heads no list of words") {
  CHECK(last_of("The mouse\nUK crochet terms are used.\n\nEars\nMake 5 ch.\n"
                "1st Row: 1 dc into 2nd ch from hook, 1 dc into each ch to end, turn. 4 dc.\n")
            .makes == 4);
}

TEST_CASE("a stitch in the round below goes into the stitch under the next") {
  const Text text(
      "Mushroom mat\n\nRnd 1: 6 sc in magic ring (6)\nRnd 2: inc x 6 (12)\nRnd 3: (sc, spike sc in the "
      "round below) x 6 (12)\n");
  CHECK(text.said == "");
  CHECK(text.into(1) == "part-1-1");
}

TEST_CASE("a standard stitch's word that a list gives another meaning is noted") {
  const pattern::Source source("Cup\n\nAbbreviations\nsc = dc\nst = stitch\n\nRnd 1: 6 sc in MR (6)\n");
  const pattern::Read read = pattern::read(source, *words::find_vocabulary("en-US"));
  std::string said;
  for (const pattern::Finding& finding : read.findings)
    if (finding.code == "redefined") said += finding.message;
  CHECK(said == "`sc` is dc here, as this line says; without it the word means sc");
}

TEST_CASE("a bare decrease is invisible where a sentence says so of all") {
  struct Case {
    const char* line;
    const char* kind;
  };
  for (const Case& one : {Case{"Use invisible decreases throughout.", "invdec"},
                          Case{"All decreases are invisible decreases.", "invdec"},
                          Case{"I like invisible decreases.", "sc2tog"}, Case{"", "sc2tog"}}) {
    INFO(one.line);
    const Text text("Moss owl\n\n" + std::string(one.line) +
                    "\n\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\nRnd 3: dec x 6 (6)\n");
    CHECK(text.said == "");
    const fabric::Fabric& fabric = text.worked.fabric;
    CHECK(fabric.kinds[fabric.stitches[text.last().first_stitch].kind].name == one.kind);
  }
}

// Common practice, no source
TEST_CASE("a number of groups of the pattern's own is no number of stitches") {
  for (const char* line :
       {"(V-st in next st, skip 1) x 6, join (6 V-sts)", "*V-st, skip 1; rep from * around (6 V-sts)",
        "ch 3, V-st in each st around, join [12 V-sts]", "V-st in each st around (12 V-sts)"}) {
    INFO(line);
    const Text text("Fern coaster\n\nV-st: (dc, ch 1, dc) in the same st\n\n"
                    "Rnd 1: ch 3, 11 dc in MR, sl st to top of ch-3 (12 dc)\nRnd 2: " +
                    std::string(line) + "\n");
    CHECK(text.said == "");
  }
}
