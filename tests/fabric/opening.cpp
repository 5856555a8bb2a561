/// Edges that are opened: the other side of a chain, free loops, skipped stitches, parts joined.

#include "worked.hpp"

#include <catch2/catch.hpp>

using namespace whorl;
using fabric::Fabric;
using pattern::Act;
using sample::Maker;
using sample::Where;
using Said = std::vector<std::string>;

namespace {

Said said(const pattern::Tree& tree) { return ids::said(fabric::work(tree).findings); }

/// Two legs of 14, then a body that begins with `nodes` made by the caller.
Maker legs() {
  Maker m;
  for (const char* name : {"Left leg", "Right leg"}) {
    m.part(name);
    m.round({m.ring(), m.sc(7)}, 7);
    m.round({m.to_end(m.inc(1))}, 14);
  }
  return m;
}

/// Everything that the last round is worked into, once.
std::string summary(const Fabric& fabric) {
  std::string text;
  for (auto id = fabric.rounds.back().first_stitch; id < fabric.stitches.size(); ++id)
    for (const fabric::Leg& leg : fabric::legs_of(fabric, id)) {
      std::string to = fabric::id_of(fabric, leg.into);
      if (leg.into.loops == stitch::third) to += " third";
      text += (text.empty() ? "" : " ") + to;
    }
  return text;
}

} // namespace

// The other side of a chain

TEST_CASE("Several stitches in the last chain lead round to its other side") {
  Maker m;
  m.part("Sole");
  m.round({m.ch(4), m.in_chain(1, 2), m.sc(1), m.work("sc", 1, 3), m.sc(1), m.work("sc", 1, 2)}, 8);
  const Fabric fabric = worked(m.tree);
  CHECK(summary(fabric) == "sole-0-ch-2 sole-0-ch-3 sole-0-ch-4 sole-0-ch-4 sole-0-ch-4 sole-0-ch-3 third "
                           "sole-0-ch-2 third sole-0-ch-2 third");
  CHECK(fabric.rounds[1].both_sides);
}

TEST_CASE("The last chain need not be worked again from its other side") {
  Maker m;
  m.part("Sole");
  m.round({m.ch(4), m.at_chain(m.inc(1), 2), m.sc(1), m.work("sc", 1, 4), m.sc(1)}, 8);
  CHECK(worked(m.tree).rounds[1].left_over == 0);
}

TEST_CASE("The slip stitch that closes an oval goes into its first stitch") {
  Maker m;
  m.part("Sole");
  m.round({m.ch(4), m.at_chain(m.inc(1), 2), m.sc(1), m.work("sc", 1, 4), m.sc(1), m.slip(1)}, 8);
  const Fabric fabric = worked(m.tree);
  REQUIRE(!fabric.stitches.empty());
  CHECK(ids::into(fabric, static_cast<fabric::StitchId>(fabric.stitches.size() - 1)) == "sole-1-1");
}

TEST_CASE("One stitch in the last chain does not lead round") {
  Maker m;
  m.part("Sole");
  m.round({m.ch(4), m.in_chain(1, 2), m.sc(4)});
  CHECK(said(m.tree).front() == "error past-end: round 1: there is no stitch left to work into");
}

TEST_CASE("The other side that the text names begins with the far chain if one stitch is in it") {
  Maker m;
  m.part("Purse");
  m.round({m.ch(3), m.in_chain(1, 2), m.sc(1), m.other_side(), m.sc_around()}, 4);
  CHECK(summary(worked(m.tree)) == "purse-0-ch-2 purse-0-ch-3 purse-0-ch-3 third purse-0-ch-2 third");
}

TEST_CASE("The other side that the text names leaves out the chain that was gone round") {
  Maker m;
  m.part("Sole");
  m.round({m.ch(4), m.in_chain(1, 2), m.to_end(m.sc(1), 1), m.work("sc", 1, 3, Where::last), m.other_side(),
           m.to_end(m.sc(1), 1), m.work("sc", 1, 2, Where::last)},
          8);
  CHECK(summary(worked(m.tree)) ==
        "sole-0-ch-2 sole-0-ch-3 sole-0-ch-4 sole-0-ch-4 sole-0-ch-4 sole-0-ch-3 third "
        "sole-0-ch-2 third sole-0-ch-2 third");
}

