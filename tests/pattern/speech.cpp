#include "pattern/speech.hpp"

#include "told.hpp"

#include <algorithm>
#include <catch2/catch.hpp>

using namespace whorl;
using namespace whorl::pattern;

namespace {

/// The kinds that the last line works, in order: "sc hdc dc".
std::string last_kinds(std::string_view text) {
  const Tree tree = read_text(text).tree;
  if (tree.rounds.empty()) return "no round";
  std::string told;
  const Span last = tree.rounds.back().span;
  for (const Node& node : tree.nodes) {
    if (node.kind != NodeKind::work || node.work.act != Act::stitch) continue;
    if (node.span.begin < last.begin || node.span.end > last.end) continue;
    told += (told.empty() ? "" : " ") + tree.kinds[node.work.kind].name;
    if (node.work.in_one > 1) told += "*" + std::to_string(node.work.in_one);
  }
  return told;
}

std::string complaints(std::string_view text) {
  std::string told;
  for (const Finding& finding : read_text(text).findings)
    if (finding.severity != Severity::note) told += finding.code + ": " + finding.message + "\n";
  return told;
}

const std::string alphabet = "ACORN\nX - single crochet\nV - increase\nA - decrease\n\n";

} // namespace

TEST_CASE("letters are read as the pattern's own list says") {
  CHECK(counts(alphabet + "R1: 6X (6)\nR2: 6V (12)\nR3: (X,V)*6 (18)\nR4: (X, A)*6 (12)") == "6 12 18 12");
}

TEST_CASE("a list makes no part and no complaint") {
  const std::string text = alphabet + "R1: 6X (6)\nR2: 6V (12)";
  CHECK(complaints(text).empty());
  const Tree tree = read_text(text).tree;
  CHECK(tree.title == "ACORN");
  REQUIRE(tree.parts.size() == 1);
  CHECK(tree.parts[0].name.empty());
}

TEST_CASE("a list stands among the headers") {
  const Tree tree = read_text(alphabet + "R1: 6X (6)").tree;
  REQUIRE(tree.headers.size() == 3);
  CHECK(tree.headers[1].name == "V");
  CHECK(tree.headers[1].value == "increase");
}

TEST_CASE("x is sc and times where the capitals differ") {
  CHECK(counts("Owl\nX = sc\nV = inc\n\nR1. 6X (6)\nR2. 6V (12)\nR3. (X, V) x 6 (18)") == "6 12 18");
}

TEST_CASE("small letters are read as their list says") {
  CHECK(counts("Snail\n\nx = sc\nv = inc\na = dec\n\n1r: 5x in mr (5)\n2r: 5v (10)\n3r: (x, v)*5 (15)\n4r: "
               "(x, a)*5 (10)") == "5 10 15 10");
}

TEST_CASE("a list may stand in one line") {
  CHECK(
      counts("Foot\nX: sc / V: inc / A: dec\n\n1. MR 7X (7)\n2. 7V (14)\n3. 7(X,V) (21)\n4. (X,A)*7 (14)") ==
      "7 14 21 14");
  CHECK(counts("Foot\nAbbreviations: sb = single crochet, gr - increase\n\nR1: 6 sb in MR\nR2: 6 gr (12)") ==
        "6 12");
}

TEST_CASE("a list may stand in brackets behind the title") {
  const std::string text =
      "tiny snail body (x=sc v=inc a=dec)\n\nch 2\nr1: 6 sc in 2nd ch from hook (6)\nr2: 6v (12)\nr3: 12x "
      "(12)\nr4: 6a (6)";
  CHECK(counts(text) == "6 12 12 6");
  CHECK(read_text(text).tree.title == "tiny snail body");
}

TEST_CASE("a list may be a table or have bullets") {
  CHECK(counts(
            "Foot\n\nAbbreviations\nsb\tsingle crochet\nplus\tincrease\n\nR1: 6 sb in MR\nR2: 6 plus (12)") ==
        "6 12");
  CHECK(counts("Foot\n\nAbbreviations\n- sb: single crochet\n\xE2\x80\xA2 plus = increase\n\nR1: 6 sb in "
               "MR\nR2: 6 plus") == "6 12");
}

TEST_CASE("three in one place and other stitches have letters too") {
  const std::string list = "Wing\nX = sc\nW = 3 sc in the same stitch\nM = sc3tog\nT = hdc\nF = dc\nS = slip "
                           "stitch\n\nR1. 6X in MR (6)\n";
  CHECK(counts(list + "R2. (X, W) x 3 (12)") == "6 12");
  CHECK(last_kinds(list + "R2. (X, W) x 3 (12)") == "sc sc*3");
  CHECK(last_kinds(list + "R2. 2W, 2T, 2F (10)") == "sc*3 hdc dc");
  CHECK(counts(list + "R2. 2M (2)") == "6 2");
  CHECK(last_kinds(list + "R2. 6S (6)") == "sl st");
}

