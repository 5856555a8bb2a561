#include "fabric/placing.hpp"

#include "fabric/work.hpp"
#include "ids.hpp"
#include "sample.hpp"

#include <catch2/catch.hpp>

using namespace whorl;
using sample::Maker;
using After = std::vector<std::uint32_t>;
using Said = std::vector<std::string>;

namespace {

/// A part of which round 2 is 30 stitches, and eyes in it.
Maker with_eyes(std::uint32_t stitches, std::uint32_t apart) {
  Maker m;
  m.part("Nut");
  m.round({m.ring(), m.sc(stitches)});
  m.rounds(2, 3, {m.sc_around()});
  pattern::Placing& eyes = m.place(pattern::What::eye);
  eyes.from = 2;
  eyes.to = 3;
  eyes.apart = apart;
  return m;
}

} // namespace

TEST_CASE("Posts are centred opposite the start of the round") {
  CHECK(fabric::holes(30, 8) == After{11, 19}); // design.md, For programs: after 11 and 19, 8 apart
}

TEST_CASE("What cannot be centred is put half a stitch toward the lower number") {
  CHECK(fabric::holes(36, 7) == After{14, 21}); // trade-rules.md, Placing
  CHECK(fabric::holes(31, 8) == After{11, 19});
}

TEST_CASE("Posts that are as far apart as the round is wide do not fit") {
  CHECK_FALSE(fabric::holes(6, 6));
  CHECK_FALSE(fabric::holes(0, 1));
}

TEST_CASE("Eyes are placed in the lower of their two rounds") {
  const fabric::Worked worked = fabric::work(with_eyes(30, 8).tree);
  REQUIRE(worked.fabric.placings.size() == 1);
  CHECK(worked.fabric.placings[0].round == 1);
  CHECK(worked.fabric.placings[0].after == After{11, 19});
  CHECK(worked.findings.empty());
}

TEST_CASE("Eyes that cannot be centred are said to be aside") {
  CHECK(ids::said(fabric::work(with_eyes(36, 7).tree).findings) ==
        Said{"note placing: eyes cannot be centred: they are put half a stitch aside, after stitches 14 and "
             "21 of round 2"});
}

TEST_CASE("Eyes too far apart are an error") {
  CHECK(ids::said(fabric::work(with_eyes(12, 20).tree).findings) ==
        Said{"error placing: eyes 20 stitches apart do not fit: round 2 has 12 stitches"});
}

TEST_CASE("Eyes of which no distance is said have no holes") {
  CHECK(fabric::work(with_eyes(30, 0).tree).fabric.placings[0].after.empty());
}

TEST_CASE("Something that names no round is placed in none") {
  Maker m = with_eyes(30, 8);
  m.place(pattern::What::stuff);
  CHECK(fabric::work(m.tree).fabric.placings[1].round == fabric::none);
}

TEST_CASE("What is sewn on too far apart may belong elsewhere, which is a note") {
  Maker m = with_eyes(12, 20);
  m.tree.placings[0].what = pattern::What::sew;
  CHECK(ids::said(fabric::work(m.tree).findings).front().substr(0, 12) == "note placing");
}

TEST_CASE("Embroidery over some stitches goes through every hole from the first to the last") {
  Maker m = with_eyes(30, 4);
  m.tree.placings[0].what = pattern::What::embroider;
  m.tree.placings[0].across = true;
  CHECK(fabric::work(m.tree).fabric.placings[0].after == std::vector<std::uint32_t>{13, 14, 15, 16, 17});
}

TEST_CASE("Posts sit in the holes that the text numbers, and one that the round does not have is an error") {
  Maker m = with_eyes(30, 0);
  m.tree.placings[0].after = {10, 20};
  CHECK(fabric::work(m.tree).fabric.placings[0].after == After{10, 20});
  m.tree.placings[0].after = {10, 31};
  const fabric::Worked worked = fabric::work(m.tree);
  CHECK(worked.fabric.placings[0].after.empty());
  CHECK(ids::said(worked.findings) == Said{"error placing: there is no stitch 31: round 2 has 30 stitches"});
}
