/// What is worked into loops that were left, from the text on. Common practice, no source.

#include "stitch/moves.hpp"
#include "text.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <string>

using namespace whorl;
using test::Text;

namespace {

const std::string cup = "CUP\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\nRnd 3: (sc, inc) x 6 (18)\n"
                        "Rnd 4: (2 sc, inc) x 6 (24)\nRnd 5: BLO sc around (24)\nRnd 6: sc around (24)\n";

std::size_t with_free(const fabric::Fabric& fabric, std::uint32_t round, std::uint8_t loop) {
  std::size_t found = 0;
  for (std::uint32_t i = 0; i < fabric.rounds[round].count; ++i)
    if ((fabric::free_loops(fabric, fabric.rounds[round].first_stitch + i) & loop) != 0) ++found;
  return found;
}

} // namespace

TEST_CASE("24 stitches worked even in back loops leave 24 front loops") {
  const Text text("Woodland cup\n\n" + cup);
  CHECK(text.said == "");
  CHECK(with_free(text.worked.fabric, 3, stitch::front) == 24);
  CHECK(with_free(text.worked.fabric, 3, stitch::back) == 0);
}

TEST_CASE("six repeats in free loops use 12 of them, skip 12 and make 6 own stitches, 6 sc and 12 spaces") {
  const Text text("Woodland cup\n\nPetal (pt): 3 tr in the same loop, joined together\n\n" + cup +
                  "\nPETALS\nJoin yarn in the free front loops of Rnd 4.\n"
                  "Rnd 1: (pt in next free loop, ch 1, skip 1, sc in next, ch 1, skip 1) x 6, join "
                  "(6 pt, 6 sc, 12 ch-1 sps)\n");
  CHECK(text.said == "");
  const fabric::Fabric& fabric = text.worked.fabric;
  CHECK(with_free(fabric, 3, stitch::front) == 12);
  std::size_t petals = 0, single = 0, spaces = 0;
  for (std::uint32_t i = 0; i < text.last().count; ++i) {
    const stitch::StitchKind& kind = fabric.kinds[fabric.stitches[text.last().first_stitch + i].kind];
    if (kind.own) ++petals;
    if (kind.name == "sc") ++single;
  }
  for (const fabric::Arch& arch : fabric.arches)
    if (fabric.stitches[arch.first_chain].round + 1 == fabric.rounds.size() && arch.count == 1) ++spaces;
  CHECK(petals == 6);
  CHECK(single == 6);
  CHECK(spaces == 12);
}

TEST_CASE("three unfinished tr over the next three stitches, joined, come down to one loop") {
  for (const char* line : {"Petal (pt) = 3 unfinished tr over the next 3 sts, joined together",
                           "pt: work 3 unfinished tr over the next 3 sts, join together",
                           "Petal stitch (pt): 1 unfinished tr in each of the next 3 sts, joined together"}) {
    INFO(line);
    const Text text("Woodland cup\n\n" + std::string(line) +
                    "\n\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\nRnd 3: pt x 4 (4)\n");
    CHECK(text.said == "");
    const fabric::Fabric& fabric = text.worked.fabric;
    const stitch::StitchKind& kind = fabric.kinds[fabric.stitches[text.last().first_stitch].kind];
    CHECK(kind.takes == 3);
    CHECK(kind.makes == 1);
    const auto moves = stitch::parse_moves(kind.moves);
    REQUIRE(moves);
    CHECK(stitch::loops_on_hook(*moves) == std::vector{4, 3, 2, 5, 4, 3, 6, 5, 4, 1});
  }
}

namespace {

std::string notes_of(const std::string& frill) {
  const pattern::Source source("Woodland cup\n\n" + cup + "\n" + frill);
  const pattern::Read read = pattern::read(source, *words::find_vocabulary("en-US"));
  const fabric::Worked worked = fabric::work(read.tree);
  std::string said;
  for (const pattern::Finding& finding : fabric::check(read.tree, worked.fabric))
    if (finding.code == "left-free") said += finding.message + "\n";
  return said;
}

} // namespace