TEST_CASE("increases and decreases of other stitches have words of their own") {
  const std::string list =
      "Doe\nT = half double crochet\nTV = 2 half double crochet in one stitch\nTA = 2 half double crochet "
      "together\n\nRnd 1: 8T in magic ring (8)\nRnd 2: 8TV (16)\n";
  CHECK(last_kinds(list) == "hdc*2");
  CHECK(last_kinds(list + "Rnd 3: (2T, TA) * 4 (12)") == "hdc hdc2tog");
}

TEST_CASE("dec is invisible where the list says so") {
  const std::string work = "R1: 6 sc in MR (6)\nR2: 3 dec (3)";
  CHECK(last_kinds("Fox\nsc = single crochet\ndec = invisible decrease\n\n" + work) == "invdec");
  CHECK(last_kinds("Fox\nsc = single crochet\ndec = decrease (invisible)\n\n" + work) == "invdec");
  CHECK(last_kinds("Fox\nsc = single crochet\ndec = decrease\n\n" + work) == "sc2tog");
  CHECK(last_kinds("Fox\nsc = single crochet\ndec = single crochet 2 together\n\n" + work) == "sc2tog");
}

TEST_CASE("an increase is what the list says it is") {
  const std::string work = "\n\nR1: 6 sc in MR (6)\nR2: 6 inc";
  CHECK(last_kinds("Fox\ninc = 2 sc in one stitch" + work) == "sc*2");
  CHECK(last_kinds("Fox\ninc = 3 sc in one stitch" + work) == "sc*3");
}

TEST_CASE("a part with its round in one line is no definition") {
  CHECK(counts("Mouse\n\nTAIL: Ch 9, sc in 2nd ch from hook and in each ch across (8)") == "8");
}

TEST_CASE("a colon before stitches is no definition") {
  CHECK(counts("Fox\nR1: 6 sc in MR (6)\nR2: white: 3 sc, red: 3 sc (6)") == "6 6");
}

TEST_CASE("bobbles are of so many legs as the special stitches say") {
  const std::string list =
      "Pine Cone\n\nSPECIAL STITCHES\nBobble (bo): [Yarn over, insert hook, pull up a loop, yarn over, "
      "pull through 2 loops] 4 times in the same stitch, yarn over, pull through all 5 loops.\n\n";
  const Tree tree = read_text(list + "R1: 6 sc in MR (6)\nR2: [bo, 1 sc] x 3 (6)").tree;
  const auto bobble = stitch::find_kind(tree.kinds, "bo");
  REQUIRE(bobble);
  CHECK(stitch::shape_of(tree.kinds[*bobble]).legs == 4);
  CHECK(tree.kinds[*bobble].own);
  CHECK(complaints(list + "R1: 6 sc in MR (6)\nR2: [bo, 1 sc] x 3 (6)").empty());
}

TEST_CASE("a stitch explained within its round is no work") {
  const std::string text =
      "Snout\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\nRnd 3: sc 5, bobble in next st (bobble: 4 dc in "
      "same st, leaving the last loop of each on the hook, yarn over and pull through all loops), sc 6 (12)";
  CHECK(counts(text) == "6 12 12");
  CHECK(last_kinds(text) == "sc bo sc");
  CHECK(complaints(text).empty());
}

TEST_CASE("a bobble has the name that the list gives it, in the terms of the pattern") {
  const std::string text =
      "Caterpillar.\nThis pattern uses British terms.\nMB (make bobble): 4 tr into same st leaving last loop "
      "of each on hook, yrh and draw through all 5 loops.\n\n1st round: 6 dc into a ring (6).\n2nd round: (1 "
      "dc into next dc, MB) 3 times (6).";
  CHECK(last_kinds(text) == "sc bo");
  CHECK(complaints(text).empty());
}

TEST_CASE("rounds of loop stitches count as rounds of sc do") {
  const std::string text =
      "Coat\n\nSPECIAL STITCHES\nLoop stitch (lp st): insert hook, wrap the yarn over your finger, grab both "
      "strands, pull through, yarn over, pull through all loops.\n\nR1: 7 sc in MR (7)\nR2: lp st in each st "
      "around (7)\nR3: [lp st, inc] x 3, 1 sc (10)";
  CHECK(counts(text) == "7 7 10");
  CHECK(complaints(text).empty());
}

