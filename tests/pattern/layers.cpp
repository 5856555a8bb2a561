#include "told.hpp"

#include <catch2/catch.hpp>

using namespace whorl;
using namespace whorl::pattern;

// Through one layer or two, told by the counts: common practice, no source.

TEST_CASE("two pieces laid together are worked through stitch by stitch where the count says so") {
  CHECK(counts("Ear\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\nLay one ear behind the other.\n"
               "Rnd 3: sc in each st through both layers (12)\n") == "6 12 12");
}

TEST_CASE("a piece lying flat is worked through both layers at once") {
  CHECK(
      counts("Ear\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\nRnd 3: sc across through both layers (6)\n") ==
      "6 12 6");
}

TEST_CASE("an opening that is folded is closed through both layers where the count says so") {
  const Read read = read_text("Arm\nR1: 8 sc in the magic ring (8)\nR2: 8 sc (8)\n"
                              "R3: Fold the opening and close it with 4 sc (4)\n");
  CHECK(outcome(read.tree.rounds.back().effect, 8).left_over == 0);
}

TEST_CASE("an opening that is told to be closed flat in a sentence without a label or a count is worked") {
  const std::string pod = "Pod\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\nRnd 3: sc around (12)\n";
  for (const char* closing :
       {"Press the opening flat and work 6 sc through both layers to close it.",
        "Close flat: sl st through both layers.", "Fold in half, 6 sl st through both layers.",
        "To close, press the edges together and sc 6 through both layers."}) {
    INFO(closing);
    CHECK(counts(pod + closing + "\n") == "6 12 12 6");
  }
  CHECK(counts(pod + "Sew the opening closed through both layers.\n") == "6 12 12");
}
