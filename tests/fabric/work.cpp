#include "fabric/work.hpp"

#include "ids.hpp"
#include "sample.hpp"

#include <catch2/catch.hpp>

using namespace whorl;
using fabric::Fabric;
using sample::Maker;
using Said = std::vector<std::string>;
using Counts = std::vector<std::uint32_t>;

namespace {

/// The fabric of a tree in which nothing is to be said.
Fabric worked(const pattern::Tree& tree) {
  fabric::Worked worked = fabric::work(tree);
  CHECK(ids::said(worked.findings) == Said{});
  return std::move(worked.fabric);
}

Said said(const pattern::Tree& tree) { return ids::said(fabric::work(tree).findings); }

/// A part with a first round of `count` in a ring.
Maker ring_of(std::uint32_t count) {
  Maker m;
  m.part("Cap");
  m.round({m.ring(), m.sc(count)});
  return m;
}

} // namespace

// Starts

TEST_CASE("Every stitch of a first round goes into the magic ring") {
  const Fabric fabric = worked(ring_of(3).tree);
  CHECK(fabric.parts[0].start == fabric::Start::magic_ring);
  CHECK(ids::last_legs(fabric) == "cap-ring | cap-ring | cap-ring");
}

TEST_CASE("Stitches said to go in a ring open it") {
  Maker m;
  m.part("Cap");
  m.round({m.work("sc", 6, 1, pattern::Where::ring)});
  const Fabric fabric = worked(m.tree);
  CHECK(fabric.parts[0].start == fabric::Start::magic_ring);
  CHECK(fabric.rounds[0].makes == 6);
}

TEST_CASE("A ring named behind its stitches is the one that they go into") {
  Maker m;
  m.part("Cap");
  m.round({m.sc(3), m.ring()}, 3);
  CHECK(ids::last_legs(worked(m.tree)) == "cap-ring | cap-ring | cap-ring");
}

TEST_CASE("A ring uses no stitch of a round before") { CHECK(worked(ring_of(6).tree).rounds[0].uses == 0); }

TEST_CASE("A ring may be made in a line of its own") {
  Maker m;
  m.part("Cap");
  m.round({m.ring()});
  m.round({m.sc(2)});
  CHECK(ids::last_legs(worked(m.tree)) == "cap-ring | cap-ring");
}

TEST_CASE("A start in the second chain puts all stitches into that chain") {
  Maker m;
  m.part("Cap");
  m.round({m.ch(2), m.in_chain(3, 2)}, 3);
  const Fabric fabric = worked(m.tree);
  CHECK(fabric.parts[0].start == fabric::Start::second_chain);
  CHECK(ids::last_legs(fabric) == "cap-0-ch-2 | cap-0-ch-2 | cap-0-ch-2");
}

TEST_CASE("The chains of a start are a round 0 before the part's first and do not count") {
  Maker m;
  m.part("Cap");
  m.round({m.ch(2), m.in_chain(6, 2)}, 6);
  const Fabric fabric = worked(m.tree);
  REQUIRE(fabric.parts[0].foundation == 0);
  CHECK(fabric.parts[0].first_round == 1);
  CHECK(fabric.rounds[0].kind == pattern::RoundKind::chain);
  CHECK(fabric.rounds[0].count == 2);
  CHECK(fabric.rounds[1].count == 6);
  CHECK(fabric.rounds[1].counted == 6);
}

TEST_CASE("Several in one chain are the same as one several times") {
  Maker m;
  m.part("Cap");
  m.round({m.ch(2), m.work("sc", 1, 5, pattern::Where::chain)}, 5);
  m.tree.nodes[1].work.nth = 2;
  CHECK(worked(m.tree).rounds[1].makes == 5);
}

TEST_CASE("A chain that is not there cannot be worked into") {
  Maker m;
  m.part("Cap");
  m.round({m.ch(2), m.in_chain(6, 5)});
  CHECK(said(m.tree) ==
        Said{"error past-end: round 1: there is no chain number 5 from the hook: the chain has only 2",
             "warning stopped: Cap is not drawn: it begins with round 1, which could not be worked"});
}

