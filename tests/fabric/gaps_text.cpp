/// Work between the groups of the round before, where no chain parts them: the square of groups that
/// everybody makes first. Common practice, no source.

#include "text.hpp"

#include <catch2/catch.hpp>

using namespace whorl;
using test::Text;

namespace {

const std::string square =
    "Bramble square\nTerms: US\nCh 3 at the start of a round counts as 1 dc.\n"
    "Rnd 1: Magic ring, ch 3, 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * twice more, join. (12)\n"
    "Rnd 2: Sl st to first ch-2 sp, (ch 3, 2 dc, ch 2, 3 dc) in same sp, *(3 dc, ch 2, 3 dc) in next ch-2 "
    "sp; "
    "rep from * twice more, join. (24)\n";

/// What the groups of the last round go into, each named once.
std::vector<std::string> places_of(const Text& text) {
  std::vector<std::string> places;
  for (std::uint32_t i = 0; i < text.last().count; ++i) {
    const std::string place = text.into(i);
    if (!place.empty() && (places.empty() || places.back() != place)) places.push_back(place);
  }
  return places;
}

} // namespace

TEST_CASE("Groups go into the gaps between groups, the one at the seam too") {
  const Text text(square +
                  "Rnd 3: Sl st to first ch-2 sp, (ch 3, 2 dc, ch 2, 3 dc) in same sp, 3 dc in next sp "
                  "between groups, *(3 dc, ch 2, 3 dc) in next ch-2 sp, 3 dc in next sp between groups; rep "
                  "from * twice more, join. (36)\n");
  CHECK(text.said == "");
  CHECK(text.last().counted == 36);
  const std::vector<std::string> places = places_of(text);
  std::vector<std::string> gaps;
  for (const std::string& place : places)
    if (place.find("gap") != std::string::npos) gaps.push_back(place);
  REQUIRE(gaps.size() == 4);
  CHECK(gaps.back() != gaps.front());
  CHECK(gaps.back().find("-2-") != std::string::npos); // of round 2
}

TEST_CASE("In each gap around goes into all of them") {
  const Text text("Bramble ring\nTerms: US\nRnd 1: 12 sc in magic ring (12)\n"
                  "Rnd 2: *3 dc in next st, skip 1; rep from * around (18)\n"
                  "Rnd 3: 3 dc in each space between groups around (18)\n");
  CHECK(text.said == "");
  CHECK(text.last().counted == 18);
}

TEST_CASE("Between groups that chains part the hook goes into the chain space") {
  const Text text("Bramble ring\nTerms: US\nRnd 1: 12 sc in magic ring (12)\n"
                  "Rnd 2: *3 dc in next st, ch 1, skip 1; rep from * around (18)\n"
                  "Rnd 3: *3 dc in next sp between groups; rep from * around (18)\n");
  CHECK(text.said == "");
  CHECK(text.last().counted == 18);
  CHECK(text.into(0).find("sp") != std::string::npos);
}

TEST_CASE("Where no gap is left that is told") {
  const Text text("Bramble ring\nTerms: US\nRnd 1: 12 sc in magic ring (12)\n"
                  "Rnd 2: *3 dc in next st, skip 1; rep from * around (18)\n"
                  "Rnd 3: 3 dc in next gap, repeat 9 times (27)\n");
  CHECK(text.said.find("there is no gap between two groups left to work into") != std::string::npos);
}

TEST_CASE("A slip stitch into the nth chain at the end of a round joins it") {
  const Text text(
      "Bramble coaster\nTerms: US\nRnd 1: MR, ch 3 (counts as dc), 11 dc in ring, sl st in 3rd ch (12)\n"
      "Rnd 2: ch 3, dc in same st, 2 dc in each st around, sl st in 3rd ch (24)\n"
      "Rnd 3: ch 3, dc in next 23 sts, sl st in 3rd chain (24)\n");
  CHECK(text.said == "");
  CHECK(text.last().counted == 24);
}
