/// What is said where a part cannot be begun in the loops that its text names. Common practice, no source.

#include "text.hpp"

#include <catch2/catch.hpp>

#include <string>

using test::Text;

namespace {

Text gnome(const std::string& lines) {
  return Text(
      "Forest gnome\n\nHEAD\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\nRnd 3: in BLO, sc around (12)\n"
      "Rnds 4-6: sc around (12)\n\n" +
      lines);
}

bool says(const Text& text, const std::string& words) { return text.said.find(words) != std::string::npos; }

} // namespace

TEST_CASE("loops of a round that does not exist are told by its number") {
  const Text text =
      gnome("SKIRT\nJoin yarn in the free front loops of Rnd 12 of the head.\nRnd 1: sc around (12)\n");
  CHECK(says(text, "round 1: there is no round 12 whose loops could be worked into"));
}

TEST_CASE("more stitches than loops are told with what there is") {
  const Text text = gnome("SKIRT\nJoin yarn in the free front loops of Rnd 2.\nRnd 1: 13 sc (13)\n");
  CHECK(says(text, "round 1: there is no stitch left to work into: HEAD has 12 front loops in round 2"));
}

TEST_CASE("a loop to begin in that another part has taken is told with that part and the loop's number") {
  const Text text = gnome("BRIM\nJoin yarn in the 3rd free front loop of Rnd 2.\nRow 1: 4 sc (4)\n\n"
                          "FLAP\nJoin yarn in the 5th free front loop of Rnd 2.\nRow 1: 3 sc (3)\n");
  CHECK(says(text, "row 1: loop 5 of round 2 is worked into by BRIM already: the next free one is taken"));
  CHECK(text.into("flap", 1, 1) == "head-2-7");
}

TEST_CASE("parts that share the loops of a round without meeting are no trouble") {
  const Text text = gnome("BRIM\nJoin yarn in the 3rd free front loop of Rnd 2.\nRow 1: 4 sc (4)\n\n"
                          "FLAP\nJoin yarn in the 8th free front loop of Rnd 2.\nRow 1: 3 sc (3)\n");
  CHECK(text.said == "");
  CHECK(text.into("flap", 1, 1) == "head-2-8");
}
