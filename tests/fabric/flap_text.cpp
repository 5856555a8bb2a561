/// Rows on the last round of a piece whose yarn is not cut, and rounds in leftover loops without a label.
/// Common practice, no source.

#include "text.hpp"

#include <catch2/catch.hpp>

using namespace whorl;
using test::Text;

namespace {

const std::string body = "Moss gnome\nTerms: US\n\nBody\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\n"
                         "Rnd 3: BLO sc around (12)\n";

} // namespace

TEST_CASE("A flap in rows stands on the last round of the piece before") {
  const Text text(body + "\nFlap\nRow 1: sc in next 5, leave remaining sts unworked, turn (5)\n"
                         "Row 2: ch 1, sc in each st across (5)\n");
  CHECK(text.said == "");
  CHECK(text.into("flap", 1, 1) == "body-3-1");
  CHECK(text.into("flap", 1, 5) == "body-3-5");
}

TEST_CASE("Behind a cut yarn rows need a beginning of their own") {
  const Text text(body + "Fasten off.\n\nFlap\nRow 1: sc in next 5, turn (5)\n");
  CHECK(text.said.find("nothing to work into") != std::string::npos);
}

TEST_CASE("A round in leftover loops needs no label") {
  const char* line =
      GENERATE("Brim\nSc around in the leftover front loops of rnd 3. (12)",
               "Brim: join yarn to any front loop of rnd 3, sc in each leftover front loop around (12)",
               "Brim\nSc in each of the 12 unused front loops of rnd 3");
  CAPTURE(line);
  const Text text(body + "Fasten off.\n\n" + line + "\n");
  CHECK(text.said == "");
  CHECK(text.last().counted == 12);
  CHECK(text.into("brim", 1, 1) == "body-2-1");
}

TEST_CASE(
    "A round in leftover loops between rounds that go on is said to be left out where it has no count") {
  const Text text(body + "Sc around in the leftover front loops of rnd 2.\nRnd 4: sc around (12)\n");
  CHECK(text.said == "this line reads as work, and no label says of which round; it is left out\n");
  CHECK(text.last().uses == 12);
}

TEST_CASE("A slip stitch to the first stitch behind a count closes the round") {
  const Text text(
      "Moss\nTerms: US\nRnd 1: 6 sc in MR (6), sl st to first.\nRnd 2: inc x 6 (13), slst to 1st\n");
  CHECK(text.said == "round 2 makes 12 stitches, the pattern says 13\n");
}

TEST_CASE("A piece is divided for its legs by a line without a label") {
  const char* line =
      GENERATE("Leg 1: sc in next 6, skip 6, join.",
               "Divide for legs: sc in next 6, skip the next 6 sts and join with a sl st to the first st "
               "to form the first leg (6)");
  CAPTURE(line);
  const Text text(body + line + "\nRnd 5: sc in each st around (6)\nFasten off.\n" +
                  "Leg 2: rejoin yarn at the skipped sts, sc in next 6.\nRnd 5: sc around (6)\n");
  CHECK(text.said == "");
  CHECK(text.into("leg-2", 1, 1) == "body-3-7");
}
