#include "pattern/signless.hpp"

#include "told.hpp"

#include <catch2/catch.hpp>
#include <numeric>

using namespace whorl;
using namespace whorl::pattern;

namespace {

std::string complaints(std::string_view text) {
  std::string told;
  for (const Finding& finding : read_text(text).findings)
    if (finding.severity != Severity::note) told += finding.code + ": " + finding.message + "\n";
  return told;
}

/// "x=sc v=inc": the definitions of one line without signs.
std::string told_in(std::string_view line, bool in_list = false) {
  const Source source{std::string(line)};
  std::string told;
  for (const Definition& one : definitions_without_signs(source, {0, static_cast<std::uint32_t>(line.size())},
                                                         in_list, *words::find_vocabulary("en-US")))
    told += (told.empty() ? "" : "; ") + std::string(source.at(one.name)) + "=" +
            std::string(source.at(one.value));
  return told;
}

const std::string rounds = "\nR1: 6X in MR (6)\nR2: 6V (12)\nR3: (X, A)*4 (8)\n";

} // namespace

TEST_CASE("a line of letters and meanings needs no sign between them") {
  CHECK(told_in("X sc, V inc, A dec") == "X=sc; V=inc; A=dec");
  CHECK(told_in("Bear paw. X sc / V inc / Q bobble of 4 dc") == "X=sc; V=inc; Q=bobble of 4 dc");
  CHECK(told_in("X sc, F dc, V 2X in 1, M 3X together") == "X=sc; F=dc; V=2X in 1; M=3X together");
  CHECK(told_in("+ sc; ^ dec; CH chain") == "+=sc; ^=dec; CH=chain");
  CHECK(told_in("o ring \u00B7 x sc \u00B7 v inc") == "o=ring; x=sc; v=inc");
}

TEST_CASE("work and sentences are no list without signs") {
  for (const char* line : {"X, V, X, V", "6X, 6V", "A fox, a gnome", "A leaf", "X 3, V 2, X 3",
                           "Fasten off, stuff, sew", "I like red, a deep one"}) {
    INFO(line);
    CHECK(told_in(line).empty());
  }
}

TEST_CASE("below a list's heading one entry a line is enough, abbreviations too") {
  CHECK(told_in("sc single crochet", true) == "sc=single crochet");
  CHECK(counts("Legend\nX single crochet\nV increase\nA decrease\n" + rounds) == "6 12 8");
}

TEST_CASE("a list without signs stands under the title, behind a heading or at the end") {
  CHECK(counts("Paw\nX sc, V inc, A dec\n" + rounds) == "6 12 8");
  CHECK(counts("Paw. X sc / V inc / A dec" + rounds) == "6 12 8");
  CHECK(counts("Symbols: X sc, V inc (2 sc in 1), A 2X together" + rounds) == "6 12 8");
  CHECK(counts("Paw" + rounds + "\nX sc, V 2X in 1, A 2X together") == "6 12 8");
}

TEST_CASE("letters may mean several in one and several together in the list's own letters") {
  const std::string list = "Seed\nX sc, D dc, V 2X in 1, W 3X in 1, M 3X together, Q bobble of 4 dc\n";
  CHECK(counts(list + "R1: 6X (mr) = 6\nR2: (X, W)*3 = 12\nR3: (D, Q)*6 = 12\nR4: (X, M)*3 = 6") ==
        "6 12 12 6");
}

TEST_CASE("signs may stand for stitches") {
  CHECK(counts("+ = sc; ^ = dec; v = inc\nStem\n1) 6+ in the magic ring\n2) 6v (12)\n3) 4[+, ^] (8)") ==
        "6 12 8");
}

TEST_CASE("small letters need no mark between their entries") {
  CHECK(counts("ear\nx = sc v = inc a = dec\nR1 6x mr (6)\nR2 6v (12)\nR3 (x a)*4 (8)") == "6 12 8");
}

