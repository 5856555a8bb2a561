#include "pattern/read.hpp"

#include <algorithm>
#include <catch2/catch.hpp>

using namespace whorl;
using namespace whorl::pattern;

namespace {

/// The stitches of the last round of a pattern, by the names of their kinds.
std::string stitches_of(const std::string& rounds) {
  const Tree tree = read(Source("Fawn\n\n" + rounds), *words::find_vocabulary("en-US")).tree;
  std::string text;
  std::vector<NodeId> open{tree.rounds.back().body};
  while (!open.empty()) {
    const Node& node = tree.nodes[open.back()];
    open.pop_back();
    if (node.next != no_node) open.push_back(node.next);
    if (node.child != no_node) open.push_back(node.child);
    if (node.kind == NodeKind::work && node.work.act == Act::stitch)
      text += tree.kinds[node.work.kind].name + " ";
  }
  return text;
}

} // namespace

TEST_CASE("a round of bare increases takes the stitch that its count names") {
  CHECK(stitches_of("Rnd 1: 6 hdc in MR (6)\nRnd 2: inc x 6 (12 hdc)\n") == "hdc ");
}

TEST_CASE("a round that names no stitch takes the only one of the rounds before") {
  CHECK(stitches_of("Rnd 1: 6 hdc in MR (6)\nRnd 2: inc x 6 (12)\n") == "hdc ");
  CHECK(stitches_of("Rnd 1: 12 dc in MR (12)\nRnd 2: dec x 6 (6)\n") == "dc2tog ");
}

TEST_CASE("behind rounds of several stitches a bare increase is one of single crochet") {
  CHECK(stitches_of("Rnd 1: 6 hdc in MR (6)\nRnd 2: sc around (6)\nRnd 3: inc x 6 (12)\n") == "sc ");
}

TEST_CASE("the rounds of another part do not tell which stitch is meant") {
  CHECK(stitches_of("EAR\nRnd 1: 6 hdc in MR (6)\n\nTAIL\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\n") ==
        "sc ");
}

TEST_CASE("5c is read as the sc that scanning made it of, and that is said") {
  const Read result = read(Source("Nut\n\nRnd 1: 6 5C in MR (6)\n"), *words::find_vocabulary("en-US"));
  const auto said = std::count_if(result.findings.begin(), result.findings.end(), [](const Finding& finding) {
    return finding.severity == Severity::note && finding.message == "`5C` is read as sc";
  });
  CHECK(said == 1);
}
