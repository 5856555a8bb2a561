#include "pattern/read.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace whorl;
using namespace whorl::pattern;

namespace {

Read read_text(const std::string& text) { return read(Source(text), *words::find_vocabulary("en-US")); }

/// Whether the chains of the last round stand for a stitch.
bool last_chain_counts(const std::string& note) {
  const Tree tree =
      read_text("Leaf\n\n" + note + "\n\nRnd 1: MR, 12 dc, join\nRnd 2: ch 3, dc in each st around, join\n")
          .tree;
  const Node& body = tree.nodes[tree.rounds.back().body];
  return tree.nodes[body.child].work.counts;
}

std::vector<int> numbers_of(const std::string& text) {
  std::vector<int> numbers;
  for (const RoundText& round : read_text(text).tree.rounds)
    for (int number = round.from; number <= round.to; ++number) numbers.push_back(number);
  return numbers;
}

} // namespace

TEST_CASE("what a note says of starting chains holds for all rounds") {
  CHECK(last_chain_counts("Note: ch 3 counts as the first dc throughout."));
  CHECK(last_chain_counts("The starting chain counts as a stitch."));
  CHECK_FALSE(last_chain_counts("Note: the ch 3 does NOT count as a stitch. Ever!"));
  CHECK_FALSE(last_chain_counts("Turning ch-3 does not count as a stitch."));
  CHECK_FALSE(last_chain_counts("The chains at the start never count."));
  CHECK_FALSE(last_chain_counts("Note: chains between stitches are counted; the starting ch 3 is not."));
}

TEST_CASE("what a note says of chain 1 says nothing of chain 3") {
  CHECK(last_chain_counts("The ch 1 at the start of a round does not count."));
}

TEST_CASE("a text that begins with a later round goes on from as many stitches as the round needs") {
  const Tree tree = read_text("R12: (2 sc, inc) x 6 (24)\nR13: sc around (24)\n").tree;
  REQUIRE(tree.rounds.size() == 3);
  CHECK(tree.rounds[0].kind == RoundKind::chain);
  CHECK(tree.rounds[0].effect.makes == 18);
  CHECK(tree.rounds[1].from == 12);
}

TEST_CASE("a text that begins with a later round to the end needs what its count tells") {
  const Tree tree = read_text("R39: SC AROUND (30)\n").tree;
  REQUIRE(tree.rounds.size() == 2);
  CHECK(tree.rounds[0].effect.makes == 30);
}

TEST_CASE("rounds of two lines that take turns are put in their order") {
  const std::string first = "Rnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\n";
  CHECK(numbers_of(first + "Rnds 3, 5: sc around (12)\nRnds 4 and 6: BLO sc around (12)\n") ==
        std::vector<int>{1, 2, 3, 4, 5, 6});
}

TEST_CASE("a label without an end goes up to the next") {
  CHECK(numbers_of("Row 1: ch 9, sc in 2nd ch from hook and in each ch across (8)\n"
                   "Row 2 and onward: ch 1, turn, sc across (8)\nRow 5: ch 1, turn, sc across (8)\n") ==
        std::vector<int>{1, 2, 3, 4, 5});
}

TEST_CASE("loops that are told for all rounds hold where a round says none") {
  const Tree tree =
      read_text("Log, work in BLO throughout\n\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\n").tree;
  const Node& body = tree.nodes[tree.rounds.back().body];
  CHECK(body.kind == NodeKind::loops);
  CHECK(body.work.loops == stitch::back);
}

TEST_CASE("a table with semicolons or quoted cells is read by its heading") {
  CHECK(numbers_of("Rnd;Instruction;Stitches\n1;6 sc in MR;6\n2;inc x 6;12\n") == std::vector<int>{1, 2});
  CHECK(
      numbers_of("Round,Colour,Work,Sts\n1,red,\"6 sc in magic ring\",6\n2,red,\"(1 sc, 1 inc) x 3\",9\n") ==
      std::vector<int>{1, 2});
}

TEST_CASE("pictures and boxes before a label say nothing") {
  for (const std::string sign : {"\xF0\x9F\x94\xB4 ", "\xE2\x98\x90 ", "> ", "\xE2\x86\x92 "}) {
    CAPTURE(sign);
    CHECK(numbers_of(sign + "Rnd 1: 6 sc in MR (6)\n" + sign + "Rnd 2: inc x 6 (12)\n") ==
          std::vector<int>{1, 2});
  }
}

