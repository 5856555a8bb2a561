/// Chain spaces: what goes into them, and how they are counted.

#include "worked.hpp"

#include <catch2/catch.hpp>

using namespace whorl;
using fabric::Fabric;
using sample::Maker;
using sample::Where;
using Said = std::vector<std::string>;

namespace {

/// Four stitches with a chain space behind each.
Maker spaced() {
  Maker m = ring_of(4);
  m.round({m.repeat(4, {m.sc(1), m.ch(1)})}, 4);
  return m;
}

} // namespace

TEST_CASE("In each chain space around goes into all of them") {
  Maker m = spaced();
  m.round({m.ch(1), m.to_end(m.work("sc", 1, 2, Where::space)), m.join()}, 8);
  CHECK(ids::last_legs(worked(m.tree)) ==
        " | cap-2-sp-1 | cap-2-sp-1 | cap-2-sp-2 | cap-2-sp-2 | cap-2-sp-3 | cap-2-sp-3 | cap-2-sp-4 | "
        "cap-2-sp-4 | cap-3-2");
}

TEST_CASE("A slip stitch to the first chain space leaves it open") {
  Maker m = spaced();
  m.round({m.work("sl st", 1, 1, Where::space), m.ch(1), m.to_end(m.work("sc", 1, 1, Where::space))}, 4);
  CHECK(ids::last_legs(worked(m.tree)) ==
        "cap-2-sp-1 |  | cap-2-sp-1 | cap-2-sp-2 | cap-2-sp-3 | cap-2-sp-4");
}

TEST_CASE("In the same space means the one that a slip stitch led to") {
  Maker m = spaced();
  m.round({m.work("sl st", 1, 1, Where::space), m.ch(1), m.at(m.sc(2), Where::same),
           m.to_end(m.work("sc", 1, 1, Where::space))},
          5);
  CHECK(ids::last_legs(worked(m.tree)) ==
        "cap-2-sp-1 |  | cap-2-sp-1 | cap-2-sp-1 | cap-2-sp-2 | cap-2-sp-3 | cap-2-sp-4");
}

TEST_CASE("In each stitch and space goes into every place in order") {
  Maker m = ring_of(2);
  m.round({m.repeat(2, {m.sc(1), m.ch(1)})}, 2);
  m.round({m.at(m.sc_around(), Where::any)}, 4);
  CHECK(ids::last_legs(worked(m.tree)) == "cap-2-1 | cap-2-sp-1 | cap-2-3 | cap-2-sp-2");
}

TEST_CASE("A count of stitches may include the chains between them") {
  Maker m = ring_of(4);
  m.round({m.repeat(4, {m.sc(1), m.ch(2)})}, 12);
  CHECK(worked(m.tree).rounds[1].counted == 12);
}

TEST_CASE("A count of stitches may include the chain spaces") {
  Maker m = ring_of(4);
  m.round({m.repeat(4, {m.sc(1), m.ch(2)})}, 8);
  CHECK(worked(m.tree).rounds[1].counted == 8);
}

TEST_CASE("A count that neither chains nor spaces explain is wrong") {
  Maker m = ring_of(4);
  m.round({m.repeat(4, {m.sc(1), m.ch(2)})}, 7);
  const fabric::Worked worked = fabric::work(m.tree);
  CHECK(ids::said(fabric::check(m.tree, worked.fabric)) ==
        Said{"error count: round 2 makes 4 stitches, the pattern says 7"});
}
