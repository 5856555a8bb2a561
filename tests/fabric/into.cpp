/// How a stitch goes into the place that its turn of the edge brings.

#include "worked.hpp"

#include <catch2/catch.hpp>

using namespace whorl;
using fabric::Fabric;
using pattern::Into;
using sample::Maker;
using Said = std::vector<std::string>;

TEST_CASE("A post stitch goes round the post of the stitch whose turn it is") {
  Maker m = ring_of(3);
  m.round({m.into(m.work("dc", 1), Into::front_post), m.into(m.work("dc", 1), Into::back_post), m.sc(1)}, 3);
  CHECK(ids::last_legs(worked(m.tree)) == "cap-1-1 post front | cap-1-2 post back | cap-1-3");
}

TEST_CASE("Both loops stay free where a post is worked round") {
  Maker m = ring_of(1);
  m.round({m.into(m.work("dc", 1), Into::front_post)}, 1);
  CHECK(fabric::free_loops(worked(m.tree), 0) == stitch::both);
}

TEST_CASE("A spike goes into the round below and takes its turn of the edge") {
  Maker m = ring_of(3);
  m.round({m.sc_around()}, 3);
  m.round({m.sc(1), m.into(m.sc(1), Into::below), m.sc(1)}, 3);
  CHECK(ids::last_legs(worked(m.tree)) == "cap-2-1 | cap-1-2 | cap-2-3");
}

TEST_CASE("A spike may go two rounds down") {
  Maker m = ring_of(2);
  m.round({m.sc_around()}, 2);
  m.round({m.sc_around()}, 2);
  m.round({m.into(m.sc(2), Into::below, 2)}, 2);
  CHECK(ids::last_legs(worked(m.tree)) == "cap-1-1 | cap-1-2");
}

TEST_CASE("A spike may go into the ring") {
  Maker m = ring_of(1);
  m.round({m.into(m.sc(1), Into::below)}, 1);
  CHECK(ids::last_legs(worked(m.tree)) == "cap-ring");
}

TEST_CASE("A spike cannot go deeper than there are rounds") {
  Maker m = ring_of(2);
  m.round({m.into(m.sc(2), Into::below, 3)}, 2);
  CHECK(ids::said(fabric::work(m.tree).findings) ==
        Said{"error below: round 2: there is no stitch 3 rounds below this one to work into",
             "warning stopped: Cap is drawn up to round 1: round 2 could not be worked"});
}

TEST_CASE("Through both layers there is a foot in each") {
  Maker m = ring_of(4);
  m.round({m.into(m.sc(2), Into::both_layers)}, 2);
  CHECK(ids::last_legs(worked(m.tree)) == "cap-1-1, cap-1-4 | cap-1-2, cap-1-3");
}

TEST_CASE("Through both layers to the end uses up the round") {
  Maker m = ring_of(8);
  m.round({m.to_end(m.into(m.sc(1), Into::both_layers))}, 4);
  const Fabric fabric = worked(m.tree);
  CHECK(fabric.rounds[1].uses == 8);
  CHECK(fabric.rounds[1].counted == 4);
}

TEST_CASE("The stitch in the middle of an odd edge may stay alone between two layers") {
  Maker m = ring_of(7);
  m.round({m.to_end(m.into(m.sc(1), pattern::Into::both_layers))}, 3);
  fabric::Worked worked = fabric::work(m.tree);
  CHECK(ids::said(worked.findings) == Said{});
  CHECK(ids::said(fabric::check(m.tree, worked.fabric)) == Said{});
}

TEST_CASE("One stitch alone has no two layers") {
  Maker m = ring_of(1);
  m.round({m.to_end(m.into(m.sc(1), Into::both_layers))});
  CHECK(ids::said(fabric::work(m.tree).findings) ==
        Said{"error divide: round 2: the repeat takes 2 stitches a time and has 1 to go into: 1 stitch would "
             "be left over"});
}

TEST_CASE("A stitch in the third loop leaves front and back loops free") {
  Maker m = ring_of(1);
  m.round({m.in_loops(m.work("hdc", 1), stitch::third)}, 1);
  const Fabric fabric = worked(m.tree);
  CHECK(ids::last_legs(fabric) == "cap-1-1 third");
  CHECK(fabric::free_loops(fabric, 0) == stitch::both);
}

TEST_CASE("A group with a name is entered under it") {
  Maker m = ring_of(3);
  m.round({m.sc(1), m.named("shell", m.group({m.work("dc", 5)})), m.sc(1)}, 7);
  const Fabric fabric = worked(m.tree);
  REQUIRE(fabric.groups.size() == 1);
  CHECK(fabric.groups[0].first == 4);
  CHECK(fabric.groups[0].count == 5);
  CHECK(fabric.groups[0].name == "shell");
}

TEST_CASE("A count of shells speaks of the groups of that name") {
  Maker m = ring_of(4);
  m.round({m.named("shell", m.group({m.work("dc", 5)})), m.sc(1),
           m.named("V-stitch", m.group({m.work("dc", 1), m.ch(1), m.work("dc", 1)})), m.sc(1)});
  m.tree.rounds.back().stated = {{1, pattern::Unit::group, 1, {1, 2}}};
  CHECK(worked(m.tree).rounds[1].counted == 1);
}

TEST_CASE("A count of shells that is not met is told in its words") {
  Maker m = ring_of(2);
  m.round({m.named("shell", m.group({m.work("dc", 5)})), m.sc(1)});
  m.tree.rounds.back().stated = {{2, pattern::Unit::group, 1, {1, 2}}};
  CHECK(ids::said(fabric::check(m.tree, fabric::work(m.tree).fabric)) ==
        Said{"error count: round 2 has 1 shell, the pattern says 2"});
}

// Yarn between the rounds

TEST_CASE("A yarn changed to between the rounds is that of the next stitch") {
  Maker m = ring_of(2);
  m.place(pattern::What::change).yarn = 2;
  m.round({m.sc_around()}, 2);
  m.round({m.sc_around()}, 2);
  const Fabric fabric = worked(m.tree);
  REQUIRE(fabric.changes.size() == 1);
  CHECK(fabric.changes[0].stitch == 2);
  CHECK(fabric.stitches[1].yarn == 1);
  CHECK(fabric.stitches[5].yarn == 2);
}

TEST_CASE("A part that begins in another yarn has not changed it") {
  Maker m;
  m.part("Cap");
  m.place(pattern::What::change).yarn = 2;
  m.round({m.ring(), m.sc(2)}, 2);
  const Fabric fabric = worked(m.tree);
  CHECK(fabric.changes.empty());
  CHECK(fabric.stitches[0].yarn == 2);
}

TEST_CASE("A new part begins in the first yarn again") {
  Maker m = ring_of(2);
  m.place(pattern::What::change).yarn = 2;
  m.round({m.sc_around()}, 2);
  m.part("Stalk");
  m.round({m.ring(), m.sc(2)}, 2);
  CHECK(worked(m.tree).stitches.back().yarn == 1);
}