TEST_CASE("What runs to the end of a chain leaves what follows on that side") {
  Maker m;
  m.part("Sole");
  m.round({m.ch(5), m.in_chain(1, 2), m.sc_around(), m.work("sc", 1, 3), m.sc_around(), m.work("sc", 1, 2)});
  CHECK(worked(m.tree).rounds[1].counted == 3 + 3 + 2 + 2);
}

TEST_CASE("More in the last chain goes where the last stitch went") {
  Maker m;
  m.part("Sole");
  m.round({m.ch(3), m.in_chain(1, 2), m.sc(1), m.work("sc", 1, 2, Where::last)}, 4);
  CHECK(summary(worked(m.tree)) == "sole-0-ch-2 sole-0-ch-3 sole-0-ch-3 sole-0-ch-3");
}

TEST_CASE("The other side may be worked in a later row") {
  Maker m;
  m.part("Leaf");
  m.round({m.ch(4), m.in_chain(1, 2), m.sc_around(), m.turn()}, 3).kind = pattern::RoundKind::row;
  m.round({m.other_side(), m.sc(3)}, 3).kind = pattern::RoundKind::row;
  CHECK(summary(worked(m.tree)) == "leaf-0-ch-4 third leaf-0-ch-3 third leaf-0-ch-2 third");
}

TEST_CASE("Where there was no chain there is no other side") {
  Maker m = ring_of(6);
  m.round({m.other_side(), m.sc(6)});
  CHECK(said(m.tree).front() ==
        "error edge: round 2: there is no starting chain to be worked along its other side");
}

TEST_CASE("In each chain around a joined chain is along the chains") {
  Maker m;
  m.part("Collar");
  m.round({m.ch(4), m.join(), m.ch(1), m.sc_around(), m.join()}, 4);
  const Fabric fabric = worked(m.tree);
  CHECK(ids::into(fabric, fabric.rounds[1].first_stitch + 1) == "collar-0-ch-4");
  CHECK(fabric.rounds[1].makes == 4);
}

// Free loops

TEST_CASE("A part may begin in the loops that a round left free") {
  Maker m = ring_of(3);
  m.round({m.blo({m.sc_around()})}, 3);
  m.part("Frill");
  m.round({m.free_loops(0, stitch::front), m.sc_around()}, 3);
  const Fabric fabric = worked(m.tree);
  CHECK(fabric.parts[1].start == fabric::Start::free_loops);
  CHECK(ids::last_legs(fabric) == "cap-1-1 front | cap-1-2 front | cap-1-3 front");
}

TEST_CASE("Free loops named after the round that left them are those of the round before") {
  Maker m = ring_of(3);
  m.round({m.blo({m.sc_around()})}, 3);
  m.round({m.sc_around()}, 3);
  m.part("Frill");
  m.round({m.free_loops(1, stitch::front), m.sc_around()}, 3);
  const fabric::Worked worked = fabric::work(m.tree);
  CHECK(ids::said(worked.findings) ==
        Said{"note edge: round 1: the free front loops are those of round 1, as "
             "round 2 is worked into the back loops"});
  CHECK(ids::last_legs(worked.fabric) == "cap-1-1 front | cap-1-2 front | cap-1-3 front");
}

TEST_CASE("Where the round named left its own loops free they are taken") {
  Maker m = ring_of(3);
  m.round({m.blo({m.sc_around()})}, 3);
  m.round({m.blo({m.sc_around()})}, 3);
  m.part("Frill");
  m.round({m.free_loops(1, stitch::front), m.sc_around()}, 3);
  CHECK(ids::last_legs(worked(m.tree)) == "cap-2-1 front | cap-2-2 front | cap-2-3 front");
}

TEST_CASE("Loops not named are those that are free") {
  Maker m = ring_of(2);
  m.round({m.flo({m.sc_around()})}, 2);
  m.round({m.free_loops(0, 0), m.sc_around()}, 2);
  CHECK(ids::last_legs(worked(m.tree)) == "cap-1-1 back | cap-1-2 back");
}

