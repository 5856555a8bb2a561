/// Stitches into the middle of shells and other groups, typed.

#include "fabric/text.hpp"

#include <catch2/catch.hpp>

namespace {

const std::string shells =
    "Moss round\nTerms: US\nshell: 5 dc in one st\n\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\n"
    "Rnd 3: *shell in next st, sc in next st; repeat from * around (36)\n";

/// What the places of a fourth round's stitches are: "moss-round-3-3 …" without what is before the number.
std::string places(const test::Text& text) {
  std::string all;
  const auto& fabric = text.worked.fabric;
  for (std::uint32_t i = 0; i < text.last().count; ++i)
    for (const auto& leg : whorl::fabric::legs_of(fabric, text.last().first_stitch + i)) {
      const std::string id = whorl::fabric::id_of(fabric, leg.into);
      all += (all.empty() ? "" : " ") + id.substr(id.rfind('-') + 1);
    }
  return all;
}

} // namespace

TEST_CASE("The middle of the next shell is worked into, however it is said") {
  for (const char* work :
       {"*sc in centre dc of next shell, ch 3; repeat from * around",
        "*sc in the top of the next shell, ch 3; repeat "
        "from * around",
        "*sc in center st of next shell, ch 3; repeat from * around",
        "(sc in middle dc of next 5-dc group, ch 3) x 6", "*sc in next shell, ch 3; repeat from * around"}) {
    CAPTURE(work);
    const test::Text text(shells + "Rnd 4: " + work + " (6 sc)\n");
    CHECK(text.said == "");
    CHECK(places(text) == "3 9 15 21 27 33");
  }
}

TEST_CASE("Behind the middle of a shell the next stitch is the one behind the shell") {
  const test::Text text(
      shells + "Rnd 4: *sc in centre dc of next shell, shell in next sc; repeat from * around (36)\n");
  CHECK(text.said == "");
  CHECK(places(text).substr(0, 15) == "3 6 6 6 6 6 9 1");
}

TEST_CASE("What is left of a shell may be worked or skipped by its number") {
  const test::Text worked(
      shells + "Rnd 4: (skip 2 sts, 3 sc in centre dc of shell, sc in next 2 dc, sc in next sc) x 6\n");
  CHECK(worked.said == "");
  CHECK(places(worked).substr(0, 15) == "3 3 3 4 5 6 9 9");
  const test::Text skipped(
      shells + "Rnd 4: (skip 2 sts, sc in centre dc of shell, skip 2 sts, shell in next sc) x 6\n");
  CHECK(skipped.said == "");
  CHECK(places(skipped).substr(0, 15) == "3 6 6 6 6 6 9 1");
}

TEST_CASE("A border has more in the middle of each corner") {
  const test::Text text(
      "Moss square\nTerms: US\n\nRnd 1: *3 dc in MR, ch 2; repeat from * 3 more times, join (12 dc)\n"
      "Rnd 2: ch 1, sc in each dc around, 3 sc in each ch-2 sp, join (24 sc)\n"
      "Rnd 3: ch 1, sc in each st around, working 3 sc in the center stitch of each corner, join (32)\n");
  CHECK(text.said == "");
  CHECK(text.last().counted == 32);
}

TEST_CASE("Where no shell is left it is said") {
  const test::Text text(
      "Moss\nTerms: US\n\nRnd 1: 6 dc in MR (6)\nRnd 2: sc in centre dc of next shell (1)\n");
  CHECK(text.said.find("there is no group of stitches left that has a middle") != std::string::npos);
}
