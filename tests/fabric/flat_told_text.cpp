#include "text.hpp"

#include <catch2/catch.hpp>

using namespace whorl;
using test::Text;

namespace {

pattern::RoundKind kind_of(const Text& text, std::size_t round) {
  return text.read.tree.rounds.at(round).kind;
}

} // namespace

TEST_CASE("an unjoined chain that is turned is worked in rows, whatever its labels say") {
  const Text shell("Woodlouse\n\nSHELL\nCh 9\nR1 (RS): sc in 2nd ch from hook and each across, turn (8)\n"
                   "R2 (WS): ch 1, inc, sc 6, inc, turn (10)\nR3: ch 1, sc across (10)\n");
  CHECK(shell.said.empty());
  CHECK(kind_of(shell, 0) == pattern::RoundKind::row);
  CHECK(kind_of(shell, 2) == pattern::RoundKind::row);
}

TEST_CASE("an oval that is turned after each joined round stays in rounds") {
  const Text oval(
      "Leaf\n\nR1: ch 5, sc in 2nd ch from hook, sc 2, 3 sc in last ch, on the other side: sc 2, inc, "
      "sl st to first sc, turn (10)\nR2: ch 1, sc around, sl st to first sc, turn (10)\n");
  CHECK(kind_of(oval, 0) == pattern::RoundKind::round);
  CHECK(kind_of(oval, 1) == pattern::RoundKind::round);
}

TEST_CASE("a chain that is worked back along once, without a label, is a row") {
  const Text tail("Shrew\n\nTAIL\nCh 16, sl st in 2nd ch from hook and in each ch (15). Fasten off.\n");
  CHECK(kind_of(tail, 0) == pattern::RoundKind::row);
  CHECK(tail.said.empty());
}

TEST_CASE("a slip stitch to the chain that a round begins with joins, and a chain picot has so many chains") {
  const Text mat("Mat\n\nRnd 1: ch 4, 11 dc in 4th ch from hook, ss in 4th ch (12)\n"
                 "Rnd 2: ch 3, dc in same st, 2 dc in each st around, sl st to ch 3 (24)\n"
                 "Rnd 3: ch 1, *sc, ch 3 picot, sc; rep from * around, sl st to first sc (24)\n");
  CHECK(mat.said.empty());
  std::size_t chains = 0, picots = 0;
  for (std::uint32_t i = 0; i < mat.last().count; ++i) {
    const auto& stitch = mat.worked.fabric.stitches[mat.last().first_stitch + i];
    const std::string& name = mat.worked.fabric.kinds[stitch.kind].name;
    chains += name == "ch", picots += name == "picot";
  }
  CHECK(chains == 1);
  CHECK(picots == 12);
}

TEST_CASE("a frill without a label, below the loops it goes into, is a part of its own") {
  const Text stool(
      "Toadstool\n\nSTEM\nRnd 1: 7 sc in mr (7)\nRnd 2: 7 inc (14)\nRnd 3: in BLO, sc in each (14)\n\n"
      "Frill: attach cream to a front loop left on rnd 2\n(sl st, ch 2) in each loop around, join (14)\n");
  CHECK(stool.said.empty());
  REQUIRE(stool.read.tree.parts.size() == 2);
  CHECK(stool.read.tree.parts[1].name == "Frill");
  CHECK(stool.worked.fabric.parts[1].rounds == 1);
}

TEST_CASE("what grows from free loops upside down has no other side of a chain") {
  const Text skirt("Gnome\n\nBODY\nRnd 1: 6 sc in mr (6)\nRnd 2: inc x 6 (12)\nRnd 3: blo sc around (12)\n\n"
                   "SKIRT\njoin yarn in a front loop of Rnd 2, working upside down\n"
                   "Rnd 1: 2 hdc in each front loop around (24)\n");
  CHECK(skirt.said.empty());
  CHECK(skirt.worked.fabric.parts.at(1).rounds == 1);
}

TEST_CASE("a heading without a round that can be read is not passed over in silence") {
  const Text gnome(
      "Gnome\n\nBODY\nRnd 1: 6 sc in mr (6)\n\nBELT\nWrap 4 sc sideways, somehow, blorp 3 (12)\n");
  CHECK(gnome.said.find("I cannot read it as a round") != std::string::npos);
}

TEST_CASE("a title may say more behind a colon") {
  CHECK(Text("Ladder fungus: three frills on one stem\n\nRnd 1: 6 sc in mr (6)\n").read.tree.title ==
        "Ladder fungus: three frills on one stem");
  CHECK(Text("Yarn: two greens of moss\n\nFUNGUS\nRnd 1: 6 sc in mr (6)\n").read.tree.title !=
        "Yarn: two greens of moss");
}
