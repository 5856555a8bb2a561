/// Patterns whose lines are cut otherwise than round by round: tables set with blanks, cells one under
/// another, words divided at line ends, rows that are named and not numbered.
#include "pattern/effect.hpp"
#include "told.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace whorl::pattern;

TEST_CASE("blanks divide the columns of a table whose heading they divide") {
  CHECK(counts("Nose\n\nRnd   Sts   Work\nR1      7   7 sc in ring\nR2      7   sc\n"
               "R3     14   inc in each\nR4     21   sc 1, inc (7 times)\n") == "7 7 14 21");
  CHECK(
      counts("Nose\n\nRound   Work            Total\n1       6 sc in MR      6\n2       inc x 6         12\n"
             "3-4     sc around       12\n") == "6 12 12");
}

TEST_CASE("the last cell under a label on its own line is the count") {
  CHECK(counts("Horn\n\nRound 1\n4 sc in magic ring\n4 sts\n\nRound 2\ninc, sc in next 3\n5 sts\n\n"
               "Round 3\nsc in each st\n5 sts\n") == "4 5 5");
  CHECK(counts("Horn\n\nRnd 1\n4 sc in magic ring\n4\n\nRnd 2\ninc x 4\n8\n") == "4 8");
}

TEST_CASE("a word divided at the end of a line is one word") {
  CHECK(counts("Cap\n\nRnd 1: 8 sc in MR (8)\nRnd 2: Working in back loops on-\nly, 2 sc in each st a-\n"
               "round. (16)\nRnd 3: (Sc in next 2 sts, decrea-\nse) 4 times. (12)\n") == "8 16 12");
}

TEST_CASE("two words with a hyphen at the end of a line stay two") {
  CHECK(counts("Cap\n\nRnd 1: 8 sc in MR (8)\nRnd 2: 2 half-\ndouble crochet in each st around (16)\n") ==
        "8 16");
}

TEST_CASE("a foundation row with stitches above the second row is the first") {
  CHECK(
      counts("Leaf\n\nFoundation row: 10 ch, 1 sc in 2nd ch from hook, 1 sc in each ch to end. 9 sts. turn.\n"
             "2nd row: 1 ch, 1 sc in each st to end. 9 sts.\n") == "9 9");
}

TEST_CASE("loops told at the end of a line are those of the piece before") {
  const auto read =
      read_text("Hoof\n\nRnd 1: 7 sc in MR (7)\nRnd 2: Sc in each stitch, but this time through "
                "the back loop only. The hoof can stand. (7)\n");
  const auto& nodes = read.tree.nodes;
  CHECK(std::any_of(nodes.begin(), nodes.end(),
                    [](const Node& node) { return node.work.loops == whorl::stitch::back; }));
}

TEST_CASE("a passage goes into the space at hand and into every other") {
  const auto read =
      read_text("Flower\n\nRnd 1: 12 sc in MR; join. (12)\nRnd 2: Ch 1, *sc in next sc, ch 3, sk next "
                "sc; rep from * around; join. (6 sc, 6 ch-3 sps)\nRnd 3: Sl st in next ch-3 sp, ch 1, "
                "(sc, hdc, 3 dc, hdc, sc) in same sp and in each ch-3 sp around; join. (42 sts)\n");
  const Effect& effect = read.tree.rounds.back().effect;
  CHECK(effect.pass_spaces == 1);
  CHECK(effect.pass_makes == 7);
}

TEST_CASE("a first cell that is a label in words makes a row, between bars of either width") {
  CHECK(counts("Nose\n\nRnd 1 | 6 sc in MR | 6\nRnd 2 | inc x 6 | 12\nRnd 3-4 | sc around | 12\n") ==
        "6 12 12");
  CHECK(counts("Nose\n｜Rnd｜Work｜Sts｜\n｜1｜6 sc in MR｜6｜\n｜2｜inc x 6｜12｜\n") == "6 12");
}

TEST_CASE("a table right below a list of abbreviations is none of its lines") {
  CHECK(counts("Abbreviations: MR: magic ring, X: single crochet, V: increase\nBODY (orange)\n"
               "| Round | Work | Total |\n| 1 | MR 6X | 6 |\n| 2 | 6V | 12 |\n") == "6 12");
}

TEST_CASE("the ring that stands in brackets behind a part's name is that of its first round") {
  CHECK(counts("Owl, body (magic ring)\n\nRnd 1: 7 sc\nRnd 2: 7 inc\n") == "7 14");
}

TEST_CASE("numbers without a mark run on past notes and ranges") {
  CHECK(counts("Nose\n\n1 6 sc in MR 6\n2 6 inc 12\n3-4 12 sc 12\n5 6 dec 6\nStuff.\n6 6 sc 6\n") ==
        "6 12 12 6 6");
}
