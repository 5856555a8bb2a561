#include "pattern/line.hpp"
#include "pattern/read.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace whorl;
using namespace whorl::pattern;

namespace {

std::string shown(const Line& line, const Source& source) {
  const std::string text(source.at(line.span));
  switch (line.kind) {
  case LineKind::title:
    return "title " + text;
  case LineKind::subtitle:
    return "subtitle " + text;
  case LineKind::header:
    return "header " + line.header.name + " = " + line.header.value;
  case LineKind::sentence:
    return "sentence " + text;
  case LineKind::round:
    return "round " + text;
  case LineKind::heading:
    break;
  }
  return "part " + line.heading.name + " x" + std::to_string(line.heading.make) +
         (line.heading.note.empty() ? "" : " (" + line.heading.note + ")");
}

using Lines = std::vector<std::string>;

Lines cut_up(std::string_view text) {
  const Source source(text);
  const auto kinds = stitch::standard_kinds();
  Lines lines;
  for (const Line& line : cut({source, *words::find_vocabulary("en-US"), kinds}).lines)
    lines.push_back(shown(line, source));
  return lines;
}

/// How a line that names a part is taken apart, a round standing below it.
std::string part(std::string_view heading) {
  const Lines lines = cut_up("Forest floor\n\n" + std::string(heading) + "\nRnd 1: 6 sc in MR (6)\n");
  return lines.size() > 1 ? lines[1] : "none";
}

} // namespace

TEST_CASE("a whole pattern is sorted into title, headers, parts, rounds and sentences") {
  CHECK(cut_up("Acorn\n"
               "A small one for the pocket of a gnome.\n"
               "\n"
               "Yarn: brown and green\n"
               "Hook: 2.5 mm\n"
               "\n"
               "Cap\n"
               "Rnd 1: 6 sc in MR (6)\n"
               "Rnd 2: inc x 6 (12)\n"
               "Fasten off, leaving a long tail.\n"
               "\n"
               "Nut (make 2)\n"
               "Rnd 1: 6 sc in MR (6)\n"
               "Stuff firmly.\n") == Lines{"title Acorn", "subtitle A small one for the pocket of a gnome.",
                                           "header Yarn = brown and green", "header Hook = 2.5 mm",
                                           "part Cap x1", "round Rnd 1: 6 sc in MR (6)",
                                           "round Rnd 2: inc x 6 (12)",
                                           "sentence Fasten off, leaving a long tail.", "part Nut x2",
                                           "round Rnd 1: 6 sc in MR (6)", "sentence Stuff firmly."});
}

TEST_CASE("the head of a list is no line of introduction") {
  const Lines lines = cut_up("Moss otter\nMaterials\n- brown yarn\n- 2 mm hook\n\nRnd 1: 6 sc in MR (6)\n");
  CHECK(std::find(lines.begin(), lines.end(), "subtitle Materials") == lines.end());
  CHECK(lines.front() == "title Moss otter");
}

TEST_CASE("the ways to name a part and say how many are read") {
  CHECK(part("Cap") == "part Cap x1");
  CHECK(part("Cap:") == "part Cap x1");
  CHECK(part("CAP (make 2)") == "part CAP x2");
  CHECK(part("Cap – make 2") == "part Cap x2");
  CHECK(part("Cap - make two") == "part Cap x2");
  CHECK(part("Nut: make 2") == "part Nut x2");
  CHECK(part("## Cap") == "part Cap x1");
  CHECK(part("**Cap**") == "part Cap x1");
  CHECK(part("**Cap (x2)**") == "part Cap x2");
  CHECK(part("Cap\n---") == "part Cap x1");
  CHECK(part("Cap\n=====") == "part Cap x1");
  CHECK(part("HEAD AND BODY (in one piece)") == "part HEAD AND BODY x1 (in one piece)");
  CHECK(part("Ears (x2)") == "part Ears x2");
  CHECK(part("Ears (2x)") == "part Ears x2");
  CHECK(part("Ear 2x") == "part Ear x2");
  CHECK(part("Ears x 2") == "part Ears x2");
  CHECK(part("Ears × 2") == "part Ears x2");
  CHECK(part("Left leg") == "part Left leg x1");
  CHECK(part("Leg, from the foot up") == "part Leg x1 (from the foot up)");
}

