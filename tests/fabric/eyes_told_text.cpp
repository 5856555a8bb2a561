#include "text.hpp"

#include <catch2/catch.hpp>

#include <span>
#include <string>

using namespace whorl;
using test::Text;

namespace {

struct Told {
  std::string line, where; ///< "eye 7: 12 18": what it is, in which round, after which stitches
};

/// A head of thirty stitches a round, and a line below round 10.
std::string where(const std::string& line) {
  const Text text(
      "Badger\n\nHEAD\nRnd 1: 6 sc in magic ring (6)\nRnd 2: inc x 6 (12)\nRnd 3: (1 sc, inc) x 6 (18)\n"
      "Rnd 4: (2 sc, inc) x 6 (24)\nRnd 5: (3 sc, inc) x 6 (30)\nRnds 6-10: sc in each st (30)\n" +
      line + "\nRnd 11: (3 sc, dec) x 6 (24)\n");
  std::string told = text.said;
  for (const fabric::Placing& placing : text.worked.fabric.placings) {
    if (placing.what == pattern::What::note) continue;
    told += placing.what == pattern::What::eye         ? "eye"
            : placing.what == pattern::What::bead      ? "bead"
            : placing.what == pattern::What::embroider ? "embroider"
                                                       : "other";
    if (placing.round != fabric::none)
      told += " " + std::to_string(text.worked.fabric.rounds[placing.round].number) + ":";
    for (const std::uint32_t after : placing.after) told += " " + std::to_string(after);
  }
  return told;
}

void check_where(std::span<const Told> all) {
  for (const Told& told : all) {
    CAPTURE(told.line);
    CHECK(where(told.line) == told.where);
  }
}

} // namespace

