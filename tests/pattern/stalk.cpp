#include "told.hpp"

#include "stitch/kind.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace whorl;
using namespace whorl::pattern;

namespace {

/// The moves of the first kind that a text defines itself.
std::string own_moves(const std::string& definition, const std::string& name) {
  const Tree tree = read_text("Hedgehog\n\nTerms: US\n" + definition +
                              "\n\nBODY\nRnd 1: 6 sc in MR (6)\nRnd 2: (" + name + ", sc) x 3 (6)\n")
                        .tree;
  const auto own = std::find_if(tree.kinds.begin(), tree.kinds.end(),
                                [](const stitch::StitchKind& kind) { return kind.own; });
  return own == tree.kinds.end() ? "" : own->moves;
}

/// How the third stitch of round 4 goes in.
std::string depth(const std::string& definition) {
  const Tree tree =
      read_text("Hedgehog\n\nTerms: US\n" + definition +
                "\n\nBODY\nRnd 1: 6 sc in MR (6)\nRnds 2-4: sc around (6)\nRnd 5: (lsc, sc) x 3 (6)\n")
          .tree;
  for (const Node& node : tree.nodes)
    if (node.kind == NodeKind::work && node.work.into == Into::below) return std::to_string(node.work.down);
  return "";
}

} // namespace

TEST_CASE("a stitch with chains that are closed back into it is one stitch, told in a line") {
  for (const char* definition :
       {"Prickle (pr): sc, ch 4, sl st back into that sc", "Prickle (pr): sc, ch 4, sl st into the sc",
        "Prickle stitch (pr) = 1 sc in next st, 4 ch, sl st in first ch",
        "PR: sc in st, ch 4, sl st in same st"}) {
    CAPTURE(definition);
    CHECK(own_moves(definition, "pr") == "i d p2 (c)4 i* p1");
  }
  CHECK(own_moves("Thorn (th): dc, ch 3, ss in the dc", "th") == "o i d p2 p2 (c)3 i* p1");
}

TEST_CASE("what is worked behind the chains makes another thing of them") {
  CHECK(own_moves("Prickle (pr): sc, ch 4, sl st in that sc, sc in next st", "pr").empty());
  CHECK(own_moves("Prickle (pr): 2 sc, ch 4, sl st in that sc", "pr").empty());
}

TEST_CASE("its shape is that of the stitch, with the chains on it") {
  const stitch::StitchKind prickle = stitch::with_chains(stitch::standard_kinds()[2], 4);
  const stitch::Shape shape = stitch::shape_of(prickle);
  CHECK(shape.legs == 1);
  CHECK(shape.cross);
  CHECK(shape.height == 1);
  CHECK(shape.picot == 4);
  CHECK(shape.stems == 0);
}

TEST_CASE("a spike of the pattern's own goes as deep as its line says") {
  CHECK(depth("Long sc (lsc): sc two rounds below") == "2");
  CHECK(depth("lsc: sc in the st 3 rounds below") == "3");
  CHECK(depth("lsc = sc worked 2 rnds below") == "2");
  CHECK(depth("long single crochet (lsc): sc into the stitch one round below") == "1");
}

TEST_CASE("a spike that a sentence explains goes as deep as it says") {
  const auto told = [](const std::string& rounds) {
    const Tree tree =
        read_text("Cone\n\nTerms: US\nTo make a spike: insert your hook " + rounds +
                  " below, pull up a long loop, finish as sc.\n\nRnd 1: 6 sc in MR (6)\nRnds 2-5: "
                  "sc around (6)\nRnd 6: (2 sc, spike) x 2 (6)\n")
            .tree;
    for (const Node& node : tree.nodes)
      if (node.kind == NodeKind::work && node.work.into == Into::below) return int{node.work.down};
    return 0;
  };
  CHECK(told("one round") == 1);
  CHECK(told("two rounds") == 2);
  CHECK(told("3 rounds") == 3);
}
