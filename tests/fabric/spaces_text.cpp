/// Rounds into chain spaces and rows with turning chains, typed: read by their figures alone.

#include "fabric/check.hpp"
#include "fabric/work.hpp"
#include "ids.hpp"
#include "pattern/read.hpp"

#include <catch2/catch.hpp>

using namespace whorl;
using Counts = std::vector<std::uint32_t>;
using Said = std::vector<std::string>;

namespace {

/// What the fabric counts of a text on which nothing is to be said.
Counts counts_of(const std::string& text) {
  const pattern::Source source(text);
  const pattern::Read read = pattern::read(source, *words::find_vocabulary("en-US"));
  const fabric::Worked worked = fabric::work(read.tree);
  CHECK(ids::said(read.findings) == Said{});
  CHECK(ids::said(worked.findings) == Said{});
  CHECK(ids::said(fabric::check(read.tree, worked.fabric)) == Said{});
  return ids::counts_of(worked.fabric);
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