TEST_CASE("loops that no part takes beside those that one does are noted, with their number and where") {
  CHECK(notes_of("FRILL\nRnd 1: in the free front loops of Rnd 4, 20 sc (20)\n") ==
        "4 of the 24 front loops of round 4 of CUP stay free behind FRILL\n");
  CHECK(notes_of("FRILL\nRnd 1: in the free front loops of Rnd 4, sc around (24)\n").empty());
  CHECK(notes_of("FRILL\nRnd 1: in the free front loops of Rnd 4, (sc in next, skip 1) x 12 (12)\n").empty());
}

TEST_CASE("loops behind an invisible decrease are out of reach") {
  const Text text("Cup\n\nCUP\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\nRnd 3: invdec x 6 (6)\n\n"
                  "FRILL\nRnd 1: in the free back loops of Rnd 2, sc around (12)\n");
  CHECK(text.said.find(
            "there are no free back loops of round 2: all of them are worked into, or lie out of reach "
            "behind an invisible decrease") != std::string::npos);
}

TEST_CASE("a part begins in the loop that its text names") {
  for (const char* frill : {
           "FRILL\nRnd 1: join yarn in the 5th free front loop of Rnd 4, sc in next 6 free loops (6)\n",
           "FRILL\nJoin yarn in the 5th front loop of Rnd 4.\nRnd 1: sc in same loop, sc in next 5 free "
           "loops (6)\n",
           "FRILL\nRnd 1: attach yarn in the front loop of stitch 5 of Rnd 4, 6 sc (6)\n",
           "FRILL\nRnd 1: join in the free FL of the 5th st of Rnd 4, 6 sc (6)\n",
           "FRILL: worked into the free front loops of Rnd 4, starting in loop 5\nRow 1: 6 sc, turn (6)\n",
           "FRILL (in the free front loops of Rnd 4, starting in loop 5)\nRow 1: 6 sc, turn (6)\n",
           "FRILL - in free loops of round 4, beginning with loop 5\nRow 1: 6 sc, turn (6)\n",
           "FRILL\nJoin yarn in the free front loops of Rnd 4, start in loop 5.\nRow 1: 6 sc, turn (6)\n",
           "FRILL\nStarting in loop 5 of the free front loops of Rnd 4:\nRow 1: 6 sc, turn (6)\n",
           "FRILL\nJoin yarn with a sl st in loop 5 of the free front loops of Rnd 4.\nRow 1: 6 sc, turn "
           "(6)\n",
           "FRILL\nWork in the free front loops of Rnd 4, beg in the 5th free loop.\nRow 1: 6 sc, turn (6)\n",
           "FRILL\nRow 1: In the free front loops of Rnd 4: sc in loop 5, sc in next 5 loops, turn (6)\n",
           "FRILL\nWork in the free front loops of Rnd 4.\nRow 1: sc in the 5th free loop, sc in next 5 "
           "loops, turn (6)\n",
       }) {
    INFO(frill);
    const Text text("Woodland cup\n\n" + cup + "\n" + frill);
    CHECK(text.said == "");
    CHECK(text.into(0) == "cup-4-5");
    CHECK(text.into(5) == "cup-4-10");
  }
  const Text beyond(
      "Woodland cup\n\n" + cup +
      "\nFRILL\nRnd 1: join yarn in the 25th free front loop of Rnd 4, sc in next 6 free loops (6)\n");
  CHECK(beyond.said.find("round 4 has 24 front loops, there is no loop 25") != std::string::npos);
}

TEST_CASE("a part goes into the loops that its text numbers, from the last where the owner's start is up") {
  for (const char* frill : {"FRILL\nRnd 1: in the free front loops 4-9 of Rnd 4, sc in each (6)\n",
                            "FRILL\nRow 1: 6 sc in the front loops 4 to 9 of Rnd 4 (6)\n"}) {
    INFO(frill);
    const Text text("Woodland cup\n\n" + cup + "\n" + frill);
    CHECK(text.said == "");
    CHECK(text.into(0) == "cup-4-4");
    CHECK(text.into(5) == "cup-4-9");
  }
  const Text up(
      "Woodland cup\n\n" + cup +
      "\nFRILL\nHold the cup with its start up.\nRnd 1: in the free front loops 4-9 of Rnd 4, 6 sc (6)\n");
  CHECK(up.into(0) == "cup-4-9");
  CHECK(up.into(5) == "cup-4-4");
  const Text beyond("Woodland cup\n\n" + cup +
                    "\nFRILL\nRnd 1: in the free front loops 20-26 of Rnd 4, 7 sc (7)\n");
  CHECK(beyond.said.find("round 4 has 24 front loops, there is no loop 26") != std::string::npos);
}

