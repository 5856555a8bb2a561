/// "I have 22, it should be 24": the slips that explain a count.

#include "fabric/slips.hpp"

#include "fabric/work.hpp"
#include "sample.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace whorl;
using fabric::Fabric;
using fabric::Slip;
using fabric::SlipKind;
using fabric::Stretch;
using sample::Maker;
using Told = std::vector<std::string>;

namespace {

/// 18 in a ring, then (2 sc, inc) 6 times.
Maker toadstool() {
  Maker m;
  m.part("Toadstool");
  m.round({m.ring(), m.sc(18)}, 18);
  m.round({m.repeat(6, {m.sc(2), m.inc(1)})}, 24);
  return m;
}

Told told(const pattern::Tree& tree, std::uint32_t round, std::uint32_t have) {
  const Fabric fabric = fabric::work(tree).fabric;
  Told all;
  for (const Slip& slip : fabric::slips(fabric, round, have)) all.push_back(fabric::told(fabric, slip));
  return all;
}

std::vector<SlipKind> kinds(const pattern::Tree& tree, std::uint32_t round, std::uint32_t have) {
  const Fabric fabric = fabric::work(tree).fabric;
  std::vector<SlipKind> all;
  for (const Slip& slip : fabric::slips(fabric, round, have)) all.push_back(slip.what);
  return all;
}

Slip first(const pattern::Tree& tree, std::uint32_t round, std::uint32_t have) {
  const Fabric fabric = fabric::work(tree).fabric;
  const auto all = fabric::slips(fabric, round, have);
  REQUIRE(!all.empty());
  return all.front();
}

bool has(const std::vector<SlipKind>& all, SlipKind kind) {
  return std::find(all.begin(), all.end(), kind) != all.end();
}

} // namespace

TEST_CASE("A right count has no slips") { CHECK(told(toadstool().tree, 1, 24) == Told{}); }

TEST_CASE("A round that is not there has no slips") { CHECK(told(toadstool().tree, 7, 24) == Told{}); }

TEST_CASE("One stitch too few where there are increases is an increase missed before all else") {
  CHECK(
      told(toadstool().tree, 1, 23) ==
      Told{
          "round 2: an increase was missed. Look at stitches 3-4, 7-8, 11-12, 15-16, 19-20 and 23-24, once "
          "in "
          "each of the 6 repeats: both go into the same stitch",
          "round 2: a stitch was skipped. Look at stitches 1-2, 5-6, 9-10, 13-14, 17-18 and 21-22, which are "
          "plain",
          "round 2: two stitches were worked together where none should be. Look at stitches 1-2, 5-6, 9-10, "
          "13-14, 17-18 and 21-22, which are plain"});
}

TEST_CASE("Two stitches too few are two increases missed") {
  const Slip slip = first(toadstool().tree, 1, 22);
  CHECK(slip.what == SlipKind::increase_missed);
  CHECK(slip.times == 2);
  CHECK(slip.where.at(1) == Stretch{7, 8});
}

TEST_CASE("A whole pass too few is a repeat left out") {
  CHECK(told(toadstool().tree, 1, 20) ==
        Told{"round 2: the repeat was worked once too few: 5 times, not 6",
             "count round 1 too: if it has 15 and not 18, the slip was made by then"});
}

TEST_CASE("A whole pass too many is a repeat too many") {
  CHECK(told(toadstool().tree, 1, 28).front() ==
        "round 2: the repeat was worked once too often: 7 times, not 6");
}

TEST_CASE("The count of the round before says that this one was not worked") {
  CHECK(told(toadstool().tree, 1, 18).front() ==
        "round 2: 18 is the count of round 1: this round may not have been worked yet");
}

TEST_CASE("One stitch too many in plain stitches is two in one") {
  const Slip slip = first(toadstool().tree, 1, 25);
  CHECK(slip.what == SlipKind::two_in_one);
  CHECK(slip.where.front() == Stretch{1, 2});
}