TEST_CASE("the name of a part may stand above a sentence about it") {
  CHECK(cut_up("Fox\n\nTail\nWorked from the tip.\nRnd 1: 6 sc in MR (6)") ==
        Lines{"title Fox", "part Tail x1", "sentence Worked from the tip.", "round Rnd 1: 6 sc in MR (6)"});
}

TEST_CASE("a heading may say which loops or stitches its first round goes into") {
  const std::string cap = "Hat\n\nRnd 1: 6 sc in MR (6)\nRnd 2: BLO inc x 6 (12)\n\n";
  const Lines lines{"title Hat", "round Rnd 1: 6 sc in MR (6)", "round Rnd 2: BLO inc x 6 (12)"};
  Lines petals = lines, sleeve = lines;
  petals.insert(petals.end(), {"part PETALS x1", "round Rnd 1: 2 dc in each front loop around (12)"});
  CHECK(cut_up(cap + "PETALS: working in the unworked front loops of round 2, join yarn.\n"
                     "Rnd 1: 2 dc in each front loop around (12)") == petals);
  sleeve.insert(sleeve.end(), {"part sleeve x2", "round Rnd 1: 4 sc (4)"});
  CHECK(cut_up(cap + "sleeve x2: join yarn in first of the 4 missed sts of Rnd 2\nRnd 1: 4 sc (4)") ==
        sleeve);
}

TEST_CASE("the first line names a part where it says how many are made or the other parts have one like it") {
  const std::string ear = "\n\nEAR\nRnd 1: 6 sc in MR (6)";
  const std::string round = "round Rnd 1: 6 sc in MR (6)";
  CHECK(cut_up("Wing (make 2)\nRnd 1: 6 sc in MR (6)") == Lines{"part Wing x2", round});
  CHECK(cut_up("WING\nRnd 1: 6 sc in MR (6)" + ear) == Lines{"part WING x1", round, "part EAR x1", round});
  CHECK(cut_up("Owl\nRnd 1: 6 sc in MR (6)" + ear) == Lines{"title Owl", round, "part EAR x1", round});
  CHECK(cut_up("OWL\n\nRnd 1: 6 sc in MR (6)" + ear) == Lines{"title OWL", round, "part EAR x1", round});
}

TEST_CASE("a title alone names no part") {
  CHECK(cut_up("Beetle\n\nRnd 1: 6 sc in MR (6)") == Lines{"title Beetle", "round Rnd 1: 6 sc in MR (6)"});
}

TEST_CASE("a text may begin with its first round") {
  CHECK(cut_up("Rnd 1: 6 sc in MR (6)") == Lines{"round Rnd 1: 6 sc in MR (6)"});
}

TEST_CASE("a list below a header line belongs to it") {
  CHECK(cut_up("Leaf\n\nMaterials:\n- green yarn\n1. 4 mm hook\n\nRnd 1: 6 sc in MR (6)") ==
        Lines{"title Leaf", "header Materials = - green yarn\n1. 4 mm hook", "round Rnd 1: 6 sc in MR (6)"});
}

TEST_CASE("abbreviations with what they mean are no rounds") {
  CHECK(cut_up("Leaf\n\nsc = single crochet\nMR = magic ring\ninc: 2 sc in the same st\n\nRnd 1: 6 sc in MR "
               "(6)") == Lines{"title Leaf", "header sc = single crochet", "header MR = magic ring",
                               "header inc = 2 sc in the same st", "round Rnd 1: 6 sc in MR (6)"});
}

TEST_CASE("a first round without a label is a round") {
  CHECK(cut_up("Acorn\n\nCap\n6 sc in MR (6)\nRnd 2: inc x 6 (12)") ==
        Lines{"title Acorn", "part Cap x1", "round 6 sc in MR (6)", "round Rnd 2: inc x 6 (12)"});
}