TEST_CASE("Fifteen chains leave fourteen single crochets") {
  // Foundation arithmetic: Ch 15; sc in 2nd ch from hook and in each ch across = 14 sc (Leinhauser, S)
  Maker m;
  m.part("Belt");
  m.round({m.ch(15), m.in_chain(1, 2), m.sc_around()}).kind = pattern::RoundKind::row;
  const Fabric fabric = worked(m.tree);
  CHECK(fabric.parts[0].start == fabric::Start::chain);
  CHECK(fabric.rounds[1].counted == 14);
}

TEST_CASE("A chain in a line of its own is worked along in the next") {
  Maker m;
  m.part("Belt");
  m.round({m.ch(4)}, 4).kind = pattern::RoundKind::chain;
  m.round({m.in_chain(1, 2), m.sc_around()}).kind = pattern::RoundKind::row;
  const Fabric fabric = worked(m.tree);
  CHECK(fabric.parts[0].foundation == 0);
  CHECK(ids::last_legs(fabric) == "belt-0-ch-2 | belt-0-ch-3 | belt-0-ch-4");
}

TEST_CASE("A joined chain is a ring") {
  Maker m;
  m.part("Coaster");
  m.round({m.ch(4), m.join(), m.sc(8)}, 8);
  const Fabric fabric = worked(m.tree);
  CHECK(fabric.parts[0].start == fabric::Start::chain_ring);
  CHECK(fabric.rounds[1].makes == 8);
}

TEST_CASE("A part that begins with nothing to work into says so") {
  Maker m;
  m.part("Cap");
  m.round({m.sc(6)});
  CHECK(said(m.tree) ==
        Said{"error nothing: round 1 has nothing to work into: begin with a magic ring or a chain",
             "warning stopped: Cap is not drawn: it begins with round 1, which could not be worked"});
}

TEST_CASE("Work to the end of nothing says that there is nothing") {
  Maker m;
  m.part("Frill");
  m.round({m.sc_around()}, 14);
  CHECK(said(m.tree).front() ==
        "error nothing: round 1 has nothing to work into: begin with a magic ring or a chain");
}

TEST_CASE("A ring has no end to work to") {
  Maker m;
  m.part("Cap");
  m.round({m.ring(), m.sc_around()});
  CHECK(said(m.tree).front() == "error ring: round 1: a ring has no end: say how many stitches go into it");
}

// Increases, decreases, skips

TEST_CASE("Both stitches of an increase go into the same place") {
  Maker m = ring_of(2);
  m.round({m.inc(2)}, 4);
  CHECK(ids::last_legs(worked(m.tree)) == "cap-1-1 | cap-1-1 | cap-1-2 | cap-1-2");
}

TEST_CASE("A decrease has a leg in each of two stitches") {
  Maker m = ring_of(4);
  m.round({m.dec(2)}, 2);
  CHECK(ids::last_legs(worked(m.tree)) == "cap-1-1, cap-1-2 | cap-1-3, cap-1-4");
}

TEST_CASE("An invisible decrease takes two front loops") {
  Maker m = ring_of(2);
  m.round({m.invdec(1)}, 1);
  CHECK(ids::last_legs(worked(m.tree)) == "cap-1-1 front, cap-1-2 front");
}

TEST_CASE("No hook reaches the back loops behind an invisible decrease") {
  Maker m = ring_of(3);
  m.round({m.invdec(1), m.flo({m.sc(1)})}, 2);
  const Fabric fabric = worked(m.tree);
  CHECK(fabric::free_loops(fabric, 0) == stitch::no_loop);
  CHECK(fabric::free_loops(fabric, 2) == stitch::back);
}

TEST_CASE("An invisible decrease in back loops is worked as the plain one and said") {
  Maker m = ring_of(4);
  m.round({m.blo({m.sc(2), m.invdec(1)})}, 3);
  const fabric::Worked worked = fabric::work(m.tree);
  CHECK(ids::said(worked.findings) == Said{"warning loops: an invisible decrease takes front loops: in back "
                                           "loops it is worked as the plain decrease"});
  CHECK(ids::last_legs(worked.fabric) == "cap-1-1 back | cap-1-2 back | cap-1-3 back, cap-1-4 back");
}

TEST_CASE("A skipped stitch keeps its loops free and is not left over") {
  Maker m = ring_of(3);
  m.round({m.sc(1), m.skip(1), m.sc(1)}, 2);
  const Fabric fabric = worked(m.tree);
  CHECK(ids::last_legs(fabric) == "cap-1-1 | cap-1-3");
  CHECK(fabric::free_loops(fabric, 1) == stitch::both);
  CHECK(fabric.rounds[1].left_over == 0);
}

