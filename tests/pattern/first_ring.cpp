#include "pattern/read.hpp"

#include <algorithm>
#include <catch2/catch.hpp>

using namespace whorl;
using namespace whorl::pattern;

namespace {

Read read_text(std::string_view text) { return read(Source(text), *words::find_vocabulary("en-US")); }

bool begins_in_ring(std::string_view text) {
  const Tree tree = read_text(text).tree;
  return std::any_of(tree.nodes.begin(), tree.nodes.end(), [](const Node& node) {
    return node.kind == NodeKind::work && node.work.act == Act::ring;
  });
}

} // namespace

TEST_CASE("a first round of plain stitches begins in a ring") {
  CHECK(begins_in_ring("Fox\n\nR1: 6 sc (6)\nR2: 6 inc (12)"));
}

TEST_CASE("so does one that stands on chains and is joined") {
  CHECK(begins_in_ring(
      "Flower\n\nR1: ch 3 (counts as dc), 11 dc, join (12)\nR2: ch 1, 2 sc in each st, join (24)"));
}

TEST_CASE("that the ring was not told is said") {
  const Read result = read_text("Fox\n\nR1: 6 sc (6)\nR2: 6 inc (12)");
  CHECK(std::any_of(result.findings.begin(), result.findings.end(), [](const Finding& finding) {
    return finding.code == "ring" && finding.severity == Severity::note;
  }));
}

TEST_CASE("a first row begins in no ring") {
  CHECK_FALSE(begins_in_ring("Fox\n\nRow 1: 6 sc (6)\nRow 2: 6 sc (6)"));
}

TEST_CASE("a round that goes on with an earlier part begins in no ring") {
  CHECK_FALSE(begins_in_ring("Fox\n\nRnd 12: 6 sc (6)\nRnd 13: 6 inc (12)"));
}

TEST_CASE("a first round of decreases begins in no ring") {
  CHECK_FALSE(begins_in_ring("Fox\n\nR1: 6 dec (6)"));
}

TEST_CASE("a slip stitch that forms a ring of the chain above makes no magic ring") {
  for (const char* start : {"Ch 18, ss into a ring", "ch 18 slst to make a ring careful not to twist"}) {
    INFO(start);
    const std::string text = std::string("Log\n\n") + start + "\nR1: sc in each ch around (18)\n";
    CHECK_FALSE(begins_in_ring(text));
    CHECK(read_text(text).tree.rounds.back().effect.starts);
  }
}
