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

TEST_CASE("rows are begun along the last round of another part, from the stitch that is named") {
  for (const char* line : {"Join yarn in the 3rd stitch of the last round of the hand. Work in rows.",
                           "Attach yarn to st 3 of the last round of the hand.",
                           "Rejoin yarn in stitch 3 of Rnd 2 of the hand."}) {
    INFO(line);
    const Text text =
        cuff("FLAP\n" + std::string(line) + "\nRow 1: ch 1, 4 sc, turn (4)\nRow 2: ch 1, 4 sc (4)\n");
    CHECK(text.said == "");
    CHECK(text.into("flap", 1, 1) == "hand-2-3");
    CHECK(text.into("flap", 1, 4) == "hand-2-6");
  }
}

namespace {

Text stem(const std::string& lines) {
  return Text("Fern\n\nSTEM\nCh 6.\nRow 1: sc in 2nd ch from hook and in each ch across, turn (5)\n" + lines);
}

} // namespace

TEST_CASE("a part is begun along the last row of another from where the right side begins") {
  const char* frond = "\nFROND\nJoin yarn in the last row of the stem.\nRow 1: ch 1, sc across (5)\n";
  const Text right = stem(frond), wrong = stem("Row 2: ch 1, sc across (5)\n" + std::string(frond));
  for (const Text* text : {&right, &wrong}) CHECK(text->said == "");
  CHECK(right.into("frond", 1, 1) == "stem-1-1");
  CHECK(wrong.into("frond", 1, 1) == "stem-2-6"); // its turning chain is stitch 1
  CHECK(wrong.into("frond", 1, 5) == "stem-2-2");
}

TEST_CASE("a part is begun along the other side of another's starting chain in many ways of saying it") {
  for (const char* line : {"Join yarn in the other side of the stem's chain.",
                           "Join yarn to the other side of the foundation chain of the stem.",
                           "Work along the other side of the starting chain.",
                           "Join yarn in the unused loops of the foundation chain.",
                           "Rotate the stem. Join yarn in the first ch on the other side of the chain.",
                           "Into the opposite side of the chain:"}) {
    INFO(line);
    const Text text = stem("\nFROND\n" + std::string(line) + "\nRow 1: ch 1, sc in each ch across (5)\n");
    CHECK(text.said == "");
    CHECK(text.last().counted == 5);
    CHECK(text.into("frond", 1, 1) == "stem-0-ch-6");
    CHECK(text.into("frond", 1, 5) == "stem-0-ch-2");
  }
  const Text inside =
      stem("\nFROND\nRow 1: join yarn in the other side of the foundation chain, sc in each ch across (5)\n");
  CHECK(inside.said == "");
  CHECK(inside.into("frond", 1, 1) == "stem-0-ch-6");
}

TEST_CASE("a chain that is worked along on both sides, or none at all, begins no part") {
  const std::string frond =
      "FROND\nJoin yarn in the other side of the stem's chain.\nRow 1: sc in each ch across (5)\n";
  CHECK(stem("\n" + frond + "\n" + frond)
            .said.find("the starting chain of STEM is worked along on both sides already") !=
        std::string::npos);
  CHECK(cuff("FROND\nJoin yarn in the other side of the chain of the hand.\nRow 1: sc in each ch (5)\n")
            .said.find("there is no starting chain to be worked along its other side") != std::string::npos);
}

TEST_CASE("a part that begins nothing and names no place is no part of another") {
  CHECK(
      cuff("CUFF\nPull the cuff over the hand.\nRnd 1: sc around (12)\n").said.find("nothing to work into") !=
      std::string::npos);
}

TEST_CASE("an edge laid flat is closed by a line without a label that states its count") {
  for (const char* line :
       {"Press flat and sc through both layers across (6).", "Flatten and sc through both layers (6)",
        "Fold flat, 6 sc through both layers (6)", "Fold flat and close with 6 sc through both sides. (6)",
        "Fold flat and close the opening with 6 sc through both layers."}) {
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