TEST_CASE("A stitch in the same place uses no further stitch") {
  Maker m = ring_of(2);
  m.round({m.sc(1), m.work("sc", 1, 1, pattern::Where::same), m.sc(1)}, 3);
  CHECK(ids::last_legs(worked(m.tree)) == "cap-1-1 | cap-1-1 | cap-1-2");
}

TEST_CASE("In the same place with none before it is the next place") {
  Maker m = ring_of(2);
  m.round({m.work("sc", 1, 1, pattern::Where::same), m.sc(1)}, 2);
  CHECK(ids::last_legs(worked(m.tree)) == "cap-1-1 | cap-1-2");
}

TEST_CASE("A group goes into one place and every stitch of it counts") {
  Maker m = ring_of(2);
  m.round({m.group({m.work("dc", 2), m.ch(1), m.work("dc", 2)}), m.sc(1)}, 5);
  const Fabric fabric = worked(m.tree);
  CHECK(ids::last_legs(fabric) == "cap-1-1 | cap-1-1 |  | cap-1-1 | cap-1-1 | cap-1-2");
  CHECK(fabric.rounds[1].counted == 5);
}

TEST_CASE("The last stitch of a round can be worked into from the front") {
  Maker m = ring_of(3);
  m.round({m.work("sc", 1, 1, pattern::Where::last), m.sc(2)}, 3);
  CHECK(ids::last_legs(worked(m.tree)) == "cap-1-3 | cap-1-1 | cap-1-2");
}

TEST_CASE("A bobble has all its legs in one stitch and counts once") {
  Maker m = ring_of(2);
  m.round({m.work("bo", 1), m.sc(1)}, 2);
  CHECK(ids::last_legs(worked(m.tree)) == "cap-1-1, cap-1-1, cap-1-1, cap-1-1, cap-1-1 | cap-1-2");
}

// Loops

TEST_CASE("A round in back loops leaves the front loops of the round before free") {
  Maker m = ring_of(3);
  m.round({m.blo({m.sc_around()})}, 3);
  const Fabric fabric = worked(m.tree);
  CHECK(ids::last_legs(fabric) == "cap-1-1 back | cap-1-2 back | cap-1-3 back");
  CHECK(fabric::free_loops(fabric, 0) == stitch::front);
  CHECK(fabric::free_loops(fabric, 3) == stitch::both);
}

TEST_CASE("The innermost loops win") {
  Maker m = ring_of(4);
  m.round({m.blo({m.sc(1), m.flo({m.sc(1), m.in_loops(m.sc(1), stitch::third)}), m.sc(1)})}, 4);
  CHECK(ids::last_legs(worked(m.tree)) == "cap-1-1 back | cap-1-2 front | cap-1-3 third | cap-1-4 back");
}

TEST_CASE("Back loops end with the round") {
  Maker m = ring_of(2);
  m.round({m.blo({m.sc_around()})});
  m.round({m.sc_around()});
  CHECK(ids::last_legs(worked(m.tree)) == "cap-2-1 | cap-2-2");
}

TEST_CASE("A decrease in back loops takes two back loops") {
  Maker m = ring_of(2);
  m.round({m.in_loops(m.dec(1), stitch::back)}, 1);
  CHECK(ids::last_legs(worked(m.tree)) == "cap-1-1 back, cap-1-2 back");
}

TEST_CASE("Back loops are nothing to a ring") {
  Maker m;
  m.part("Cap");
  m.round({m.ring(), m.blo({m.sc(1)})});
  CHECK(ids::last_legs(worked(m.tree)) == "cap-ring");
}

// Repeats

TEST_CASE("A repeat in brackets is worked so many times in all") {
  Maker m = ring_of(6); // ( ... ) N times = N in all: 1918 Handbook P
  m.round({m.repeat(3, {m.sc(1), m.inc(1)})}, 9);
  CHECK(worked(m.tree).rounds[1].counted == 9);
}

