#include "command/run.hpp"

#include <catch2/catch.hpp>

namespace {

const std::string toadstool = "Toadstool\n\nSTEM\n"
                              "Rnd 1: 6 sc in MR (6)\n"
                              "Rnd 2: inc x 6 (12)\n"
                              "Rnd 3: sc around (12)\n"
                              "Rnd 4: sc around (12)\n\n"
                              "CAP\n"
                              "Rnd 1: 7 sc in MR (7)\n"
                              "Rnd 2: inc x 7 (14)\n"
                              "Rnd 3: (sc, inc) x 7 (21)\n"
                              "Rnd 4: (2 sc, inc) x 7 (28)\n"
                              "Rnd 5: (2 sc, dec) x 7 (21)\n"
                              "Rnd 6: (sc, dec) x 7 (14)\n"
                              "Rnd 7: dec x 7 (7)\n\n"
                              "Sew the cap onto the stem.\n";

void fresh() {
  clear();
  write("t.txt", toadstool);
}

/// Draws t.svg with more words; the run.
Ran drawn(std::vector<std::string> words) {
  words.insert(words.begin(), {"chart", "t.txt", "-o", "t.svg"});
  return whorl(words);
}

bool has(const std::string& text, const std::string& words) { return text.find(words) != std::string::npos; }

/// What a run with these words leaves in t.svg.
std::string svg(const std::vector<std::string>& words) {
  fresh();
  const Ran ran = drawn(words);
  INFO(ran.errors);
  CHECK(ran.status == 0);
  return read("t.svg");
}

} // namespace

TEST_CASE("--part draws the part that is named, in whatever letters, and no other") {
  const std::string cap = svg({"--part", "cap"});
  CHECK(has(cap, "id=\"cap-3-1\""));
  CHECK_FALSE(has(cap, "id=\"stem-3-1\""));
}

TEST_CASE("--part may be given again for another part") {
  const std::string both = svg({"--part", "Stem", "--part", "Cap"});
  CHECK(has(both, "id=\"cap-3-1\""));
  CHECK(has(both, "id=\"stem-3-1\""));
}

TEST_CASE("a part that is not there is a wrong call that names those that are") {
  fresh();
  const Ran ran = drawn({"--part", "gills"});
  CHECK(ran.status == 2);
  CHECK(ran.errors == "whorl: the pattern has no part called “gills”. It has: STEM, CAP.\n");
  CHECK_FALSE(exists("t.svg"));
}

TEST_CASE("--rounds draws those rounds and the one before them faint") {
  const std::string some = svg({"--part", "cap", "--rounds", "3-4"});
  CHECK(has(some, "Round 3: 21 stitches"));
  CHECK(has(some, "Round 4: 28 stitches"));
  CHECK(has(some, "Round 2, on which these go on"));
  CHECK_FALSE(has(some, "Round 5: "));
  CHECK_FALSE(has(some, "Round 1"));
}

TEST_CASE("--rounds takes one number, and all from one on") {
  CHECK(has(svg({"--part", "cap", "--rounds", "7"}), "Round 7: 7 stitches"));
  CHECK(has(svg({"--part", "cap", "--rounds", "6-"}), "Round 7: 7 stitches"));
}

TEST_CASE("rounds that are not there are a wrong call that says which are") {
  fresh();
  const Ran ran = drawn({"--rounds", "20-30"});
  CHECK(ran.status == 2);
  CHECK(ran.errors == "whorl: the pattern has no rounds 20–30. It has: STEM: round 1 to round 4; CAP: round "
                      "1 to round 7.\n");
}

TEST_CASE("rounds that are no rounds are a wrong call") {
  fresh();
  for (const char* rounds : {"many", "9-3", "-", "4-5-6", "0"}) {
    INFO(rounds);
    CHECK(drawn({"--rounds", rounds}).status == 2);
  }
}

TEST_CASE("--rings draws the wall of a tube as rings where a strip would be chosen") {
  fresh();
  std::string tube = "Stem\n\nRnd 1: 6 sc in MR (6)\n";
  for (int round = 2; round < 9; ++round)
    tube += "Rnd " + std::to_string(round) + ": " + (round % 2 == 0 ? "" : "BLO ") + "sc around (6)\n";
  write("t.txt", tube);
  CHECK(whorl({"chart", "t.txt", "-o", "strip.json"}).status == 0);
  CHECK(whorl({"chart", "t.txt", "-o", "rings.json", "--rings"}).status == 0);
  CHECK(has(read("strip.json"), "\"form\": \"strip\""));
  CHECK_FALSE(has(read("rings.json"), "\"form\": \"strip\""));
}

TEST_CASE("--stroked draws increases otherwise") { CHECK(svg({"--stroked"}) != svg({})); }

TEST_CASE("--figures leaves nothing on the sheet but the figures") {
  const std::string figures = svg({"--figures"});
  for (const char* words : {">Toadstool</text>", "Fig. 1<", ">Symbols<", "as written", "Sew the cap"}) {
    INFO(words);
    CHECK(has(svg({}), words));
    CHECK_FALSE(has(figures, words));
  }
  CHECK(has(figures, "<title id=\"sheet_title\">Toadstool</title>"));
}

TEST_CASE("--transparent leaves the white out of an SVG") {
  CHECK(has(svg({}), "fill=\"#ffffff\""));
  CHECK_FALSE(has(svg({"--transparent", "--figures"}), "fill=\"#ffffff\""));
}

TEST_CASE("--stitch under 3.8 mm is drawn with a warning") {
  fresh();
  const Ran ran = drawn({"--stitch", "3"});
  CHECK(ran.status == 0);
  CHECK(ran.errors ==
        "whorl: warning: stitches 3.0 mm wide are hard to read on paper; 3.8 mm and more are not\n");
}

TEST_CASE("--paper makes a file a sheet, all of the size that is named") {
  fresh();
  CHECK(drawn({"--paper", "a4", "--stitch", "9"}).status == 0);
  CHECK_FALSE(exists("t.svg"));
  for (const char* name : {"t-1.svg", "t-2.svg"}) {
    INFO(name);
    CHECK(has(read(name), "width=\"210mm\" height=\"297mm\""));
    CHECK(has(read(name), ">Toadstool</text>"));
  }
  CHECK(has(read("t-1.svg"), "sheet 1 of "));
}

TEST_CASE("--paper keeps the name where one sheet is enough") {
  CHECK(has(svg({"--paper", "Letter", "--part", "stem"}), "width=\"215.9mm\" height=\"279.4mm\""));
}

TEST_CASE("--paper of a PDF makes one file of several pages") {
  fresh();
  CHECK(whorl({"chart", "t.txt", "-o", "t.pdf", "--paper", "A4", "--stitch", "9"}).status == 0);
  CHECK(files() == std::vector<std::string>{"t.pdf", "t.txt"});
  CHECK_FALSE(has(read("t.pdf"), "/Count 1 "));
}

TEST_CASE("several sheets do not go to standard output") {
  fresh();
  CHECK(whorl({"chart", "t.txt", "-o", "-", "--paper", "A4", "--stitch", "9"}).status == 2);
  CHECK(whorl({"chart", "t.txt", "-o", "-", "--paper", "A4"}).status == 0);
}

TEST_CASE("a size of paper that is not known is a wrong call") {
  fresh();
  CHECK(drawn({"--paper", "A9"}).status == 2);
}
