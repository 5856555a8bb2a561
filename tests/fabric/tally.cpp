#include "fabric/tally.hpp"

#include "fabric/work.hpp"
#include "sample.hpp"

#include <catch2/catch.hpp>

#include <map>

using namespace whorl;
using sample::Maker;
using Kinds = std::map<std::string, std::uint32_t>;

namespace {

/// The tally of the last round by name.
Kinds tally(const pattern::Tree& tree) {
  const fabric::Fabric fabric = fabric::work(tree).fabric;
  const fabric::Round& round = fabric.rounds.back();
  Kinds kinds;
  for (std::uint32_t i = 0; i < round.tallies; ++i) {
    const fabric::Tally& one = fabric.tallies[round.first_tally + i];
    kinds[fabric.kinds[one.kind].name] = one.count;
  }
  return kinds;
}

Maker ring_of(std::uint32_t count) {
  Maker m;
  m.round({m.ring(), m.sc(count)});
  return m;
}

} // namespace

TEST_CASE("An increase is two of its kind, a decrease one of its own") {
  Maker m = ring_of(6);
  m.round({m.inc(2), m.dec(2)});
  CHECK(tally(m.tree) == Kinds{{"sc", 4}, {"sc2tog", 2}});
}

TEST_CASE("Neither the join nor a starting chain is tallied") {
  Maker m = ring_of(3);
  m.round({m.ch(1), m.sc_around(), m.join()});
  CHECK(tally(m.tree) == Kinds{{"sc", 3}});
}

TEST_CASE("Chains between stitches are tallied and are no stitches") {
  Maker m = ring_of(3);
  m.round({m.around({m.sc(1), m.ch(2)})});
  CHECK(tally(m.tree) == Kinds{{"sc", 3}, {"ch", 6}});
  CHECK(fabric::work(m.tree).fabric.rounds.back().counted == 3);
}

TEST_CASE("Slip stitches among others count where the stated count says so") {
  Maker m = ring_of(6);
  m.round({m.sc(4), m.slip(2)}, 6);
  m.round({m.sc(4), m.slip(2)}, 4);
  m.round({m.sc(4), m.slip(2)});
  const fabric::Fabric fabric = fabric::work(m.tree).fabric;
  CHECK(fabric.rounds[1].counted == 6);
  CHECK(fabric.rounds[2].counted == 4);
  CHECK(fabric.rounds[3].counted == 4);
}

TEST_CASE("Stitches before a moved start are not tallied") {
  Maker m = ring_of(6);
  m.round({m.sc(2), m.act(pattern::Act::start_here), m.sc_around()});
  CHECK(tally(m.tree) == Kinds{{"sc", 6}});
}

TEST_CASE("A round that was only counted has its tally") {
  Maker m = ring_of(6);
  m.unread(12);
  m.round({m.around({m.sc(1), m.inc(1)})});
  CHECK(tally(m.tree) == Kinds{{"sc", 18}});
}