// trade-rules.md, Placing: "n sts apart" = n whole stitches between the two posts, on the lower-numbered
// round; n holes between is n + 1 stitches.
TEST_CASE("how far apart two eyes are is told in many words") {
  const Told all[] = {
      {"pop eyes in btwn rnd 6 n 7, 5 sts btwn", "eye 6: 12 17"},
      {"Insert eyes between the 6th and 7th row, distance 6 stitches.", "eye 6: 12 18"},
      {"Safety eyes on Rnd 8 (6 sts between).", "eye 8: 12 18"},
      {"Fasten safety eyes at rounds 7-8, keeping 6 stitches in between.", "eye 7: 12 18"},
      {"Eye placement: between rounds 7 and 8, six stitches apart.", "eye 7: 12 18"},
      {"Eye position: R7/R8, 6 sts apart.", "eye 7: 12 18"},
      {"The eyes are inserted between rounds 7 and 8, there are 6 stitches between them.", "eye 7: 12 18"},
      {"We fix the eyes between 7 and 8 rows at a distance of 6 sc.", "eye 7: 12 18"},
      {"Glue the eyes on round 8, leave a gap of 6 stitches.", "eye 8: 12 18"},
      {"Put the eyes in the holes of round 8 after stitches 12 and 18.", "eye 8: 12 18"},
      {"Place eyes on the 8th round at the 12th and 18th stitches.", "eye 8: 12 18"},
      {"eyes: 8th rnd, stitches 12 & 18", "eye 8: 12 18"},
      {"Safety eyes are placed between rounds 7 and 8 with an interval of 6 stitches.", "eye 7: 12 18"},
      {"Place the safety eyes between R7-R8 so that there are 6 sts between them.", "eye 7: 12 18"},
      {"Place the safety eyes in between the 7th and 8th rounds with 6 visible sc in between.",
       "eye 7: 12 18"},
      {"Insert 8mm eyes between rnds 7 and 8. Leave 6 stitches between.", "eye 7: 12 18"},
      {"Add eyes (rnd 7-8, 6 sts apart).", "eye 7: 12 18"},
      {"Between round 7 and 8, 6 stitches apart, insert eyes.", "eye 7: 12 18"},
      {"Insert the eyes in Rnd 7, with a 6 sts space between them.", "eye 7: 12 18"},
      {"With black yarn embroider the eyes between rounds 7 and 8, about 6 stitches apart.",
       "embroider 7: 12 18"},
      {"Embroider two eyes between R7 and R8 with 6 stitches in between.", "embroider 7: 12 18"},
      {"Insert safety eyes between rounds 7 and 8, with 5 stitches between them.", "eye 7: 12 17"},
      {"Attach eyes between rounds 7 & 8, leaving 5 visible stitches between.", "eye 7: 12 17"},
      {"Add the eyes between row 7 and row 8 at a distance of 6 stitches.", "eye 7: 12 18"},
      {"Insert the safety eyes into round 8, 6 stitches between.", "eye 8: 12 18"},
      {"Place the eyes between Rnds 7 and 8, 7 sts apart.", "eye 7: 11 18"},
      {"Put 8 mm safety eyes between R7 and R8 with 6 stitches in between.", "eye 7: 12 18"},
      {"Eyes go on round 8, about 6 stitches apart.", "eye 8: 12 18"},
      {"Place eyes at round 7, with 5 st between.", "eye 7: 12 17"},
      {"insert eyes in between rnd 7-8 (5 sts apart)", "eye 7: 12 17"},
      {"Sew on two beads for eyes on Rnd 8, 5 stitches apart.", "bead 8: 12 17"},
      {"Insert the eyes between rounds 7 and 8. There should be 6 stitches between them.", "eye 7: 12 18"},
      {"Safety eyes: between R7 and R8, 6 sts apart", "eye 7: 12 18"},
      {"Eyes: rnd 7/8, 6 sc apart", "eye 7: 12 18"},
      {"Fix the 9mm eyes between the 7th and the 8th round, 6 stitches away from each other.",
       "eye 7: 12 18"},
      {"Place safety eyes between rounds 7 and 8 with a 6 stitch gap.", "eye 7: 12 18"},
      {"Place safety eyes between rounds 7 and 8 with a gap of 6 stitches.", "eye 7: 12 18"},
      {"Now is the time to insert your eyes between Rnd 7 and 8 with six stitches between each eye.",
       "eye 7: 12 18"},
      {"At this point attach safety eyes between R7 & R8 spaced 6 stitches apart.", "eye 7: 12 18"},
      {"Position the eyes between rounds 7 and 8, spaced apart by 6 stitches.", "eye 7: 12 18"},
      {"Insert safety eyes between rounds 7 and 8 with an interspace of 6 stitches.", "eye 7: 12 18"},
      {"Insert safety eyes between rounds 7 and 8 with 6 visible stitches in between.", "eye 7: 12 18"},
      {"Insert safety eyes between rounds 7 and 8 (leave 6 stitches between the eyes).", "eye 7: 12 18"},
      {"Insert safety eyes between rounds 7 and 8, leave 6 sts free between.", "eye 7: 12 18"},
      {"Insert safety eyes between rounds 7 and 8, leaving 6 stitches.", "eye 7: 12 18"},
      {"Insert safety eyes between rounds 7 and 8 separated by 6 stitches.", "eye 7: 12 18"},
      {"Insert safety eyes between rounds 7 and 8 with approximately 6 stitches between them.",
       "eye 7: 12 18"},
      {"Insert the eyes in round 7, 6 spaces apart.", "eye 7: 12 18"},
      {"Insert the eyes in round 7, with 5 holes between them.", "eye 7: 12 18"},
      {"Insert the eyes 6 stitches apart between rounds 7 and 8.", "eye 7: 12 18"},
      {"Keep 6 stitches between the eyes and insert them between round 7 and round 8.", "eye 7: 12 18"},
      {"Sew two buttons between rounds 7 and 8, with 6 stitches between them.", "bead 7: 12 18"},
      {"Sew beads onto round 8, 6 stitches between them.", "bead 8: 12 18"},
      {"Embroider eyes between rounds 7 and 8, with 6 stitches between them.", "embroider 7: 12 18"},
      {"Embroider the cheeks on round 8, leaving 6 stitches between.", "embroider 8: 12 18"},
      {"Sew the felt eyes on between rounds 7 and 8, with 6 sts between them.", "eye 7: 12 18"},
      {"Eyes should be placed between round 7 and round 8; leave 6 stitches in between.", "eye 7: 12 18"},
      {"Between rounds 7 and 8, insert the safety eyes with 6 sc between them.", "eye 7: 12 18"},
      {"Between Rnd 7 and 8 count 6 stitches and fix the eyes.", "eye 7: 12 18"},
      {"(Insert eyes between Rnds 7+8, 6 sts apart)", "eye 7: 12 18"},
      {"*place eyes b/w rounds 7 and 8, 6 sts apart*", "eye 7: 12 18"},
      {"Pop your eyes in between rounds 7 and 8 with 6 stitches gap", "eye 7: 12 18"},
      {"Insert safety eyes. They go between rounds 7 and 8, 6 stitches apart.", "eye 7: 12 18"},
      {"Insert safety eyes.\nPlace them between rounds 7 and 8, 6 stitches apart.", "eye 7: 12 18"},
  };
  check_where(all);
}

