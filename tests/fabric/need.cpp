#include "fabric/need.hpp"

#include "sample.hpp"

#include <catch2/catch.hpp>

using namespace whorl;
using fabric::Hurdle;
using fabric::Need;
using sample::Maker;

namespace {

Need need(Maker& m, const sample::Nodes& nodes) { return fabric::need_of(m.tree, m.round(nodes).body, {}); }

} // namespace

TEST_CASE("Needs of pieces add up") {
  Maker m;
  const Need all = need(m, {m.sc(3), m.inc(2), m.dec(1), m.skip(1)});
  CHECK(all.uses == 3 + 2 + 2 + 1);
  CHECK(all.stitches == 3 + 4 + 1);
  CHECK(all.makes == 3 + 4 + 1);
}

TEST_CASE("Repeats multiply the need") {
  Maker m;
  const Need all = need(m, {m.repeat(6, {m.sc(2), m.inc(1)})});
  CHECK(all.uses == 18);
  CHECK(all.makes == 24);
}

TEST_CASE("What runs to the end has no figures of its own") {
  Maker m;
  const Need all = need(m, {m.sc(2), m.sc_around()});
  CHECK(all.uses == 2);
  CHECK(all.to_end);
}

TEST_CASE("Figures stop growing beyond all use") {
  Maker m;
  CHECK(need(m, {m.repeat(4000000000, {m.repeat(4000000000, {m.sc(4000000000)})})}).uses == fabric::beyond);
}

TEST_CASE("What goes into a ring uses nothing of the edge before") {
  Maker m;
  const Need all = need(m, {m.ring(), m.sc(6)});
  CHECK(all.starts);
  CHECK(all.uses == 0);
  CHECK(all.stitches == 6);
}

TEST_CASE("Slip stitches at the very end are known apart") {
  Maker m;
  CHECK(need(m, {m.dec(3), m.slip(2)}).slips == 2);
  CHECK(need(m, {m.slip(2), m.dec(3)}).slips == 0);
  CHECK(need(m, {m.slip(2), m.turn()}).slips == 2);
}

TEST_CASE("Words that were not understood cannot be worked") {
  Maker m;
  const sample::NodeId node = m.sc(1);
  m.tree.nodes[node].kind = pattern::NodeKind::unread;
  CHECK(need(m, {m.sc(2), node}).hurdle == Hurdle::unread);
}

TEST_CASE("A reference has the need of the round it names") {
  Maker m;
  m.round({m.sc(6)});
  m.round({m.as(0)});
  CHECK(fabric::needs_of(m.tree)[1].uses == 6);
}

TEST_CASE("A kind that the table does not have cannot be worked") {
  Maker m;
  const sample::NodeId node = m.sc(1);
  m.tree.nodes[node].work.kind = 9999;
  CHECK(need(m, {node}).hurdle == Hurdle::unread);
}