TEST_CASE("One stitch too many where there are decreases is a decrease missed") {
  Maker m;
  m.part("Toadstool");
  m.round({m.ring(), m.sc(9)}, 9);
  m.round({m.repeat(3, {m.sc(1), m.dec(1)})}, 6);
  CHECK(told(m.tree, 1, 7).front() ==
        "round 2: a decrease was missed and plain stitches worked instead. Look at "
        "stitches 2, 4 and 6, once in each of the 3 repeats");
}

TEST_CASE("A joined round that has one too many may have its join worked") {
  Maker m;
  m.part("Cap");
  m.round({m.ring(), m.sc(6), m.join()}, 6);
  m.round({m.sc_around(), m.join()}, 6);
  CHECK(has(kinds(m.tree, 1, 7), SlipKind::join_worked));
}

TEST_CASE("A spiral has no join to work") {
  Maker m;
  m.part("Cap");
  m.round({m.ring(), m.sc(6)}, 6);
  m.round({m.sc_around()}, 6);
  CHECK_FALSE(has(kinds(m.tree, 1, 7), SlipKind::join_worked));
}

TEST_CASE("A starting chain that counts may not have been counted") {
  Maker m;
  m.part("Cap");
  m.round({m.ring(), m.counted_ch(3), m.work("dc", 11), m.join()}, 12);
  m.round({m.counted_ch(3), m.to_end(m.work("dc", 1)), m.join()}, 12);
  CHECK(has(kinds(m.tree, 1, 11), SlipKind::chain_not_counted));
}

TEST_CASE("A starting chain that is no stitch may have been counted") {
  Maker m;
  m.part("Cap");
  m.round({m.ring(), m.sc(6), m.join()}, 6);
  m.round({m.ch(1), m.sc_around(), m.join()}, 6);
  CHECK(has(kinds(m.tree, 1, 7), SlipKind::chain_counted));
}

TEST_CASE("An even round carries on the slip of the round that was shaped") {
  Maker m = toadstool();
  m.rounds(3, 5, {m.sc_around()}, 24);
  const Told all = told(m.tree, 4, 23);
  CHECK(all.at(0) == "count round 2 too: if it has 23 and not 24, the slip was made by then");
  CHECK(all.at(1) ==
        "round 2: an increase was missed. Look at stitches 3-4, 7-8, 11-12, 15-16, 19-20 and 23-24, "
        "once in each of the 6 repeats: both go into the same stitch");
}

TEST_CASE("Of a first round the ring is told") {
  CHECK(told(toadstool().tree, 0, 17) == Told{"round 1: 17 stitches went into the ring, not 18"});
}

TEST_CASE("Long lists of stitches are cut short") {
  Maker m;
  m.part("Cap");
  m.round({m.ring(), m.sc(9)}, 9);
  m.round({m.to_end(m.inc(1))}, 18);
  CHECK(told(m.tree, 1, 17).front() ==
        "round 2: an increase was missed. Look at stitches 1-2, 3-4, 5-6, 7-8, 9-10, "
        "11-12 and so on: both go into the same stitch");
}

TEST_CASE("There are at most eight slips, likeliest first") {
  Maker m = toadstool();
  m.rounds(3, 5, {m.sc_around(), m.join()}, 24);
  const Fabric fabric = fabric::work(m.tree).fabric;
  const auto all = fabric::slips(fabric, 4, 23);
  CHECK(all.size() <= 8);
  CHECK(std::is_sorted(all.begin(), all.end(), [](const Slip& a, const Slip& b) { return a.cost < b.cost; }));
}

TEST_CASE("Every slip told explains the count it is told for") {
  // An increase left out of the tree itself is found at its own stitches.
  Maker right = toadstool(), wrong;
  wrong.part("Toadstool");
  wrong.round({wrong.ring(), wrong.sc(18)}, 18);
  wrong.round({wrong.repeat(5, {wrong.sc(2), wrong.inc(1)}), wrong.sc(3)});
  const std::uint32_t have = fabric::work(wrong.tree).fabric.rounds[1].counted;
  const Slip slip = first(right.tree, 1, have);
  CHECK(slip.what == SlipKind::increase_missed);
  CHECK(slip.where.back() == Stretch{23, 24});
}