TEST_CASE("in a part without labels every line that is work with a count is a round") {
  CHECK(cut_up("Acorn\n\nCap\n6 sc in MR (6)\ninc x 6 (12)\n(sc, inc) x 6 (18)\nFasten off.") ==
        Lines{"title Acorn", "part Cap x1", "round 6 sc in MR (6)", "round inc x 6 (12)",
              "round (sc, inc) x 6 (18)", "sentence Fasten off."});
}

TEST_CASE("a round wrapped over several lines is one round") {
  CHECK(cut_up("Rnd 3: (sc 1,\ninc) x 6 (18)") == Lines{"round Rnd 3: (sc 1,\ninc) x 6 (18)"});
  CHECK(cut_up("Rnd 3: (sc 1, inc) x 6\n(18)") == Lines{"round Rnd 3: (sc 1, inc) x 6\n(18)"});
  CHECK(cut_up("Rnd 3: sc 6, inc,\nsc 6, inc (16)") == Lines{"round Rnd 3: sc 6, inc,\nsc 6, inc (16)"});
  CHECK(cut_up("Rnd 3: sc 6, inc\nsc 6, inc (16)") == Lines{"round Rnd 3: sc 6, inc\nsc 6, inc (16)"});
}

TEST_CASE("the steps below a label of its own are its work") {
  CHECK(cut_up("Round 5:\n- sc 6\n- inc 6 (18)\n\nRound 6: sc around (18)") ==
        Lines{"round Round 5:\n- sc 6\n- inc 6 (18)", "round Round 6: sc around (18)"});
}

TEST_CASE("a sentence below a round does not belong to its work") {
  CHECK(cut_up("Rnd 3: sc around (18)\nStuff the nut.\nRnd 4: sc around (18)") ==
        Lines{"round Rnd 3: sc around (18)", "sentence Stuff the nut.", "round Rnd 4: sc around (18)"});
}

TEST_CASE("a sentence wrapped over lines is one sentence") {
  CHECK(
      cut_up("Rnd 3: sc around (18)\n\nPlace the eyes between rounds 2 and 3,\n8 sts apart.") ==
      Lines{"round Rnd 3: sc around (18)", "sentence Place the eyes between rounds 2 and 3,\n8 sts apart."});
}

TEST_CASE("two rounds in one line are two rounds") {
  CHECK(cut_up("R1: 6 sc in MR (6); R2: inc x 6 (12); R3: (sc, inc) x 6 (18)") ==
        Lines{"round R1: 6 sc in MR (6);", "round R2: inc x 6 (12);", "round R3: (sc, inc) x 6 (18)"});
}

TEST_CASE("a heading inside a piece that is worked on is a sentence and not a new part") {
  CHECK(cut_up("Gnome\n\nHead\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\n\nBody\nRnd 3: sc around (12)") ==
        Lines{"title Gnome", "part Head x1", "round Rnd 1: 6 sc in MR (6)", "round Rnd 2: inc x 6 (12)",
              "sentence Body", "round Rnd 3: sc around (12)"});
}

TEST_CASE("the count at the end of a line is found by its form alone") {
  CHECK(count_at_end("flurb 6 (18)") == 18U);
  CHECK(count_at_end("flurb 6 [18 sts].") == 18U);
  CHECK(count_at_end("flurb 6 = 18") == 18U);
  CHECK(count_at_end("flurb 6") == std::nullopt);
  CHECK(count_at_end("flurb (see below)") == std::nullopt);
}

TEST_CASE("a thing alone on the line above a part's first round is the part's name") {
  for (const std::string name : {"NOSE", "Button", "BELL", "EYES", "Marker"}) {
    const Source source("Vole\n\nBODY\nRnd 1: 6 sc in MR (6)\nFasten off.\n\n" + name +
                        "\nRnd 1: 5 sc in MR (5)\n");
    const Tree tree = read(source, *words::find_vocabulary("en-US")).tree;
    REQUIRE(tree.parts.size() == 2);
    CHECK(tree.parts[1].name == name);
  }
}