TEST_CASE("Repeats in repeats multiply") {
  Maker m = ring_of(12);
  m.round({m.repeat(2, {m.repeat(2, {m.sc(1), m.inc(1)}), m.sc(2)})}, 16);
  const Fabric fabric = worked(m.tree);
  CHECK(fabric.rounds[1].uses == 12);
  CHECK(fabric.rounds[1].counted == 16);
}

TEST_CASE("A repeat to the end uses up the round") {
  Maker m = ring_of(6);
  m.round({m.around({m.sc(1), m.inc(1)})}, 9);
  CHECK(worked(m.tree).rounds[1].uses == 6);
}

TEST_CASE("A repeat to the end leaves what the tail needs") {
  Maker m = ring_of(8);
  m.round({m.sc(1), m.around({m.dec(1), m.sc(1)}), m.sc(1)}, 6);
  const Fabric fabric = worked(m.tree);
  CHECK(fabric.rounds[1].uses == 8);
  CHECK(ids::into(fabric, 13) == "cap-1-8");
}

TEST_CASE("A repeat to the last 2 leaves two, and they are not left over") {
  Maker m = ring_of(6);
  m.round({m.to_end(m.sc(1), 2)}, 4);
  const Fabric fabric = worked(m.tree);
  CHECK(fabric.rounds[1].uses == 4);
  CHECK(fabric.rounds[1].left_over == 0);
}

TEST_CASE("A repeat to the last 2 with a tail of two uses up the round") {
  Maker m = ring_of(6);
  m.round({m.to_end(m.sc(1), 2), m.inc(2)}, 8);
  CHECK(worked(m.tree).rounds[1].uses == 6);
}

TEST_CASE("A repeat that does not divide says what would be left") {
  Maker m = ring_of(7);
  m.round({m.around({m.sc(2), m.inc(1)})});
  const fabric::Worked worked = fabric::work(m.tree);
  CHECK(ids::said(worked.findings) == Said{"error divide: round 2: the repeat takes 3 stitches a time and "
                                           "has 7 to go into: 1 stitch would be left over"});
  CHECK(worked.fabric.parts[0].whole);
  CHECK(worked.fabric.rounds[1].counted == 8);
}

TEST_CASE("A repeat that uses nothing never comes to an end") {
  Maker m = ring_of(6);
  m.round({m.around({m.ch(3)})});
  CHECK(said(m.tree).front() ==
        "error endless: round 2: this repeat uses no stitch, so it never comes to the end");
}

TEST_CASE("All passes of a repeat share their origin") {
  Maker m = ring_of(4);
  m.round({m.repeat(2, {m.sc(1), m.inc(1)})});
  const Fabric fabric = worked(m.tree);
  CHECK(fabric.stitches[4].origin == fabric.stitches[7].origin);
  CHECK(fabric.stitches[5].origin == fabric.stitches[6].origin);
  CHECK(fabric.stitches[4].origin != fabric.stitches[5].origin);
}

TEST_CASE("A range works its line once for each round") {
  Maker m = ring_of(6);
  m.rounds(2, 4, {m.sc_around()}, 6);
  const Fabric fabric = worked(m.tree);
  CHECK(ids::counts_of(fabric) == Counts{6, 6, 6, 6});
  CHECK(fabric.rounds[3].number == 4);
  CHECK(fabric.rounds[3].text == 1);
}

TEST_CASE("A round may be worked like one before it") {
  Maker m = ring_of(6);
  m.round({m.around({m.sc(2), m.inc(1)})}, 8);
  m.round({m.sc_around()}, 8);
  m.round({m.as(2)}, 8);
  CHECK(worked(m.tree).rounds[3].counted == 8);
}

TEST_CASE("A long row of references is followed") {
  Maker m = ring_of(6);
  m.round({m.sc_around()}, 6);
  for (std::uint32_t i = 1; i < 400; ++i) m.round({m.as(i)}, 6);
  CHECK(worked(m.tree).parts[0].rounds == 401);
}

TEST_CASE("A round cannot be worked like one that stands behind it") {
  Maker m = ring_of(6);
  m.round({m.as(1)});
  CHECK(said(m.tree) ==
        Said{"error reference: round 2 is to be worked like a round that does not stand before it",
             "warning stopped: Cap is drawn up to round 1: round 2 could not be worked"});
}

// Joins, slip stitches, turning, moving the start

