#include "text.hpp"

#include <catch2/catch.hpp>

#include <string>

using namespace whorl;
using test::Text;

namespace {

const std::string ear =
    "EAR (make 2)\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\nRnd 3: (5 sc, inc) x 2 (14)\n"
    "Fasten off.\n\n";
const std::string crown = "HEAD\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\nRnd 3: (sc, inc) x 6 (18)\n"
                          "Rnd 4: (2 sc, inc) x 6 (24)\n";

Text bear(const std::string& round, const std::string& part = ear) {
  return Text("Little bear\n\n" + part + crown + "Rnd 5: " + round + " (24)\n");
}

/// How many feet each stitch of the last round has.
std::string feet(const Text& text) {
  std::string told;
  for (std::uint32_t i = 0; i < text.last().count; ++i)
    told += std::to_string(fabric::legs_of(text.worked.fabric, text.last().first_stitch + i).size());
  return told;
}

std::string held(const Text& text, std::uint32_t index) {
  std::string told;
  for (const fabric::Leg& leg : fabric::held_legs_of(text.worked.fabric, text.last().first_stitch + index))
    told += (told.empty() ? "" : " ") + fabric::id_of(text.worked.fabric, leg.into);
  return told;
}

} // namespace

// Trade rules, Loops, holds, parts: "A stitch through two layers or two parts has one foot in each."
TEST_CASE("a part is joined without sewing in many ways of saying it") {
  for (const char* round : {
           "sc 5, place the ear against the head, sc 7 through both layers, sc 12",
           "5 sc, sc in next 7 sts through ear and head together, 12 sc",
           "5 sc, join the ear: hold it against the head and work 7 sc through both, 12 sc",
           "sc 5, attach ear: 7 sc through both ear and head, sc 12",
           "5 sc, 7 sc through the ear and the head at the same time, 12 sc",
           "5 sc, hold first ear in front of the head, sc in next 7 sts through both layers, sc in next 12 "
           "sts",
           "5 sc, (sc through ear and head) x 7, 12 sc",
           "5 sc, working through both the ear and the head, sc in next 7 sts, 12 sc",
           "5 sc, with ear in front, sc 7 through both thicknesses, 12 sc",
           "5 sc, line up the ear with the edge of the head, 7 sc through both pieces, 12 sc",
           "5 sc, 7 sc together with ear, 12 sc",
           "5 sc, attach ear with next 7 sc (through both layers), 12 sc",
           "5 sc, attach the ear with 7 sc, 12 sc",
           "5 sc, join ear with 7 sc, 12 sc",
           "5 sc, 7 sc (through ear and head), 12 sc",
           "5 sc, [ear + head] 7 sc, 12 sc",
           "5 sc, join ear with 7 sc (going through ear and head), 12 sc",
           "5 sc, crochet the ear on with the next 7 sc, 12 sc",
           "5 sc, attach ear the same way with 7 sc, 12 sc",
           "5 sc, flatten the ear and hold it against the head, 7 sc through all layers, 12 sc",
           "5 sc, flatten the ear, place it in front of the head, 7 sc through all three layers, 12 sc",
           "sc in next 5 sts, take the ear, sc through the ear and head in next 7 sts, sc in next 12 sts",
           "5 sc, place ear on top of head, insert hook through both ear and head and work 7 sc, 12 sc",
           "sc 5. Position ear. Sc 7 through both ear and head. Sc 12.",
           "5 sc, join ear by working 7 sc through both ear and head, 12 sc",
           "5 sc, join ear (7 sc through both), 12 sc",
           "5 sc, 7 sc joining the ear, 12 sc",
           "5 sc, sc next 7 sts of head and ear together, 12 sc",
           "5 sc, pick up the ear, 7 sc through ear and head, 12 sc",
           "5 sc, [place ear, 7 sc through ear + head], 12 sc",
           "5 sc, 7 sc in both ear and head, 12 sc",
           "sc in next 5 sts, next 7 sts: sc working through ear and head together, sc in next 12 sts",
           "5 sc, 7 sc through 1st ear + head, 12 sc",
       }) {
    const Text text = bear(round);
    CAPTURE(round);
    CHECK(text.said == "");
    CHECK(feet(text) == "111113333333111111111111");
  }
}

TEST_CASE("a tube pressed flat has a foot in each of its layers, from its first stitch") {
  const Text text = bear("5 sc, 7 sc through ear and head, 12 sc");
  CHECK(text.into(5) == "head-4-6");
  CHECK(held(text, 5) == "ear-3-1 ear-3-14");
  CHECK(held(text, 11) == "ear-3-7 ear-3-8");
  CHECK(held(text, 12) == "");
  CHECK(text.last().makes == 24);
}