namespace {

/// How often the lines above a first row lead to a first row that is worked into a chain: its effect.
std::string first_row_below(const std::string& above) {
  const std::string row = "Row 1: sc in 2nd ch from hook and in each ch across";
  const Source source("Leaf\n\n" + above + "\n" + row + "\n");
  const Read result = read(source, *words::find_vocabulary("en-US"));
  if (result.tree.rounds.size() != 1) return "no row";
  const Effect& effect = result.tree.rounds.front().effect;
  return effect.starts ? "makes " + std::to_string(effect.makes) : "hangs in the air";
}

} // namespace

TEST_CASE("the chain above a first row is found in what else is said there") {
  CHECK(first_row_below("Begin at the lower end with tan, ch 6.") == "makes 5");
  CHECK(first_row_below("Start at the tip. With brown, ch 6.") == "makes 5");
  CHECK(first_row_below("Back and forth here. Ch 6.") == "makes 5");
  CHECK(first_row_below("Ch 6. Do not make it too tight.") == "makes 5");
  CHECK(first_row_below("With A, make a chain of 6.") == "makes 5");
}

TEST_CASE("a note may stand between the chain and the first row") {
  CHECK(first_row_below("Ch 6.\nLeave a long tail.") == "makes 5");
  CHECK(first_row_below("Chain 6\n(The right side is the back.)\n") == "makes 5");
}

TEST_CASE("a line that begins the work above a second round is the first round") {
  const std::string below = "2nd Round. 2 sc in each sc. (14 sc)\n";
  CHECK(cut_up("Acorn\n\nWith brown make a loop and work 7 sc into it.\n" + below)[1] ==
        "round With brown make a loop and work 7 sc into it.");
  CHECK(cut_up("Acorn\n\nWe work 7 sc in each loop.\n" + below)[1] != "round We work 7 sc in each loop.");
}

TEST_CASE("a row of a table without a heading may have blanks behind its marks") {
  CHECK(cut_up("Gnome body\n\n1; blue; 6 sc in magic ring; 6\n2; blue; 6 inc; 12\n") ==
        Lines{"title Gnome body", "round 1; blue; 6 sc in magic ring; 6", "round 2; blue; 6 inc; 12"});
}

TEST_CASE("a number alone is a round where the count behind an equals sign is the same") {
  CHECK(cut_up("Fox\n\n1) MR 6\n2) 6 =6\n")[2] == "round 2) 6 =6");
}

namespace {

/// The round whose free loops a skirt's first round goes into, the body's fourth being worked in back loops.
std::uint32_t skirt_round(const std::string& above, const std::string& first) {
  const Source source(
      "Gnome\n\nBODY\nRnd 1: 6 sc in MR\nRnd 2: inc x 6\nRnd 3: 12 sc\nRnd 4: BLO 12 sc\n\nSKIRT\n" + above +
      "\nRnd 1: " + first + "\n");
  const Tree tree = read(source, *words::find_vocabulary("en-US")).tree;
  for (const Node& node : tree.nodes)
    if (node.kind == NodeKind::work && node.work.act == Act::free_loops) return tree.rounds[node.round].from;
  return 0;
}

} // namespace

TEST_CASE("loops that the line above a first round names are what it goes into") {
  const std::string join =
      "Hold the body upside down. Join yarn with a sl st in the first free front loop of Rnd 2.";
  CHECK(skirt_round(join, "Ch 1 (does not count), 2 sc in each free front loop around.") == 2);
  CHECK(skirt_round("Join red with a slip stitch to any front loop of Rnd 2.", "2 sc in each st around.") ==
        2);
  CHECK(skirt_round("Join yarn in a free front loop of Rnd 2.", "2 sc in each free front loop around.") == 2);
}

TEST_CASE("free loops of which no round is named are those that the last round in other loops left") {
  CHECK(skirt_round("Join yarn in the first free front loop.", "2 sc in each loop around.") == 4);
  CHECK(skirt_round("Hold the piece upside down.", "2 sc in each free front loop around.") == 4);
  CHECK(skirt_round("Hold the piece upside down.", "2 sc in each of the free front loops.") == 4);
}