TEST_CASE("a stitch with loops left on the hook is told") {
  CHECK(complaints("Ball\nBobble (bo): yo, insert hook, pull up a loop, yo, pull through 2 loops.\n\nR1: 6 "
                   "sc in MR (6)\nR2: 6 bo "
                   "(6)") ==
        "own-stitch: after these moves 2 loops are on the hook; a stitch ends with one. It is read as it "
        "usually is made\n");
}

TEST_CASE("a shell is its stitches in one place") {
  const std::string text =
      "Skirt\nShell = 5 dc in same st\n\nR1: 12 sc in MR (12)\nR2: (shell, sk 1, sc, sk 1) x 3 (18)";
  CHECK(counts(text) == "12 18");
  CHECK(last_kinds(text) == "dc*5 sc");
}

TEST_CASE("a UK pattern works the US stitches one step down") {
  CHECK(last_kinds(
            "Ear\nr1 5dc in mr (5)\nr2 2htr in each (10)\nr3 ss in next, 1dc, 6htr, 1tr, ss in last (10)") ==
        "sl st sc hdc dc sl st");
}

TEST_CASE("what a UK pattern could go on with is said in its terms") {
  CHECK(complaints("UK terms\n\nR1: 6 dc in MR (6)\nR2: 6 5 (12)").find("I can read: dc, miss") !=
        std::string::npos);
}

namespace {

std::string notes(std::string_view text, std::string_view code) {
  std::string told;
  for (const Finding& finding : read_text(text).findings)
    if (finding.code == code) told += finding.message + "\n";
  return told;
}

} // namespace

TEST_CASE("a letter that the list explains as everybody does is no habit to be said") {
  const std::string text =
      "Nut\nAbbreviations\nX = sc\nV = inc\n\nR1: 6X (6)\nR2: 6V (12)\nR3: (X, V)*6 (18)";
  CHECK(counts(text) == "6 12 18");
  CHECK(notes(text, "letters").empty());
}

TEST_CASE("a line with stitches and a count that is no round is not passed over in silence") {
  const std::string text = "Nut\nRnd 1: 6 sc in magic ring (6)\nRnd 2: inc x 6 (12)\n";
  CHECK(notes(text + "Flounce the wugs with sc and frob dc, then gyre (36)\n", "left-out").find("count") !=
        std::string::npos);
  CHECK(notes(text + "Sew the nut to the cup with the tail you left.\n", "left-out").empty());
}

TEST_CASE("letters that nobody explains are found out where most lines work in them, and said") {
  const std::string text =
      "Nut\nR1: 6X (6)\nR2: 6V (12)\nR3: (X, V)*6 (18)\nR4: 2T, F, 15X (18)\nR5: (X, A)*6 (12)";
  CHECK(counts(text) == "6 12 18 18 12");
  CHECK(notes(text, "letters") ==
        "I read `X` as sc, `V` as inc, `A` as dec, `T` as hdc and `F` as dc, as is the habit; a "
        "list in the pattern (`X = sc`) says so\n");
}

TEST_CASE("letters of another alphabet that look alike are read as the letters they look like") {
  CHECK(counts("Nut\nR1: 6\u0425 (6)\nR2: 6V (12)\nR3: (\u0425, \u0410)*4 (8)") == "6 12 8");
}

TEST_CASE("yarns called by letters make no alphabet") {
  CHECK(notes("Nut\nR1: with A, 6 sc in MR (6)\nR2: with A, inc x 6 (12)\nR3: sc around in A (12)", "letters")
            .empty());
}

TEST_CASE("letters that were read as figures are said") {
  CHECK(notes("Nut\nR1: 6 sc in MR (6)\nR2: inc x 6 (l2)", "figure") == "`l2` is read as 12\n");
  CHECK(counts("Nut\nR1: 6 sc in MR (6)\nR2: (l sc, inc) x 3 (9)") == "6 9");
}

TEST_CASE("lines without labels are rounds where the last number is what they make, or they only count") {
  CHECK(counts("mole nose\n\nx = sc v = inc a = dec\nmr 6x\n6v 12\n(x v)*6 18\n18x\n(x a)*6 12") ==
        "6 12 18 18 12");
  CHECK(counts("mole nose\n\nmr 6 sc\n6 inc 12\n(sc inc)*6 18\n18 sc\n(sc dec)*6 12") == "6 12 18 18 12");
}

TEST_CASE("a stitch of several in one place that only the list names is a word of its own") {
  CHECK(counts(
            "X: sc, V: 2 sc in one, Q: 4 sc in one\n\nRobin\n\nR1 6X [6]\nR2 V*6 [12]\nR3 (X, Q)*6 [30]\n") ==
        "6 12 30");
}
