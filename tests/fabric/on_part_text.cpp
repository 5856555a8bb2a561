/// A part that begins along the last round of another. Common practice, no source.

#include "text.hpp"

#include <catch2/catch.hpp>

#include <string>

using namespace whorl;
using test::Text;

namespace {

Text cuff(const std::string& lines) {
  return Text("Forest mitten\n\nHAND\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\nFasten off.\n\n" + lines);
}

} // namespace

TEST_CASE("a part is begun along the last round of another in many ways of saying it") {
  for (const char* lines : {
           "CUFF\nJoin yarn in the last round of the hand.\nRnd 1: sc around (12)\n",
           "CUFF\nJoin yarn to the last round of the hand.\nRnd 1: sc around (12)\n",
           "CUFF\nAttach yarn to any stitch of the last round of the hand.\nRnd 1: sc around (12)\n",
           "CUFF\nAttach yarn to any st of Rnd 2 of the hand.\nRnd 1: sc around (12)\n",
           "CUFF\nJoin green yarn in any stitch of Rnd 2.\nRnd 1: sc around (12)\n",
           "CUFF\nRejoin yarn to the hand.\nRnd 1: sc around (12)\n",
           "CUFF\nRejoin the yarn at the opening of the hand.\nRnd 1: sc around (12)\n",
           "CUFF\nWork along the opening of the hand.\nRnd 1: sc around (12)\n",
           "CUFF\nContinue on the last round of the hand.\nRnd 1: sc around (12)\n",
           "CUFF\nRnd 1: join yarn in last rnd of HAND, sc around (12)\n",
           "CUFF\nRnd 1: sc in each st of the last round of the hand (12)\n",
           "CUFF\nRnd 1: sc around the opening of the hand (12)\n",
       }) {
    INFO(lines);
    const Text text = cuff(lines);
    CHECK(text.said == "");
    CHECK(text.last().counted == 12);
    CHECK(text.into(0) == "hand-2-1");
    CHECK(text.into(11) == "hand-2-12");
  }
}

TEST_CASE("a part runs against the round that it is begun along where its text says so") {
  for (const char* line : {"Join yarn in the last round of the hand and work in the opposite direction.",
                           "Hold the hand with the start up. Join yarn in the last round of the hand.",
                           "Work along the opening of the hand, against it."}) {
    INFO(line);
    const Text text = cuff("CUFF\n" + std::string(line) + "\nRnd 1: sc around (12)\n");
    CHECK(text.said == "");
    CHECK(text.into(0) == "hand-2-1");
    CHECK(text.into(1) == "hand-2-12");
    CHECK(text.into(11) == "hand-2-2");
  }
}

TEST_CASE("a part that begins nothing and names no place is no part of another") {
  CHECK(
      cuff("CUFF\nPull the cuff over the hand.\nRnd 1: sc around (12)\n").said.find("nothing to work into") !=
      std::string::npos);
}

TEST_CASE("an edge laid flat is closed by a line without a label that states its count") {
  for (const char* line :
       {"Press flat and sc through both layers across (6).", "Flatten and sc through both layers (6)",
        "Fold flat, 6 sc through both layers (6)"}) {
    INFO(line);
    const Text text(
        "Gnome's sleeve\n\nARM\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\nRnd 3: sc around (12)\n" +
        std::string(line) + "\n");
    CHECK(text.said == "");
    CHECK(text.last().counted == 6);
    CHECK(text.into(0) == "arm-3-1");
    CHECK(text.into(5) == "arm-3-6");
  }
}
