#include "told.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace whorl;
using namespace whorl::pattern;

// Where a heading or a line says into which free loops its part goes: common practice, no source.

namespace {

const std::string foot =
    "Toadstool\n\nFoot\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\nRnd 3: BLO sc around (12)\n"
    "Rnd 4: sc around (12)\n\n";

/// The name of the last part, and the round whose loops its first round opens: "Skirt 3"; 0: it opens none.
std::string last_part(const std::string& text) {
  const Tree tree = read_text(text).tree;
  std::uint32_t opened = 0;
  for (const Node& node : tree.nodes)
    if (node.kind == NodeKind::work && node.work.act == Act::free_loops)
      opened = static_cast<std::uint32_t>(tree.rounds[node.round].from);
  return tree.parts.back().name + " " + std::to_string(opened);
}

} // namespace

TEST_CASE("a bracket behind a part's name says where its first round goes") {
  CHECK(last_part(foot +
                  "Skirt (worked in the front loops of Rnd 3)\n\nRnd 1: join yarn, 2 sc in each st (24)\n") ==
        "Skirt 3");
}

TEST_CASE("so does what stands behind a dash") {
  CHECK(last_part(foot + "SKIRT - in the unworked loops of Rnd 3:\nRnd 1: 2 sc in each st around (24)\n") ==
        "SKIRT 3");
}

TEST_CASE("so does a sentence behind a full stop") {
  CHECK(last_part(foot + "Skirt. Attach yarn in the front loops of Rnd 3.\nRnd 1: 2 sc in each st (24)\n") ==
        "Skirt 3");
}

TEST_CASE("a line between the name and the first round may name the part that the round is of") {
  CHECK(last_part(foot + "Skirt\nJoin yarn in the free front loops of round 3 of the foot.\n"
                         "Rnd 1: 2 sc in each front loop around (24)\n") == "Skirt 3");
}

TEST_CASE("the round is that of the part that is named") {
  const std::string cap = "Cap\nRnd 1: 5 sc in MR (5)\nRnd 2: inc x 5 (10)\nRnd 3: BLO sc around (10)\n"
                          "Rnd 4: sc around (10)\n\n";
  const Tree tree = read_text(foot + cap +
                              "Skirt\nJoin yarn in the free front loops of round 3 of the foot.\n"
                              "Rnd 1: 2 sc in each front loop around (24)\n")
                        .tree;
  const auto opens = std::find_if(tree.nodes.begin(), tree.nodes.end(),
                                  [](const Node& node) { return node.work.act == Act::free_loops; });
  REQUIRE(opens != tree.nodes.end());
  CHECK(tree.parts[tree.rounds[opens->round].part].name == "Foot");
}

TEST_CASE("a note behind its name is no part") {
  CHECK(last_part(foot + "Note: the front loops of Rnd 3 stay free.\nRnd 5: sc around (12)\n") == "Foot 0");
}
