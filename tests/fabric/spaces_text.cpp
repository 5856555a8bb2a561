/// Rounds into chain spaces and rows with turning chains, typed: read by their figures alone.

#include "fabric/check.hpp"
#include "fabric/work.hpp"
#include "ids.hpp"
#include "pattern/read.hpp"
#include "text.hpp"

#include <catch2/catch.hpp>

using namespace whorl;
using Counts = std::vector<std::uint32_t>;
using Said = std::vector<std::string>;

namespace {

/// What the fabric counts of every part of a text on which nothing is to be said.
Counts counts_of(const std::string& text) {
  const pattern::Source source(text);
  const pattern::Read read = pattern::read(source, *words::find_vocabulary("en-US"));
  const fabric::Worked worked = fabric::work(read.tree);
  CHECK(ids::said(read.findings) == Said{});
  CHECK(ids::said(worked.findings) == Said{});
  CHECK(ids::said(fabric::check(read.tree, worked.fabric)) == Said{});
  Counts counts;
  for (const fabric::Round& round : worked.fabric.rounds)
    if (round.number > 0) counts.push_back(round.counted);
  return counts;
}

} // namespace

TEST_CASE("Work in each chain space around is counted by the spaces of the round before") {
  CHECK(counts_of(
            "Gill\nTerms: US\nRnd 1: 12 sc in a magic ring (12)\nRnd 2: (sc in next st, ch 1) around (12)\n"
            "Rnd 3: 2 sc in each ch-1 sp around (24)\nRnd 4: sc in each st around (24)\n") ==
        Counts{12, 12, 24, 24});
}

TEST_CASE("Work in each stitch and chain space is counted by both") {
  CHECK(counts_of(
            "Fungus\nTerms: US\nRnd 1: 8 sc in a magic ring (8)\nRnd 2: (sc in next st, ch 1) around (8)\n"
            "Rnd 3: sc in each sc and in each ch-1 sp around (16)\n") == Counts{8, 8, 16});
}

TEST_CASE("A counted turning chain at the end of a row is counted with the next") {
  CHECK(counts_of("Fern\nTerms: US\nCh 7.\nRow 1: dc in 4th ch from hook (skipped chs count as dc) and in "
                  "each ch across, "
                  "ch 3 (counts as dc), turn. (5 dc)\n"
                  "Row 2: dc in next st and in each st across. (5 dc)\n") == Counts{5, 5});
}

TEST_CASE("Work in each stitch and each chain goes into every chain between stitches") {
  CHECK(counts_of(
            "Vest\nTerms: US\nRnd 1: 12 sc in a magic ring (12)\n"
            "Rnd 2: 3 sc, ch 4, skip 2, 5 sc, ch 3, skip 2\nRnd 3: sc in each sc and in each ch around (15)\n"
            "Rnd 4: sc around (15)\n")
            .back() == 15);
  CHECK(counts_of("Vest\nTerms: US\nRow 1: ch 13, sc in 2nd ch from hook and in each ch across (12)\n"
                  "Row 2: ch 1, turn, 3 sc, ch 4, skip 4, 5 sc. 12 sts, counting the chains.\n"
                  "Row 3: ch 1, turn, 12 sc, one in every sc and one in every ch\n")
            .back() == 12);
}

TEST_CASE("More may go into each chain space than into each stitch") {
  CHECK(counts_of(
            "Fungus\nTerms: US\nRnd 1: 12 sc in a magic ring (12)\nRnd 2: (sc in next st, ch 1) around (12)\n"
            "Rnd 3: sc in each sc, working 2 sc in each ch-1 sp (36)\n") == Counts{12, 12, 36});
}

TEST_CASE("A starting chain longer than its stitch is that stitch and the chains between all others") {
  CHECK(counts_of("Fungus\nTerms: US\nRnd 1: MR, ch 3, 11 dc, join (12)\n"
                  "Rnd 2: ch 4, (dc in next st, ch 1) x 11, join (12 dc, 12 ch-1 sps)\n"
                  "Rnd 3: ch 1, 2 sc in each ch-1 sp around, join (24)\n") == Counts{12, 12, 24});
}

