#include "text.hpp"

#include <catch2/catch.hpp>

#include <string>

using namespace whorl;
using test::Text;

namespace {

const std::string head = "HEAD\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\nRnd 3: (sc, inc) x 6 (18)\n"
                         "Rnd 4: (2 sc, inc) x 6 (24)\nRnds 5-12: sc around (24)\n";

Text fox(const std::string& sewing, int make = 1, const std::string& between = "") {
  return Text("Fox cub\n\nSNOUT (make " + std::to_string(make) +
              ")\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\n" + between + "\n" + head + sewing + "\n");
}

/// "rounds 5 to 9: 9-15 17-20" of every footprint.
std::string prints(const Text& text) {
  std::string told;
  const fabric::Fabric& fabric = text.worked.fabric;
  for (const fabric::Footprint& print : fabric.footprints) {
    told += fabric.parts[print.part].name + " over " +
            std::to_string(fabric.rounds[print.first_round].number) + "-" +
            std::to_string(fabric.rounds[print.last_round].number) + ":";
    for (const fabric::Covering& copy : print.stitches)
      told += " " + std::to_string(copy.first) + "-" + std::to_string(copy.last);
    told += ";";
  }
  return told;
}

} // namespace

// Trade rules, Placing: "Sewn-on parts are drawn as a dashed footprint where the text names rounds".
TEST_CASE("a part that is sewn between two rounds covers those between them, in front") {
  CHECK(prints(fox("Sew the snout between rounds 5 and 8.")) == "SNOUT over 6-7: 10-14;");
  CHECK(prints(fox("Sew the snout to the head between Rnds 5 and 8.")) == "SNOUT over 6-7: 10-14;");
}

TEST_CASE("a part that is sewn over rounds covers them all") {
  CHECK(prints(fox("Sew the snout on at rounds 6-8.")) == "SNOUT over 6-8: 10-13;");
  CHECK(prints(fox("Sew snout over Rnds 6 to 8 of the head.")) == "SNOUT over 6-8: 10-13;");
}

TEST_CASE("a part that is sewn to one round is pressed flat") {
  CHECK(prints(fox("Sew the snout to round 7.")) == "SNOUT over 7-7: 9-15;");
}

TEST_CASE("two parts lie so far apart as the text says, or on both sides") {
  CHECK(prints(fox("Sew the snouts to Rnd 7, 8 sts apart.", 2)) == "SNOUT over 7-7: 2-8 16-22;");
  CHECK(prints(fox("Sew the snouts to Rnd 7, opposite each other.", 2)) == "SNOUT over 7-7: 3-9 15-21;");
  CHECK(prints(fox("Sew the snouts to Rnd 7, behind stitches 6 and 15.", 2)) == "SNOUT over 7-7: 3-9 12-18;");
}

namespace {

/// A part of two rounds that is sewn to a head.
Text sewn(const std::string& part, int make, const std::string& sewing) {
  return Text("Mole\n\n" + head + "\n" + part + " (make " + std::to_string(make) +
              ")\nRnd 1: 6 sc in MR (6)\nRnd 2: sc around (6)\n\n" + sewing + "\n");
}

} // namespace

// "A part opposite another": ears sit at both sides; where paws go on their rounds nobody can know.
TEST_CASE("where on its rounds a part lies is told or follows from what it is") {
  CHECK(prints(sewn("EAR", 2, "Sew the ears to Rnd 7 of the head.")) == "EAR over 7-7: 4-7 16-19;");
  CHECK(prints(sewn("PAW", 2, "Sew the paws to Rnd 7 of the head.")).empty());
  CHECK(prints(sewn("PAW", 2, "Sew the paws to Rnd 7 of the head, one on each side.")) ==
        "PAW over 7-7: 4-7 16-19;");
  CHECK(prints(sewn("TAIL", 1, "Sew the tail to Rnd 7 of the head.")).empty());
  CHECK(prints(sewn("TAIL", 1, "Sew the tail to Rnd 7 in the middle of the head.")) ==
        "TAIL over 7-7: 10-13;");
}

TEST_CASE("each sentence has its share of the copies of a part") {
  CHECK(prints(sewn("PAW", 4, "Sew the front paws to Rnds 5 and 6 and the back ones to Rnds 10 and 11."))
            .empty());
  CHECK(prints(sewn(
            "PAW", 4,
            "Sew two of the paws to Rnd 5, 4 sts apart. Sew the other two paws to Rnd 10, 6 sts apart.")) ==
        "PAW over 5-5: 7-10 14-17;PAW over 10-10: 6-9 15-18;");
}

TEST_CASE("the part whose rounds the sentence stands behind is sewn on where none is named") {
  CHECK(prints(Text("Fox cub\n\n" + head +
                    "\nSNOUT\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\n"
                    "Sew to the head between rounds 5 and 8.\n")) == "SNOUT over 6-7: 10-14;");
}

TEST_CASE("what is sewn where no rounds are named, or on the back, where rounds begin, has no footprint") {
  CHECK(prints(fox("Sew the snout to the front of the head.")).empty());
  CHECK(prints(fox("Sew the snout to round 7, at the back.")).empty());
}

TEST_CASE("each sentence names its own part and rounds") {
  const std::string ear = "EAR (make 2)\nRnd 1: 6 sc in MR (6)\n\n";
  CHECK(
      prints(Text(
          "Fox cub\n\n" + ear + "SNOUT\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\n\n" + head +
          "Sew the ears to Rnd 5 of the head, 6 sts apart. Sew the snout to round 7. Sew on the tail.\n")) ==
      "EAR over 5-5: 6-9 15-18;SNOUT over 7-7: 9-15;");
  CHECK(prints(Text("Fox cub\n\n" + ear + head + "Fold each ear and sew the pair to Rnd 5 of the head.\n"))
            .empty());
}

TEST_CASE("parts that do not fit on the round have no footprint") {
  CHECK(prints(fox("Sew the snouts to Rnd 7, evenly spaced.", 4)).empty());
  CHECK(prints(fox("Sew the snouts to Rnd 7, 20 sts apart.", 2)).empty());
}