TEST_CASE("a chain above the first row is what it is worked into, whatever is said around it") {
  for (const char* start : {"With size E hook, ch 8.", "With grey, make a chain of 8.", "Foundation: ch 8.",
                            "Foundation - Ch 8", "1. Ch 8."}) {
    CAPTURE(start);
    const Read result = read_text(std::string("Ear\n\n") + start +
                                  "\nRow 1: Sc in 2nd ch from hook and in each ch across (7)\n");
    REQUIRE(result.tree.rounds.size() == 1);
    CHECK(result.tree.rounds[0].effect.starts);
  }
}

TEST_CASE("a sentence behind the chain that says what it is for works nothing") {
  const Tree tree = read_text("Ch 7. Stitches are worked around both sides of the foundation chain.\n\n"
                              "Rnd 1: sc in 2nd ch from hook, sc in next 4 ch, 3 sc in last ch, on the other "
                              "side sc in next 4 ch, inc in last ch (14)\n")
                        .tree;
  CHECK(std::none_of(tree.nodes.begin(), tree.nodes.end(),
                     [](const Node& node) { return node.kind == NodeKind::repeat && node.work.to_end; }));
}

TEST_CASE("a line that is wrapped within a sentence goes on, although it cuts the yarn at its end") {
  const Tree tree = read_text("1st Round - 6 sc in MR. 6 sc.\n2nd Round - 2 sc in each sc. 12 sc.\n"
                              "3rd Round - * 1 sc in each of next 2 sc, work next 2 sc\n"
                              "together; repeat from * around. 9 sc. Break off.\n")
                        .tree;
  REQUIRE(tree.rounds.size() == 3);
  CHECK(tree.rounds.back().effect.pass_makes == 3);
}

TEST_CASE("a table is read whichever of its columns holds the round") {
  const std::string rows = "6 | 1 | 6 sc in MR\n12 | 2 | inc x 6\n12 | 3-4 | sc around\n";
  CHECK(numbers_of("Sts | Rnd | What to do\n" + rows) == std::vector<int>{1, 2, 3, 4});
  CHECK(numbers_of("Colour;Instruction;Sts;Round\nred;6 sc in MR;6;1\nred;inc x 6;12;2\n") ==
        std::vector<int>{1, 2});
}

TEST_CASE("a line that is worked even for some rounds is those rounds where numbers leave room") {
  const std::string first = "Rnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\n";
  for (const char* line : {"Work even for 3 rounds.", "Work 3 rounds even.", "Sc 3 rounds even",
                           "knit 3 rows without changes", "Sc in each st around for 3 more rnds."}) {
    INFO(line);
    CHECK(numbers_of(first + line + "\nRnd 6: (sc, dec) x 4 (8)\n") == std::vector<int>{1, 2, 3, 4, 5, 6});
  }
  CHECK(numbers_of(first + "Work even for 3 rounds.\nRnd 5: dec x 6 (6)\n") == std::vector<int>{1, 2, 5});
}

TEST_CASE("a label without an end goes as far as its line says") {
  CHECK(numbers_of("Rnd 1: 4 sc in MR (4)\nRnd 2+: 4 sc, for 5 rounds (4)\n") ==
        std::vector<int>{1, 2, 3, 4, 5, 6});
}

TEST_CASE("a number alone is worked in the stitch of the rounds before") {
  const Tree tree = read_text("R1: 8 hdc in MR\nR2: inc x 8 (16)\nR3: 16\n").tree;
  const Node& body = tree.nodes[tree.rounds.back().body];
  CHECK(tree.kinds[tree.nodes[body.child].work.kind].name == "hdc");
}

TEST_CASE("a round told by another, but without its increases, is worked even") {
  for (const char* line : {"as Rnd 2, but without increases", "like Rnd 2 but without the increases",
                           "same as Rnd 2, without increasing"}) {
    INFO(line);
    const Tree tree =
        read_text("Rnd 1: 6 sc in MR\nRnd 2: inc x 6 (12)\nRnd 3: " + std::string(line) + " (12)\n").tree;
    CHECK(tree.rounds.back().effect.pass_uses == 1);
    CHECK(tree.rounds.back().effect.pass_makes == 1);
  }
}

TEST_CASE("a note with a name may stand between a chain and its first row") {
  const Read read =
      read_text("Leaf\n\nCh 9.\nTip: keep the chain loose!\nRow 1: sc in 2nd ch from hook and in "
                "each ch across. (8)\n");
  REQUIRE(read.tree.rounds.size() == 1);
  CHECK(read.tree.rounds.front().effect.starts);
  CHECK(std::all_of(read.findings.begin(), read.findings.end(),
                    [](const Finding& f) { return f.severity == Severity::note; }));
}