TEST_CASE("A round goes into the chains of two armholes where its count says so") {
  CHECK(counts_of("Gnome\nTerms: US\nRnd 1: 24 sc in a magic ring (24)\n"
                  "Rnd 2: 4 sc, ch 3, skip 4, 8 sc, ch 3, skip 4, 4 sc (22)\nRnd 3: sc around (22)\n") ==
        Counts{24, 22, 22});
}

TEST_CASE("A sleeve made twice begins in the first of two armholes") {
  CHECK(counts_of("Gnome\nTerms: US\nRnd 1: 24 sc in a magic ring (24)\n"
                  "Rnd 2: 4 sc, skip 4, 8 sc, skip 4, 4 sc (16)\nRnd 3: sc around (16)\n\nARM (make 2)\n"
                  "Rnd 1: join yarn at the underarm, sc in each skipped st of Rnd 2 around (4)\nRnd 2: sc "
                  "around (4)\n") == Counts{24, 16, 16, 4, 4});
}

TEST_CASE(
    "Chains that lead from the leg on the hook to another are worked on the way back and are places after") {
  CHECK(counts_of("Bear\nTerms: US\n\nLeg (make 2)\nRnd 1: 12 sc in a magic ring (12)\nRnd 2: sc around "
                  "(12)\n\nBody\n"
                  "Rnd 3: sc in 12 sts of this leg, ch 3, sc in the 12 sts of the first leg, 3 sc over the "
                  "chain (30)\n"
                  "Rnd 4: sc in each st around (30)\n") == Counts{12, 12, 30, 30});
}

// Common practice, no source
TEST_CASE("a chain space that is skipped is none that is worked into next") {
  const test::Text text(
      "Moss edge\nTerms: US\n\nRow 1: ch 11, sc in 2nd ch from hook and in each ch across, turn (10)\n"
      "Row 2: ch 1, sc in first 2 sts, (ch 1, sk 1, sc in next st) 4 times, turn\n"
      "Row 3: ch 1, sk next ch-1 sp, 3 sc in next ch-1 sp, sk next ch-1 sp, 3 sc in next ch-1 sp\n");
  CHECK(text.said == "");
  CHECK(text.into(1).substr(text.into(1).size() - 4) == "sp-3");
  CHECK(text.into(6).substr(text.into(6).size() - 4) == "sp-1");
}

TEST_CASE("in a repeat every other space is skipped, before a stitch a space only lies on the way") {
  const std::string mesh =
      "Moss rim\nTerms: US\n\nRnd 1: 12 sc in MR (12)\nRnd 2: (sc in next st, ch 2) around (12)\n";
  CHECK(counts_of(mesh + "Rnd 3: (3 dc in next ch-2 sp, sk next ch-2 sp) around (18)\n") ==
        Counts{12, 12, 18});
  CHECK(counts_of(mesh + "Rnd 3: (sc in next sc, sk next ch-2 sp, sc in next sc) 6 times (12)\n") ==
        Counts{12, 12, 12});
}

TEST_CASE("the last chains of a joined round pass over as many stitches as the others") {
  CHECK(counts_of("Frost rim\nTerms: US\n\nRnd 1: MR, 12 sc in ring, join with sl st to first sc (12)\n"
                  "Rnd 2: ch 1, sc in first st, *ch 3, sk 1, sc in next st; rep from * 4 times more, ch 3, "
                  "join with sl st to first sc (6 sc, 6 ch-3 sps)\n") == Counts{12, 6});
  const test::Text more(
      "Frost rim\nTerms: US\n\nRnd 1: MR, 12 sc in ring, join with sl st to first sc (12)\n"
      "Rnd 2: ch 1, sc in first st, *ch 3, sk 1, sc in next st; rep from * 3 times more, ch 3, "
      "join with sl st to first sc\n");
  CHECK(more.said.find("leaves 3 of the 12 stitches") != std::string::npos);
}