TEST_CASE("the stitches that eyes stand behind may be named themselves") {
  const Told all[] = {
      {"Place a safety eye after stitch 12 and after stitch 19 of Rnd 8.", "eye 8: 12 19"},
      {"Insert eyes into the 12th and 18th stitch of round 8.", "eye 8: 12 18"},
      {"Insert eyes after the 12th and the 18th stitch of round 8.", "eye 8: 12 18"},
      {"Place eyes in stitches 12 and 18 of round 8.", "eye 8: 12 18"},
      {"Eyes: R8, sts 12 and 18.", "eye 8: 12 18"},
      {"Place the eyes on round 8, between sts 12 and 13 and between sts 18 and 19.", "eye 8: 12 18"},
      {"Place the eyes on round 8 between st 12 & 13 and st 18 & 19.", "eye 8: 12 18"},
      {"Place the eyes on round 8, between stitches 12-13 and 18-19.", "eye 8: 12 18"},
      {"Place the eyes on round 8 before stitches 13 and 19.", "eye 8: 12 18"},
      {"Place one eye after st 12 of round 8 and the other after st 18.", "eye 8: 12 18"},
  };
  check_where(all);
}

TEST_CASE("one thing in the middle of the front stands between the eyes, or opposite the start") {
  const Told all[] = {
      {"Insert the nose on round 8, centred between the eyes.", "bead 8: 15"},
      {"Sew a button on round 8 in the middle of the face.", "bead 8: 15"},
  };
  check_where(all);
  CHECK(
      where(
          "Insert eyes between rounds 7 and 8, after stitches 8 and 14. Insert the nose in round 9, centred "
          "between the eyes.") == "eye 7: 8 14bead 9: 11");
}

TEST_CASE("where no stitches are told that are understood, the round is known and that is said") {
  for (const char* const line :
       {"Insert the safety eyes on round 8.", "Insert the eyes on round 8, wide apart."}) {
    CAPTURE(line);
    CHECK(where(line) == "eye 8:");
    const Text text("Badger\n\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\nRnds 3-9: sc around (12)\n" +
                    std::string(line) + "\n");
    const auto& findings = text.worked.findings;
    REQUIRE(findings.size() == 1);
    CHECK(findings[0].severity == pattern::Severity::note);
    CHECK(findings[0].message.find("where on round 8 the eyes go") == 0);
  }
}

TEST_CASE("a stitch that the round does not have is an error") {
  CHECK(where("Insert the eyes after stitches 12 and 31 of round 8.").find("there is no stitch 31") == 0);
}

TEST_CASE("what goes into the eyes' place is no word of a list") {
  CHECK(where("Eyes: between Rnds 7 and 8, 6 sts apart. Nose: on Rnd 9, in the middle.") ==
        "eye 7: 12 18bead 9: 15");
}
