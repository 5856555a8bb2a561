/// Places that the text names by the kind of their stitch: "shell in next sc".

#include "fabric/text.hpp"

#include <catch2/catch.hpp>

namespace {

const std::string leaf = "Leaf litter\nTerms: US\n\nRnd 1: 6 sc in MR (6)\nRnd 2: *sc in next sc, 3 dc in "
                         "next sc; rep from * around (12)\n";

/// What the places of the last round's stitches are, without what stands before the number.
std::string places(const test::Text& text) {
  std::string all;
  for (std::uint32_t i = 0; i < text.last().count; ++i) {
    const std::string id = text.into(i);
    if (!id.empty()) all += (all.empty() ? "" : " ") + id.substr(id.rfind('-') + 1);
  }
  return all;
}

} // namespace

TEST_CASE("A shell in the next sc passes over the stitches of other kinds where the count wants it") {
  const test::Text text(leaf + "Rnd 3: *3 dc in next sc; rep from * around (9)\n");
  CHECK(text.said == "");
  CHECK(places(text) == "1 1 1 5 5 5 9 9 9");
  CHECK(text.last().uses == 3);
  CHECK(text.last().left_over == 0);
  CHECK(text.worked.fabric.unworked.size() == 9);
  CHECK(text.worked.fabric.unworked.front().on_purpose);
}

TEST_CASE("Each place of a repeat may name its own kind") {
  const test::Text text(leaf + "Rnd 3: *3 dc in next sc, sc in next dc; rep from * around (12)\n");
  CHECK(text.said == "");
  CHECK(places(text) == "1 1 1 2 5 5 5 6 9 9 9 10");
}

TEST_CASE("The words of UK terms name the same places") {
  const test::Text text("Leaf litter\nTerms: UK\n\nRnd 1: 6 dc in magic ring (6)\n"
                        "Rnd 2: *dc in next dc, 3 tr in next dc; rep from * around (12)\n"
                        "Rnd 3: *3 tr in next dc, miss next 2 tr, dc in next tr; rep from * around (12)\n"
                        "Rnd 4: *dc in next dc; rep from * around (3)\n");
  CHECK(text.said == "");
  CHECK(places(text) == "4 8 12");
}

TEST_CASE("Behind a half shell a shell goes into the sc that is named") {
  const test::Text text(
      "Leaf edging\nTerms: US\nShell: 5 dc in one st.\n\n"
      "Row 1: Ch 14, sc in 2nd ch from hook, *skip 2 ch, shell in next ch, skip 2 ch, sc in next "
      "ch; rep from * across, turn. (10 dc, 3 sc)\n"
      "Row 2: Ch 3 (counts as dc), 2 dc in same st, skip 2 dc, sc in next dc, skip 2 dc, shell in "
      "next sc, skip 2 dc, sc in next dc, skip 2 dc, 3 dc in next sc, turn. (13 sts)\n"
      "Row 3: Ch 1, sc in first dc, shell in next sc, sc in the middle dc of next shell, shell in "
      "next sc, sc in last dc, turn. (13 sts)\n");
  CHECK(text.said == "");
  CHECK(places(text) == "15 12 12 12 12 12 9 6 6 6 6 6 3");
}

TEST_CASE("Where the name is another word for any stitch, the round goes into each") {
  const std::string buds =
      "Buds\nTerms: US\n\nRnd 1: 6 sc in MR (6)\nRnd 2: *sc in next sc, bo in next sc; rep "
      "from * around (6)\n";
  for (const char* round :
       {"Rnd 3: 2 sc in each sc around (12)", "Rnd 3: *sc in next sc, 2 sc in next sc; rep from * around (9)",
        "Rnd 3: *sc in next sc, 2 sc in next sc; rep from * around", "Rnd 3: sc in next 6 sc"}) {
    CAPTURE(round);
    const test::Text text(buds + round + "\n");
    CHECK(text.said == "");
    CHECK(text.last().uses == 6);
  }
}

TEST_CASE("A decrease is a stitch of its kind, and an increase is two") {
  const test::Text burr(
      "Burr\nTerms: US\n\nRnd 1: 8 sc in MR (8)\nRnd 2: (sc2tog, 3 dc in next sc, 2 sc in next sc) x 2 (12)\n"
      "Rnd 3: *hdc in next sc, hdc in next 2 sc; rep from * around (6)\n");
  CHECK(burr.said == "");
  CHECK(places(burr) == "1 5 6 7 11 12");
}

TEST_CASE("Where a round does not come out either way, what is not there to be worked into is said") {
  const test::Text text(leaf +
                        "Rnd 3: 3 dc in next sc, 3 dc in next sc, 3 dc in next sc, 3 dc in next sc (13)\n");
  CHECK(text.said.find("round 3: there is no sc left to work into") != std::string::npos);
}