TEST_CASE("A joining slip stitch goes into the first stitch of its round and does not count") {
  Maker m = ring_of(3);
  m.round({m.sc_around(), m.join()}, 3);
  const Fabric fabric = worked(m.tree);
  CHECK(ids::last_legs(fabric) == "cap-1-1 | cap-1-2 | cap-1-3 | cap-2-1");
  CHECK(fabric.rounds[1].joined);
  CHECK(fabric.rounds[1].makes == 3);
  CHECK(fabric.stitches.back().flags == fabric::joins);
}

TEST_CASE("A join before any stitch is none of the round") {
  Maker m = ring_of(3);
  m.round({m.join(), m.ch(1), m.sc_around()}, 3);
  CHECK(ids::last_legs(worked(m.tree)) == " | cap-1-1 | cap-1-2 | cap-1-3");
}

TEST_CASE("A slip stitch that ends the piece goes into the first stitch of the round just made") {
  Maker m = ring_of(4);
  m.round({m.dec(2), m.slip(1)}, 2);
  CHECK(ids::last_legs(worked(m.tree)) == "cap-1-1, cap-1-2 | cap-1-3, cap-1-4 | cap-2-1");
}

TEST_CASE("A slip stitch behind a repeat to the end takes nothing from it") {
  Maker m = ring_of(4);
  m.round({m.sc_around(), m.slip(1)}, 4);
  CHECK(ids::last_legs(worked(m.tree)) == "cap-1-1 | cap-1-2 | cap-1-3 | cap-1-4 | cap-2-1");
}

TEST_CASE("Slip stitches before the end are worked into the round before") {
  Maker m = ring_of(4);
  m.round({m.sc(2), m.slip(2)});
  CHECK(ids::last_legs(worked(m.tree)) == "cap-1-1 | cap-1-2 | cap-1-3 | cap-1-4");
}

TEST_CASE("A round of slip stitches counts them") {
  Maker m = ring_of(4);
  m.round({m.to_end(m.slip(1))}, 4);
  CHECK(worked(m.tree).rounds[1].counted == 4);
}

TEST_CASE("A chain at the start of a round is no stitch and no place") {
  Maker m = ring_of(3);
  m.round({m.ch(1), m.sc_around(), m.join()}, 3);
  const Fabric fabric = worked(m.tree);
  CHECK(fabric.rounds[1].counted == 3);
  CHECK(fabric.rounds[1].makes == 3);
  CHECK(fabric.arches.empty());
  CHECK(fabric.stitches[3].flags == fabric::starts_chain);
}

TEST_CASE("After a turn the stitches are worked from the other end") {
  Maker m;
  m.part("Leaf");
  m.round({m.ch(4), m.in_chain(1, 2), m.sc_around(), m.turn()}).kind = pattern::RoundKind::row;
  m.round({m.ch(1), m.sc_around()}).kind = pattern::RoundKind::row;
  const Fabric fabric = worked(m.tree);
  CHECK(ids::last_legs(fabric) == " | leaf-1-3 | leaf-1-2 | leaf-1-1");
  CHECK(fabric.rounds[1].turned);
  CHECK(fabric.rounds[1].side == fabric::Side::right);
  CHECK(fabric.rounds[2].side == fabric::Side::wrong);
}

TEST_CASE("Chains between stitches are a space, and the next stitch passes it by") {
  Maker m = ring_of(2);
  m.round({m.sc(1), m.ch(2), m.sc(1)}, 2);
  m.round({m.sc(2)}, 2);
  const Fabric fabric = worked(m.tree);
  REQUIRE(fabric.arches.size() == 1);
  CHECK(fabric.arches[0].count == 2);
  CHECK(ids::last_legs(fabric) == "cap-2-1 | cap-2-4");
}

TEST_CASE("A stitch can go into the next chain space") {
  Maker m = ring_of(2);
  m.round({m.sc(1), m.ch(2), m.sc(1), m.ch(2)}, 2);
  m.round({m.work("sc", 2, 3, pattern::Where::space)}, 6);
  CHECK(ids::last_legs(worked(m.tree)) ==
        "cap-2-sp-1 | cap-2-sp-1 | cap-2-sp-1 | cap-2-sp-2 | cap-2-sp-2 | cap-2-sp-2");
}

