#include "text.hpp"

#include <catch2/catch.hpp>

#include <string>

using namespace whorl;
using test::Text;

namespace {

const std::string square =
    "Moss square\n\nCh 4, join with sl st to form a ring.\n"
    "Rnd 1: ch 3 (counts as dc), 2 dc in ring, ch 2, (3 dc in ring, ch 2) 3 times, join "
    "with sl st in top of ch 3. (12 dc, 4 ch-2 sp)\n"
    "Rnd 2: sl st in next 2 dc and into ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, "
    "[ch 1, (3 dc, ch 2, 3 dc) in next ch-2 sp] 3 times, ch 1, join.\n";

} // namespace

// Common practice, no source
TEST_CASE("slip stitches to a corner are drawn into the stitches they pass and its space, and not counted") {
  const Text text(square);
  CHECK(text.said == "");
  CHECK(text.last().counted == 24);
  CHECK(text.into(0) == "part-1-4");
  CHECK(text.into(1) == "part-1-5");
  CHECK(text.into(2) == "part-1-sp-1");
}

TEST_CASE("what follows the slip stitches to a corner goes into its space") {
  const Text text(square);
  CHECK(text.into(6) == "part-1-sp-1");
  CHECK(text.into(8) == "");
  CHECK(text.into(11) == "part-1-sp-1");
}

TEST_CASE("what slip stitches passed at the head of a round is worked at its end") {
  const Text text(
      "Moss ring\n\nRnd 1: 6 sc in magic ring, join (6)\nRnd 2: ch 1, (sc in next st, ch 1) 6 times, "
      "join\nRnd 3: sl st in next st and in next ch-1 sp, ch 1, (sc in next ch-1 sp, sc in next st) 6 "
      "times, join (12)\n");
  CHECK(text.said == "");
  CHECK(text.into(0) == "part-2-2");
  CHECK(text.into(3) == "part-2-sp-1");
  CHECK(text.into(14) == "part-2-2");
}

TEST_CASE("a ring of chains told above the rounds is the ring that the first goes into") {
  const Text text(square);
  CHECK(text.worked.fabric.parts[0].start == fabric::Start::chain_ring);
}