TEST_CASE("The last round of a part has all its loops free") {
  Maker m = ring_of(2);
  m.part("Frill");
  m.round({m.free_loops(0, stitch::front), m.sc_around()}, 2);
  CHECK(ids::last_legs(worked(m.tree)) == "cap-1-1 front | cap-1-2 front");
}

TEST_CASE("A round that lies in a range is named by its number") {
  Maker m = ring_of(2);
  m.rounds(2, 4, {m.blo({m.sc_around()})}, 2);
  m.part("Frill");
  m.round({m.open(Act::free_loops, 1, stitch::front, 3), m.sc_around()}, 2);
  CHECK(ids::last_legs(worked(m.tree)) == "cap-3-1 front | cap-3-2 front");
}

TEST_CASE("Loops that are all worked into are not free") {
  Maker m = ring_of(3);
  m.round({m.sc_around()}, 3);
  m.part("Frill");
  m.round({m.free_loops(0, stitch::front), m.sc_around()}, 3);
  CHECK(said(m.tree) ==
        Said{"error edge: round 1: there are no free front loops of round 1: all of them are worked into",
             "warning stopped: Frill is not drawn: it begins with round 1, which could not be worked"});
}

TEST_CASE("No loops are free behind an invisible decrease") {
  Maker m = ring_of(3);
  m.round({m.flo({m.sc(1)}), m.invdec(1)}, 2);
  m.part("Frill");
  m.round({m.free_loops(0, stitch::back), m.sc_around()});
  CHECK(ids::last_legs(worked(m.tree)) == "cap-1-1 back");
}

TEST_CASE("A stitch under a chain that counts keeps its loops free") {
  Maker m = ring_of(3);
  m.round({m.counted_ch(3), m.blo({m.work("dc", 2)})}, 3);
  m.part("Frill");
  m.round({m.free_loops(0, stitch::front), m.sc_around()}, 3);
  CHECK(ids::last_legs(worked(m.tree)) == "cap-1-1 front | cap-1-2 front | cap-1-3 front");
}

TEST_CASE("The loops of a round that was not worked cannot be opened") {
  Maker m = ring_of(3);
  m.unread(3);
  m.part("Frill");
  m.round({m.free_loops(1, stitch::front), m.sc_around()});
  CHECK(said(m.tree).at(1) ==
        "error edge: round 1: the round whose loops are to be worked into was not worked");
}

// Skipped stitches

TEST_CASE("The stitches that a round skipped can be worked later") {
  Maker m = ring_of(6);
  m.round({m.sc(2), m.skip(3), m.sc(1)}, 3);
  m.part("Thumb");
  m.round({m.open(Act::skipped, 1), m.sc_around()}, 3);
  CHECK(ids::last_legs(worked(m.tree)) == "cap-1-3 | cap-1-4 | cap-1-5");
}

TEST_CASE("Stitches that a round did not come to are not left over where they are worked later") {
  Maker m = ring_of(6);
  m.round({m.sc(4)}, 4);
  m.part("Ear");
  m.round({m.open(Act::skipped, 1), m.sc(2)}, 2);
  CHECK(ids::last_legs(worked(m.tree)) == "cap-1-5 | cap-1-6");
}

TEST_CASE("The skipped stitches may be named by the round that has them") {
  Maker m = ring_of(6);
  m.round({m.sc(2), m.skip(3), m.sc(1)}, 3);
  m.part("Thumb");
  m.round({m.open(Act::skipped, 0), m.sc_around()}, 3);
  const fabric::Worked worked = fabric::work(m.tree);
  CHECK(ids::said(worked.findings) ==
        Said{"note edge: round 1: the stitches left unworked are those of round 1 itself: it left none"});
  CHECK(ids::last_legs(worked.fabric) == "cap-1-3 | cap-1-4 | cap-1-5");
}

TEST_CASE("A second finger goes into the stitches that the first left") {
  Maker m = ring_of(6);
  m.round({m.sc(1), m.skip(5)}, 1);
  m.part("Finger");
  m.round({m.open(Act::skipped, 1), m.sc(2)}, 2);
  m.part("Thumb");
  m.round({m.open(Act::skipped, 1), m.sc(3)}, 3);
  CHECK(ids::last_legs(worked(m.tree)) == "cap-1-4 | cap-1-5 | cap-1-6");
}