TEST_CASE("Stitches before a moved start are worked and not counted") {
  Maker m = ring_of(6);
  m.round({m.sc(2), m.act(pattern::Act::start_here), m.sc_around()}, 6);
  const Fabric fabric = worked(m.tree);
  CHECK(fabric.rounds[1].counted == 6);
  CHECK(ids::into(fabric, 13) == "cap-2-2");
  CHECK(ids::into(fabric, 8) == "cap-1-3");
}

// Yarn

TEST_CASE("A change of yarn is marked at the first stitch in the new yarn") {
  Maker m = ring_of(2);
  m.round({m.sc(1), m.yarn(2, {m.sc(1)})});
  m.round({m.yarn(2, {m.sc_around()})});
  const Fabric fabric = worked(m.tree);
  REQUIRE(fabric.changes.size() == 1);
  CHECK(fabric.changes[0].stitch == 3);
  CHECK(fabric.stitches[3].yarn == 2);
}

// Rounds that cannot be worked

TEST_CASE("A round that needs more stitches than there are says how many") {
  Maker m = ring_of(18);
  m.round({m.sc(20)});
  CHECK(said(m.tree) == Said{"error past-end: round 2 needs 20 stitches, round 1 has 18",
                             "warning stopped: Cap is drawn up to round 1: round 2 could not be worked"});
}

TEST_CASE("Where the round before has not what its text says, that is said too") {
  Maker m = ring_of(12);
  m.round({m.repeat(5, {m.sc(1), m.inc(1)})}, 18);
  m.round({m.repeat(7, {m.sc(2), m.inc(1)})}, 28);
  CHECK(said(m.tree).front() ==
        "error past-end: round 3 needs 21 stitches, round 2 has 15 (the pattern says 18)");
}

TEST_CASE("A round that fits what the text says of the one before has no trouble of its own") {
  Maker m = ring_of(12);
  m.round({m.repeat(5, {m.sc(1), m.inc(1)})}, 18);
  m.round({m.repeat(6, {m.sc(2), m.inc(1)})}, 24);
  CHECK(said(m.tree) == Said{"warning stopped: Cap is drawn up to round 2: round 3 could not be worked"});
}

TEST_CASE("A repeat number that would mend the round is named") {
  Maker m = ring_of(18);
  m.round({m.repeat(7, {m.sc(2), m.inc(1)})}, 24);
  CHECK(fabric::work(m.tree).findings.front().mend == "repeat 6 times instead of 7");
}

TEST_CASE("Behind a round that could not be worked the rounds are counted, not worked") {
  Maker m = ring_of(18);
  m.round({m.sc(20)}, 18);
  m.round({m.around({m.sc(2), m.inc(1)})}, 24);
  const Fabric fabric = fabric::work(m.tree).fabric;
  CHECK_FALSE(fabric.parts[0].whole);
  CHECK(fabric.parts[0].rounds == 1);
  CHECK(fabric.parts[0].counted_only == 2);
  CHECK(fabric.stitches.size() == 18);
  CHECK(ids::counts_of(fabric) == Counts{18, 20, 24});
}

TEST_CASE("A line that is not read goes on with its stated count") {
  Maker m = ring_of(6);
  m.unread(12);
  m.round({m.around({m.sc(1), m.inc(1)})}, 18);
  const fabric::Worked worked = fabric::work(m.tree);
  CHECK(ids::said(worked.findings) ==
        Said{"warning stopped: Cap is drawn up to round 1: round 2 could not be worked"});
  CHECK(ids::counts_of(worked.fabric) == Counts{6, 12, 18});
}

TEST_CASE("Behind a line without a count the next fixed round sets the number") {
  Maker m = ring_of(6);
  m.unread();
  m.round({m.repeat(6, {m.sc(1), m.inc(1)})}, 18);
  m.round({m.around({m.sc(2), m.inc(1)})}, 24);
  CHECK(ids::counts_of(fabric::work(m.tree).fabric) == Counts{6, 0, 18, 24});
}

TEST_CASE("Behind a line without a count a round that runs to the end goes on with its own") {
  Maker m = ring_of(6);
  m.unread();
  m.round({m.sc_around()}, 12);
  m.round({m.around({m.sc(1), m.inc(1)})}, 18);
  const fabric::Worked worked = fabric::work(m.tree);
  CHECK(worked.findings.size() == 1);
  CHECK(ids::counts_of(worked.fabric) == Counts{6, 0, 12, 18});
}