TEST_CASE("a stitch may be explained behind the round that works it") {
  const std::string start = "Cone\nRnd 1: mc, 6 sc (6)\nRnd 2: inc around (12)\n";
  for (const char* line :
       {"Rnd 3: (sc, bo) around (12), bo = bobble of 4 dc",
        "Rnd 3: (sc, bo) around, bo = bobble of 5 dc (12)",
        "Rnd 3: (1 sc, 1 bobble) 6 times. Bobble: 4 dc in the same stitch, closed together. (12)",
        "Rnd 3: (sc, pf) x 6, pf stands for a puff of 3 hdc (12)"}) {
    INFO(line);
    CHECK(counts(start + line) == "6 12 12");
    CHECK(complaints(start + line).empty());
  }
}

TEST_CASE("a sentence may say what an increase or a decrease is") {
  const std::string text =
      "Cone\nRnd 1: mc, 6 sc (6)\nRnd 2: inc in each st. An inc means 2 sc in the same stitch. "
      "(12)\nRnd 3: (1 sc, 1 dec) 4 times. A dec is 2 stitches together. (8)";
  CHECK(counts(text) == "6 12 8");
  CHECK(complaints(text).empty());
}

TEST_CASE("an equals sign in a round is no definition") {
  CHECK(counts("R1: 6 sc in mr = 6 sts\nR2: inc x 6 = 12 sts\nR3: BLO: sc around = 12 sts") == "6 12 12");
}

TEST_CASE("entries without a sign may stand before one that has it") {
  CHECK(counts("Foot\nx sc, v inc, a dec, w = 3 sc in 1 st\nR1: 6x in MR (6)\nR2: (x, v)*3 (9)\nR3: w, 8x "
               "(11)\n") == "6 9 11");
}

TEST_CASE("a definition may stand behind a title") {
  for (const char* title :
       {"BADGER SNOUT (US) dinc = 3 sc in the same st", "Badger snout. dinc = 3 sc in the same st"}) {
    INFO(title);
    CHECK(counts(std::string(title) + "\nR1: 6 sc in MR (6)\nR2: dinc, sc 5 (8)\n") == "6 8");
  }
}

TEST_CASE("a letter may stand for the stitch as a place") {
  CHECK(counts("F = single crochet, M = stitch, MR = magic ring\nR1: 6 F in MR (6)\nR2: 2 F in every M (12)\n"
               "R3: inc in every 2nd M (18)\nR4: F in every M (18)\n") == "6 12 18 18");
}

TEST_CASE("a word for the chain is a place in it too") {
  CHECK(counts("Ear. ms = sc; lk = chain\nRow 1: 5 lk, 1 ms in the 2nd lk and in each lk (4)\nRow 2: 1 lk, 4 "
               "ms (4)\n") == "4 4");
}

TEST_CASE("dots between the entries of a list are no part of the work") {
  CHECK(
      complaints("Fox\no ring \u00B7 x sc \u00B7 v inc\n\n1. o 6x\n2. 6v [12]\n3. 6(1x, v) [18]\n").empty());
}

TEST_CASE("names in another language are a list where three of them are told as stitches") {
  CHECK(counts("Snail eye. fM sc, Zun inc, Abn dec, Km sl st, Lm ch\n\nRd 1 - 6 fM in MR, 1Km, 1Lm (6)\n"
               "Rd 2 - 6 Zun, 1Km, 1Lm (12)\nRd 3 - (3 fM, Zun) x 3, 1Km, 1Lm (15)\n") == "6 12 15");
}

TEST_CASE("colours before stitches are no list of names") {
  CHECK(counts("Snail\nRnd 1: 6 sc in MR (6)\nRnd 2: (black sc, white inc, brown sc) x 2 (8)\n") == "6 8");
}

TEST_CASE("wide marks divide a list as narrow ones do") {
  CHECK(counts("zh-Hans",
               "针法说明：\nX：短针\nB：短针加针\n\nR1：环起6X\nR2：6B（12X）\nR3：（X，B）*6（18X）\n") ==
        "6 12 18");
  CHECK(
      counts("ja", "記号：×＝細編み、V＝増し目、T＝中長編み\n\n1段目：わの中に×6\n2段目：V6\n3段目：T12\n") ==
      "6 12 12");
}