TEST_CASE("Where nothing was skipped nothing can be opened") {
  Maker m = ring_of(3);
  m.round({m.sc_around()}, 3);
  m.part("Thumb");
  m.round({m.open(Act::skipped, 1), m.sc(1)});
  CHECK(said(m.tree).front() == "error edge: round 1: no stitches were left unworked in round 2");
}

// Parts joined

TEST_CASE("Joined legs and both sides of the chain between them are worked") {
  // Joined legs: 14 + 3 + 14 + 3 = 34 (common practice, no source)
  Maker m = legs();
  m.round({m.ch(3), m.part_edge(1), m.sc(34)}, 34);
  CHECK(worked(m.tree).rounds.back().counted == 34);
}

TEST_CASE("Joined legs come in the order of the hand") {
  Maker m;
  m.part("Left");
  m.round({m.ring(), m.sc(2)}, 2);
  m.part("Right");
  m.round({m.ring(), m.sc(2)}, 2);
  m.round({m.ch(2), m.part_edge(0), m.sc_around()}, 8);
  CHECK(summary(worked(m.tree)) == "left-1-1 left-1-2 right-2-2 right-2-1 right-1-1 right-1-2 "
                                   "right-2-1 third right-2-2 third");
}

TEST_CASE("Without a chain the legs alone are worked") {
  Maker m = legs();
  m.round({m.part_edge(1), m.sc(28)}, 28);
  CHECK(worked(m.tree).rounds.back().counted == 28);
}

TEST_CASE("A body of its own joins two legs") {
  Maker m = legs();
  m.part("Body");
  m.round({m.ch(3), m.part_edge(1), m.part_edge(3), m.sc_around()}, 34);
  const Fabric fabric = worked(m.tree);
  const auto first = fabric.rounds.back().first_stitch;
  CHECK(ids::into(fabric, first + 3 + 14) == "body-1-3");
  CHECK(ids::into(fabric, first + 3 + 17) == "right-leg-2-1");
  CHECK(ids::into(fabric, first + 3 + 31) == "body-1-1 third");
}

TEST_CASE("A part of which two are made is joined to itself") {
  Maker m;
  m.part("Leg", 2);
  m.round({m.ring(), m.sc(14)}, 14);
  m.part("Body");
  m.round({m.part_edge(0), m.part_edge(0), m.sc_around()}, 28);
  CHECK(worked(m.tree).rounds.back().counted == 28);
}

TEST_CASE("Stitches of joined legs that are not worked are left over") {
  Maker m = legs();
  m.round({m.ch(3), m.part_edge(1), m.sc(30)}, 30);
  CHECK(ids::said(fabric::check(m.tree, fabric::work(m.tree).fabric)) ==
        Said{"warning left-over: round 3 leaves 4 of the 34 stitches open to it unworked"});
}

TEST_CASE("The other side of the chain between legs comes when its turn comes") {
  Maker m = legs();
  m.part("Body");
  m.round({m.ch(3), m.part_edge(1), m.sc(17), m.part_edge(3), m.sc(14), m.other_side(), m.sc(3)}, 34);
  const Fabric fabric = worked(m.tree);
  CHECK(ids::into(fabric, static_cast<fabric::StitchId>(fabric.stitches.size() - 1)) == "body-1-3 third");
}

TEST_CASE("A leg of which two are made may join its double and go on") {
  Maker m;
  m.part("Leg", 2);
  m.round({m.ring(), m.sc(6)}, 6);
  m.round({m.to_end(m.inc(1))}, 12);
  m.round({m.part_edge(0), m.sc(12), m.part_edge(0), m.sc(12)}, 24);
  CHECK(worked(m.tree).rounds.back().counted == 24);
}

TEST_CASE("Behind skipped stitches the other side is that of the chains made over them") {
  Maker m = ring_of(6);
  m.round({m.sc(2), m.ch(3), m.skip(3), m.sc(1)}, 6);
  m.part("Thumb");
  m.round({m.open(Act::skipped, 1), m.sc(3), m.open(Act::other_side, 0), m.sc(3)}, 6);
  CHECK(ids::last_legs(worked(m.tree)) ==
        "cap-1-3 | cap-1-4 | cap-1-5 | cap-2-5 third | cap-2-4 third | cap-2-3 third");
}