TEST_CASE("a yarn is joined to any loop while the piece is held some way") {
  const Text text(
      "Woodland cup\n\n" + cup +
      "\nFRILL\nWith the cup held upside down, join yarn to any front loop of Rnd 4.\nRnd 1: 24 sc (24)\n");
  CHECK(text.said == "");
  CHECK(text.into(0) == "cup-4-1");
  const Text same("Woodland cup\n\n" + cup +
                  "\nFRILL\nJoin in the free front loops of Rnd 4.\n"
                  "Rnd 1: 2 sc in same loop as joining, sc in each of the next 23 loops (25)\n");
  CHECK(same.said == "");
  CHECK(same.into(1) == "cup-4-1");
  CHECK(same.into(2) == "cup-4-2");
}

TEST_CASE("two loops told by their numbers are not taken for the next ones") {
  const Text text("Woodland cup\n\n" + cup +
                  "\nFRILL\nRow 1: In the free front loops of Rnd 4: sc in loop 5, sc in loop 9, turn (2)\n");
  CHECK(text.said != "");
}

TEST_CASE("a heading may tell how many pieces begin in free loops") {
  const Text text("Woodland cup\n\n" + cup +
                  "\nFRILLS (make 2, worked in the front loops left free in Rnd 4)\nRow 1: 6 sc, turn (6)\n");
  CHECK(text.said == "");
  CHECK(text.worked.fabric.parts.back().name == "FRILLS");
  CHECK(text.worked.fabric.parts.back().make == 2);
  CHECK(text.into(0) == "cup-4-1");
}

TEST_CASE("a heading may tell along which round a part is worked") {
  for (const char* heading : {"RIM (worked along the last round of the cup)",
                              "RIM (worked along the last round)", "Rim - along the last round of the cup"}) {
    CAPTURE(heading);
    const Text text("Woodland cup\n\n" + cup + "\n" + heading + "\nRnd 1: (sc 3, inc) x 6 (30)\n");
    CHECK(text.said == "");
    CHECK(text.worked.fabric.parts.size() == 2);
    const std::string last = text.into(0);
    CHECK(last.substr(0, 4) == "cup-");
    CHECK(last.substr(last.rfind('-')) == "-1");
  }
}

// Common practice, no source
TEST_CASE("a frill in loops left free is told in many ways, with a label and without") {
  const std::string bell = "Bell\n\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\nRnd 3: BLO sc around (12)\n"
                           "Rnd 4: sc around (12)\nFasten off.\n\nFrill\n";
  for (const char* told :
       {"Rnd 1: Attach yarn with a sl st to any front loop of Rnd 2, ch 1, (2 sc in next free loop) around "
        "the front "
        "loops, sl st to first sc. (24)",
        "Attach yarn with a sl st to any front loop of Rnd 2, ch 1, (2 sc in next free loop) around the "
        "front loops, "
        "sl st to first sc. (24)",
        "Attach yarn to any front loop of Rnd 2, ch 1, 2 sc in each front loop around, join. (24)",
        "Return to Rnd 2. Attach yarn to the front loops.\nRnd 1: 2 hdc in each loop (24)",
        "Return to Rnd 2. Attach yarn to the front loops.\nRnd 1: in each unworked front loop work 2 hdc "
        "(24)",
        "Rnd 1: in each unworked front loop of Rnd 2 work 2 hdc (24)",
        "Go back to the free loops of Rnd 2 and join yarn.\nRnd 1: 2 hdc in each loop (24)"}) {
    CAPTURE(told);
    const test::Text text(bell + told + "\n");
    CHECK(text.said == "");
    CHECK(text.worked.fabric.parts.size() == 2);
    CHECK(text.last().counted == 24);
    CHECK(text.worked.fabric.parts.back().start == whorl::fabric::Start::free_loops);
  }
}