TEST_CASE("Other parts are worked wholly") {
  Maker m = ring_of(6);
  m.unread(12);
  m.part("Nut");
  m.round({m.ring(), m.sc(6)});
  const Fabric fabric = fabric::work(m.tree).fabric;
  CHECK_FALSE(fabric.parts[0].whole);
  CHECK(fabric.parts[1].whole);
  CHECK(fabric.parts[1].rounds == 1);
}

TEST_CASE("A part whose first round is not read is not drawn") {
  Maker m;
  m.part("Cap");
  m.unread(6);
  m.round({m.inc(6)}, 12);
  const fabric::Worked worked = fabric::work(m.tree);
  CHECK(ids::said(worked.findings) ==
        Said{"warning stopped: Cap is not drawn: it begins with round 1, which could not be worked"});
  CHECK(worked.fabric.parts[0].rounds == 0);
}

TEST_CASE("A range that cannot be worked says so once") {
  Maker m = ring_of(6);
  m.rounds(2, 5, {m.sc(7)});
  CHECK(said(m.tree).size() == 2);
}

TEST_CASE("Loops are not taken by rounds that are only counted") {
  Maker m = ring_of(6);
  m.round({m.sc(7)});
  const Fabric fabric = fabric::work(m.tree).fabric;
  CHECK(fabric::free_loops(fabric, 0) == stitch::both);
}

// Limits

TEST_CASE("An absurd repeat in a round stops at once") {
  Maker m = ring_of(6);
  m.round({m.repeat(999999999, {m.sc(1)})}, 6);
  CHECK(said(m.tree).front() == "error limit: this is more than 1000000 stitches");
}

TEST_CASE("An absurd number in a ring stops at once") {
  Maker m;
  m.part("Cap");
  m.round({m.ring(), m.sc(999999999)});
  const fabric::Worked worked = fabric::work(m.tree);
  CHECK(worked.findings.front().code == "limit");
  CHECK(worked.fabric.stitches.empty());
}

TEST_CASE("Nested absurd repeats stop at once") {
  Maker m = ring_of(6);
  m.round({m.repeat(4000000000, {m.repeat(4000000000, {m.repeat(4000000000, {m.sc(1)})})})});
  CHECK(fabric::work(m.tree).findings.front().code == "limit");
}

TEST_CASE("Repeats of nothing stop") {
  Maker m = ring_of(6);
  m.round({m.repeat(4000000000, {m.repeat(4000000000, {m.turn()})}), m.sc(6)});
  CHECK(fabric::work(m.tree, 1000).findings.front().code == "limit");
}

TEST_CASE("An absurd skip says what there is") {
  Maker m = ring_of(6);
  m.round({m.skip(999999999)});
  CHECK(said(m.tree).front() == "error past-end: round 2 needs 999999999 stitches, round 1 has 6");
}

TEST_CASE("An absurd range stops at once") {
  Maker m = ring_of(6);
  m.rounds(2, 2000000000, {m.sc_around()}, 6);
  const fabric::Worked worked = fabric::work(m.tree);
  CHECK(ids::said(worked.findings).front() == "error limit: this is more than 100000 rounds");
  CHECK(worked.fabric.rounds.size() == 2);
}

TEST_CASE("A pattern may not have more stitches than the limit") {
  Maker m = ring_of(6);
  m.rounds(2, 100, {m.sc_around()}, 6);
  const fabric::Worked worked = fabric::work(m.tree, 100);
  CHECK(worked.findings.front().code == "limit");
  CHECK(worked.fabric.stitches.size() <= 100);
}

TEST_CASE("Brackets may not be nested without end") {
  Maker m = ring_of(6);
  sample::NodeId node = m.sc(6);
  for (int i = 0; i < 5000; ++i) node = m.repeat(1, {node});
  m.round({node});
  CHECK(said(m.tree).front() == "error limit: brackets are nested more than 100 deep");
}

TEST_CASE("References that double in every round stop") {
  Maker m = ring_of(1);
  m.round({m.sc_around()});
  for (std::uint32_t i = 1; i < 60; ++i) m.round({m.as(i), m.as(i)});
  CHECK(fabric::work(m.tree, 10000).fabric.stitches.size() <= 10000);
}
