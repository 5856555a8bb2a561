/// Starting chains, and chains skipped at the hook, that stand for a stitch.

#include "worked.hpp"

#include <catch2/catch.hpp>

using namespace whorl;
using fabric::Fabric;
using sample::Maker;
using sample::Where;
using Said = std::vector<std::string>;

namespace {

/// A leaf in rows: 15 double crochets along 17 chains, the skipped ones counting.
Maker leaf() {
  Maker m;
  m.part("Leaf");
  m.round({m.ch(17), m.counted(m.at_chain(m.work("dc", 1), 4)), m.to_end(m.work("dc", 1)), m.turn()}, 15)
      .kind = pattern::RoundKind::row;
  return m;
}

void state_kind(Maker& m, std::uint32_t count, const char* kind) {
  m.tree.rounds.back().stated = {
      {count, pattern::Unit::kind, *stitch::find_kind(m.tree.kinds, kind), {1, 2}}};
}

} // namespace

TEST_CASE("Seventeen chains and dc from the fourth on are fifteen dc") {
  // Foundation arithmetic: Ch 17; dc in 4th ch from hook and across = 15 dc (14 worked + skipped 3 ch counted
  // as one) (Leinhauser, S)
  CHECK(worked(leaf().tree).rounds[1].counted == 15);
}

TEST_CASE("The chains skipped at the hook are tallied as the stitch they stand for") {
  Maker m = leaf();
  state_kind(m, 15, "dc");
  CHECK(worked(m.tree).rounds[1].counted == 15);
}

TEST_CASE("The last chain of those skipped is the place of the stitch") {
  Maker m = leaf();
  m.round({m.ch(1), m.work("sc", 15)}, 15).kind = pattern::RoundKind::row;
  const Fabric fabric = worked(m.tree);
  CHECK(fabric.rounds[1].counting_chain == 16);
  CHECK(fabric::legs_of(fabric, static_cast<fabric::StitchId>(fabric.stitches.size() - 1)).begin()->into.of ==
        16);
}

TEST_CASE("A starting chain that counts adds one to its round") {
  Maker m = ring_of(12, "dc");
  m.round({m.counted_ch(3), m.work("dc", 11), m.join()}, 12);
  CHECK(worked(m.tree).rounds[1].counted == 12);
}

TEST_CASE("A starting chain that counts stands on the first stitch") {
  Maker m = ring_of(3, "dc");
  m.round({m.counted_ch(3), m.work("dc", 2)}, 3);
  const Fabric fabric = worked(m.tree);
  CHECK(ids::last_legs(fabric) == " |  |  | cap-1-2 | cap-1-3");
  CHECK(fabric.rounds[1].uses == 3);
}

TEST_CASE("In the same place behind a chain that counts is where it stands") {
  Maker m = ring_of(2, "dc");
  m.round({m.counted_ch(3), m.work("dc", 1, 1, Where::same), m.work("dc", 1, 2)}, 4);
  CHECK(ids::last_legs(worked(m.tree)) == " |  |  | cap-1-1 | cap-1-2 | cap-1-2");
}

TEST_CASE("Only the last of the chains counts") {
  Maker m = ring_of(3, "dc");
  m.round({m.counted_ch(3), m.work("dc", 2)}, 3);
  const Fabric fabric = worked(m.tree);
  CHECK(fabric.stitches[4].flags == fabric::starts_chain);
  CHECK(fabric.stitches[5].flags == (fabric::starts_chain | fabric::counts));
  CHECK(fabric.rounds[1].counting_chain == 5);
}

TEST_CASE("The round is joined to the chain that counts") {
  Maker m = ring_of(3, "dc");
  m.round({m.counted_ch(3), m.work("dc", 2), m.join()}, 3);
  CHECK(ids::last_legs(worked(m.tree)) == " |  |  | cap-1-2 | cap-1-3 | cap-2-3");
}

TEST_CASE("The next round goes into the top of the chain that counts") {
  Maker m = ring_of(3, "dc");
  m.round({m.counted_ch(3), m.work("dc", 2), m.join()}, 3);
  m.round({m.ch(1), m.sc(3)}, 3);
  CHECK(ids::last_legs(worked(m.tree)) == " | cap-2-3 | cap-2-4 | cap-2-5");
}

