/// Turning chains against the printed ladder: trade-facts.md 3.

#include "stitch/turning.hpp"

#include <catch2/catch.hpp>

using namespace whorl::stitch;

namespace {

std::optional<Turning> turning(const char* name) {
  const auto kind = find_kind(standard_kinds(), name);
  REQUIRE(kind);
  return turning_of(standard_kinds()[*kind]);
}

} // namespace

TEST_CASE("Turning chains go up by one from stitch to stitch") {
  // 3: 1918 Handbook, A Lesson in Crochet P (1-2-3-4-5); dummies.com (0-1-2-3-4-5) S; trtr 6
  // crochetforall.com S
  const char* names[] = {"sl st", "sc", "hdc", "dc", "tr", "dtr", "trtr"};
  for (int chains = 0; chains <= 6; ++chains) {
    CAPTURE(names[chains]);
    REQUIRE(turning(names[chains]));
    CHECK(turning(names[chains])->chains == chains);
  }
}

TEST_CASE("The turning chain of a single crochet never counts") {
  // 3: J. Leinhauser for CYC S, course lesson 10
  CHECK(turning("sc")->counts == ChainCounts::no);
  CHECK(turning("sl st")->counts == ChainCounts::no);
}

TEST_CASE("On half doubles writers differ") {
  CHECK(turning("hdc")->counts ==
        ChainCounts::writers_differ); // 3: CYC's general rule; many modern patterns say no
}

TEST_CASE("The turning chain of taller stitches counts as the first") {
  // 3: J. Leinhauser for CYC S, course lesson 10
  for (const char* name : {"dc", "tr", "dtr", "trtr"}) CHECK(turning(name)->counts == ChainCounts::yes);
}

TEST_CASE("The first single crochet goes into the second chain, the first double into the fourth") {
  CHECK(turning("sc")->first_chain == 2); // 3: Leinhauser S
  CHECK(turning("dc")->first_chain == 4); // 3: Leinhauser S
}

TEST_CASE("Other stitches begin one chain beyond their turning chain") {
  // 3: from memory
  CHECK(turning("sl st")->first_chain == 2);
  CHECK(turning("hdc")->first_chain == 3);
  CHECK(turning("tr")->first_chain == 5);
  CHECK(turning("dtr")->first_chain == 6);
  CHECK(turning("trtr")->first_chain == 7);
}

TEST_CASE("No rule is printed for stitches with several legs or stems") {
  for (const char* name : {"ch", "sc2tog", "bo", "puff", "pc", "invdec", "esc"}) {
    CAPTURE(name);
    CHECK_FALSE(turning(name));
  }
}