TEST_CASE("a part of so many stitches has one foot in each") {
  const std::string arm = "ARM (make 2)\nRnd 1: 6 sc in MR (6)\nRnds 2-5: sc around (6)\n"
                          "Rnd 6: pinch flat, 3 sc through both layers (3)\n\n";
  const Text text =
      bear("5 sc, 3 sc through arm and head, 8 sc, 3 sc through second arm and head, 5 sc", arm);
  CHECK(text.said == "");
  CHECK(feet(text) == "111112221111111122211111");
  CHECK(held(text, 5) == "arm-6-1");
  CHECK(held(text, 18) == "arm-6-3");
}

TEST_CASE("the edge of a flat piece whose last row is a wrong-side one is met from its end") {
  const std::string ear_of_rows =
      "EAR (make 2)\nCh 5\nRow 1: sc in 2nd ch from hook, sc in next 3 ch, turn (4)\n"
      "Row 2: ch 1, 4 sc (4)\n\n";
  const Text text = bear("5 sc, 4 sc through ear and head, 15 sc", ear_of_rows);
  CHECK(text.said == "");
  CHECK(held(text, 5) == "ear-2-5");
  CHECK(held(text, 8) == "ear-2-2");
}

TEST_CASE("parts made twice are joined one after the other, what goes on without a break with the same") {
  const Text text = bear("3 sc, 7 sc through ear and head, 4 sc, 7 sc through ear and head, 3 sc");
  CHECK(text.said == "");
  CHECK(held(text, 3) == "ear-3-1 ear-3-14");
  CHECK(held(text, 14) == "ear-3-1 ear-3-14");
  const Text parted = bear("3 sc, 3 sc through ear and head, 4 sc through ear and head, 14 sc");
  CHECK(parted.said == "");
  CHECK(held(parted, 6) == "ear-3-4 ear-3-11");
}

TEST_CASE("the piece in hand may be folded although a part is named") {
  const Text text("Bat\n\nBODY\nRnd 1: 6 sc in MR (6)\n\nEAR\nRnd 1: 6 sc in MR (6)\n"
                  "Rnd 2: hold the ear flat, 3 sc through both layers (3)\n");
  CHECK(text.said == "");
  CHECK(text.last().uses == 6);
}

TEST_CASE("a part with fewer stitches than are worked through it is said") {
  const Text text = bear("5 sc, 16 sc through ear and head, 3 sc");
  CHECK(text.said == "round 5: EAR has 14 stitches in round 3, its last; 16 are worked through it\n");
  CHECK(text.last().makes == 24);
}

TEST_CASE("a part that is joined more often than it is made is said") {
  const std::string again = "sc, 7 sc through ear and head";
  CHECK(bear(again + ", " + again + ", " + again).said ==
        "round 5: EAR is made 2 times, and all of them are joined already\n");
}

TEST_CASE("a part that no text has is said") {
  CHECK(bear("5 sc, 7 sc through both the horn and the head, 12 sc").said ==
        "round 5 goes through two parts, and none that stands before it has a name that is said here; its "
        "stitches are drawn through the piece in hand alone\n");
}

TEST_CASE("a part that is written below the round it is joined in is made before") {
  const Text text("Little bear\n\n" + crown + "Rnd 5: 5 sc, 7 sc through ear and head, 12 sc (24)\n\n" + ear);
  CHECK(text.said == "");
  CHECK(text.worked.fabric.parts.front().name == "EAR");
  std::uint32_t held = 0;
  for (const fabric::Stitch& stitch : text.worked.fabric.stitches)
    held += (stitch.flags & fabric::holds_part) != 0 ? 1 : 0;
  CHECK(held == 7);
}

TEST_CASE("a part that the text sends for before it is joined is made in time, and the round stays one of "
          "its own") {
  const Text text("Little bear\n\n" + crown +
                  "Make the ears now (see below).\nRnd 5: 5 sc, 7 sc through ear and "
                  "head, 12 sc (24)\n\n" +
                  ear);
  CHECK(text.said == "");
  std::uint32_t held = 0;
  for (const fabric::Stitch& stitch : text.worked.fabric.stitches)
    held += (stitch.flags & fabric::holds_part) != 0 ? 1 : 0;
  CHECK(held == 7);
}

TEST_CASE("stitches that stay free beside the joined ones are noted with their number") {
  const Text text = bear("5 sc, 5 sc through ear and head, 14 sc");
  CHECK(text.said == "");
  std::string note;
  for (const pattern::Finding& finding : fabric::check(text.read.tree, text.worked.fabric))
    note += finding.message;
  CHECK(note == "9 of the 14 stitches of round 3 of EAR stay free beside those joined to HEAD");
}

TEST_CASE("a second part is joined in the way of the first") {
  for (const char* round :
       {"2 sc, join ear with 7 sc, 4 sc, join second ear with 7 sc, 4 sc",
        "2 sc, place first ear against the head, sc through both layers 7 times, 4 sc, attach second ear the "
        "same "
        "way with 7 sc, 4 sc",
        "2 sc, crochet the ear on with 7 sc, 4 sc, crochet the other ear on with 7 sc, 4 sc"}) {
    INFO(round);
    const Text text = bear(round);
    CHECK(text.said == "");
    CHECK(feet(text) == "113333333111133333331111");
  }
}