TEST_CASE("A turning chain that counts is the last place of the next row") {
  Maker m = leaf();
  m.round({m.counted_ch(3), m.work("dc", 14), m.turn()}, 15).kind = pattern::RoundKind::row;
  m.round({m.ch(1), m.sc(15)}, 15).kind = pattern::RoundKind::row;
  const Fabric fabric = worked(m.tree);
  const auto last = static_cast<fabric::StitchId>(fabric.stitches.size() - 1);
  CHECK(ids::into(fabric, last) == "leaf-2-3");
}

TEST_CASE("A repeat to the end goes on behind a chain that counts") {
  Maker m = ring_of(12, "dc");
  m.round({m.counted_ch(3), m.to_end(m.work("dc", 1)), m.join()}, 12);
  CHECK(worked(m.tree).rounds[1].uses == 12);
}

TEST_CASE("A chain that counts may stand in a ring") {
  Maker m;
  m.part("Cap");
  m.round({m.ring(), m.counted_ch(3), m.work("dc", 11), m.join()}, 12);
  CHECK(worked(m.tree).rounds[0].makes == 12);
}

TEST_CASE("A chain that counts before the ring is named stands in it") {
  Maker m;
  m.part("Cap");
  m.round({m.counted_ch(3), m.work("dc", 11, 1, Where::ring), m.join()}, 12);
  const Fabric fabric = worked(m.tree);
  CHECK(fabric.parts[0].start == fabric::Start::magic_ring);
  CHECK(fabric.rounds[0].makes == 12);
}

TEST_CASE("A chain that counts before the ring is made stands in it") {
  Maker m;
  m.part("Cap");
  m.round({m.counted_ch(3), m.ring(), m.work("dc", 13, 1, Where::ring), m.join()}, 14);
  CHECK(worked(m.tree).rounds[0].makes == 14);
}

TEST_CASE("A chain behind one that counts is a space") {
  Maker m = ring_of(2, "dc");
  m.round({m.counted_ch(3), m.ch(1), m.work("dc", 1), m.ch(1)}, 2);
  CHECK(worked(m.tree).rounds[1].spaces == 2);
}

TEST_CASE("The tally names the stitch that the chain stands for") {
  Maker m = ring_of(12, "dc");
  m.round({m.counted_ch(2), m.work("hdc", 11), m.join()});
  state_kind(m, 12, "hdc");
  CHECK(worked(m.tree).rounds[1].counted == 12);
}

TEST_CASE("Beside none but bobbles a chain stands for the stitch of its height") {
  Maker m = ring_of(3, "dc");
  m.round({m.counted_ch(3), m.work("bo", 2)});
  state_kind(m, 1, "dc");
  CHECK(worked(m.tree).rounds[1].counted == 1);
}

TEST_CASE("A chain that is not said to count is no stitch") {
  Maker m = ring_of(12, "dc");
  m.round({m.ch(3), m.work("dc", 12), m.join()}, 12);
  CHECK(worked(m.tree).rounds[1].counting_chain == fabric::none);
}

TEST_CASE("A turning chain that counts belongs to the row after it") {
  Maker m;
  m.part("Leaf");
  m.round({m.ch(7), m.counted(m.at_chain(m.work("dc", 1), 4)), m.to_end(m.work("dc", 1)), m.counted_ch(3),
           m.turn()},
          5)
      .kind = pattern::RoundKind::row;
  m.round({m.to_end(m.work("dc", 1))}, 5).kind = pattern::RoundKind::row;
  const Fabric fabric = worked(m.tree);
  CHECK(fabric.rounds[2].count == 7);
  CHECK(ids::last_legs(fabric) == " |  |  | leaf-1-3 | leaf-1-2 | leaf-1-1 | leaf-0-7");
}

TEST_CASE("Rows alike each begin with the turning chain of the one before") {
  Maker m = leaf();
  m.rounds(2, 4, {m.to_end(m.work("dc", 1)), m.counted_ch(3), m.turn()}, -1).kind = pattern::RoundKind::row;
  m.round({m.as(1)}).kind = pattern::RoundKind::row;
  const Fabric fabric = worked(m.tree);
  CHECK(fabric.rounds[2].counted == 15);
  CHECK(fabric.rounds[4].counted == 15);
  CHECK(fabric.rounds[5].counted == 15);
  CHECK(fabric.rounds[5].counting_chain != fabric::none);
}

TEST_CASE("Chains behind a turn within a round are no chain space") {
  Maker m = ring_of(4, "dc");
  m.round({m.sc(2), m.turn(), m.ch(1), m.sc(2)});
  CHECK(worked(m.tree).rounds[1].spaces == 0);
}
