/// Techniques, typed: what cannot be is said, and what can be changes no count.

#include "fabric/text.hpp"

#include <catch2/catch.hpp>

namespace {

std::string said(const std::string& line, const std::string& below = "") {
  return test::Text("Newt\n\n" + line + "\n\nBody\n" + below +
                    "Rnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\n" + "Rnd 3: 12 sc (12)\n")
      .said;
}

} // namespace

TEST_CASE("A technique of a stitch that is nowhere worked is said") {
  CHECK(said("Work the dc yarn under.") == "yarn under is said of dc, and no round has one\n");
  CHECK(said("The decreases are worked yarn under.") ==
        "yarn under is said of the decreases, and no round has one\n");
  CHECK(said("", "The decreases are worked yarn under.\n") ==
        "yarn under is said of the decreases, and no round of Body has one\n");
}

TEST_CASE("Two techniques that cannot be at once are said") {
  CHECK(said("All sc are worked yarn under. The sc are V shaped stitches.") ==
        "the text says yarn under and yarn over of the same stitches\n");
  CHECK(said("Work tightly. Work loosely.") == "the text says tightly and loosely of the same stitches\n");
}

TEST_CASE("A technique that can be is no trouble and changes no stitch") {
  const std::string rounds = "Rnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\nRnd 3: 12 sc (12)\n";
  const test::Text plain("Newt\n\nBody\n" + rounds);
  for (const char* line :
       {"All sc are worked yarn under.", "Work yarn under. The increases are worked yarn over.",
        "The body is worked inside out.", "Crochet over the wire.", "Work tightly. In the body work loosely.",
        "sc = single crochet, yarn under; tr = treble, yarn under"}) {
    CAPTURE(line);
    const test::Text text("Newt\n\n" + std::string(line) + "\n\nBody\n" + rounds);
    CHECK(text.said.empty());
    CHECK(whorl::fabric::show(text.worked.fabric) == whorl::fabric::show(plain.worked.fabric));
  }
}
