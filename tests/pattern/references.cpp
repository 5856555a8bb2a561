#include "pattern/read.hpp"
#include "pattern/reference.hpp"
#include "told.hpp"

#include <catch2/catch.hpp>

#include <sstream>

using namespace whorl;
using namespace whorl::pattern;

namespace {

const words::Vocabulary& english() { return *words::find_vocabulary("en-US"); }

/// "3-4 x2 | head | back | (18)": the rounds named, the part, how else; "none".
std::string shown(std::string_view line) {
  const auto reference = read_reference(line, 0, english());
  if (!reference) return "none";
  std::ostringstream text;
  if (reference->from != 0) text << reference->from;
  if (reference->to != reference->from) text << "-" << reference->to;
  if (reference->times > 1) text << " x" << reference->times;
  if (!reference->part.empty()) text << (reference->from == 0 ? "of " : " of ") << reference->part;
  if (reference->loops != 0) text << (reference->loops == stitch::back ? " back" : " front");
  if (!reference->stated.empty()) text << " (" << reference->stated.front().count << ")";
  if (!reference->tail.empty()) text << " | " << line.substr(reference->tail.begin, reference->tail.length());
  return text.str();
}

/// The rounds of a text: label, numbers, makes; a `=` where the round is worked as one before.
std::string rounds_of(const std::string& pattern) {
  const Tree tree = read(Source(pattern), english()).tree;
  std::ostringstream text;
  for (const RoundText& round : tree.rounds) {
    text << round.from;
    if (round.to != round.from) text << "-" << round.to;
    const bool refers = round.body != no_node && tree.nodes[round.body].kind == NodeKind::reference;
    if (refers) text << "=" << tree.nodes[round.body].round;
    text << " ";
  }
  return text.str();
}

std::vector<std::string> findings_of(const std::string& pattern) {
  std::vector<std::string> messages;
  for (const Finding& finding : read(Source(pattern), english()).findings)
    if (finding.severity != Severity::note) messages.push_back(finding.message);
  return messages;
}

const std::string head = "Gnome\n\nHEAD\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\nRnd 3: sc around (12)\n";

} // namespace

TEST_CASE("a round is done again") {
  CHECK(shown("Do Round 4 again.") == "4");
  CHECK(shown("work rnd 3 again (18)") == "3 (18)");
}

TEST_CASE("rounds that are named instead of told are known") {
  CHECK(shown("as Rnd 11") == "11");
  CHECK(shown("As 5th round. 18 sts.") == "5 (18)");
  CHECK(shown("repeat Rnd 4 (18)") == "4 (18)");
  CHECK(shown("rep rnds 3 and 4 twice") == "3-4 x2");
  CHECK(shown("repeat rows 5-8") == "5-8");
  CHECK(shown("Same as round 4 (24)") == "4 (24)");
  CHECK(shown("same as round 4 but in BLO (20)") == "4 back (20)");
  CHECK(shown("work as for the head (24)") == "of head (24)");
  CHECK(shown("work as for the head to Rnd 5") == "1-5 of head");
  CHECK(shown("As the first leg.") == "of first leg");
  CHECK(shown("repeat R1-R6 but do not fasten off") == "1-6 | but do not fasten off");
}

TEST_CASE("work that only says repeat or as names no rounds") {
  for (const char* line : {"sc around, as before", "repeat around", "rep from * 5 more times",
                           "(sc, inc) x 6", "Repeat this 6 times in all", "sc in each st as in Rnd 4"}) {
    INFO(line);
    CHECK(shown(line) == "none");
  }
}

TEST_CASE("a part is named by its telling words") {
  CHECK(names_part("the first leg", "FIRST LEG", english()) >
        names_part("the first leg", "Second leg", english()));
  CHECK(names_part("first leg", "Leg 1", english()) > names_part("first leg", "Leg 2", english()));
  CHECK(names_part("the ear", "Ears", english()) > 0);
  CHECK(names_part("the head", "Body", english()) == 0);
}

TEST_CASE("a round told by naming another is worked as that one") {
  CHECK(rounds_of(head + "Rnd 4: as Rnd 3 (12)\n") == "1 2 3 4=2 ");
}

TEST_CASE("several rounds repeated twice are one entry for each round") {
  CHECK(rounds_of(head + "Rnds 4-7: rep rnds 3 and 4 twice\n").find("4-7") != std::string::npos);
  CHECK(rounds_of(
            head +
            "Rnd 4: (4 sc, dec) x 2 (10)\nRnd 5: (4 sc, inc) x 2 (12)\nRnds 6-9: rep rnds 4 and 5 twice\n") ==
        "1 2 3 4 5 6=3 7=4 8=3 9=4 ");
}

TEST_CASE("a part is worked as one before, up to the round that is named") {
  CHECK(rounds_of(head + "\nBODY\nRnds 1-2: work as for the head (12)\nRnd 3: (sc, inc) x 6 (18)\n") ==
        "1 2 3 1=0 2=1 3 ");
  CHECK(rounds_of(head + "\nTAIL\nAs for the head.\n") == "1 2 3 1=0 2=1 3=2 ");
}

TEST_CASE("a count that the round repeated cannot make is seen by the counts, not by the reading") {
  CHECK(findings_of(head + "Rnd 4: as Rnd 3 (12)\n").empty());
}

TEST_CASE("rounds named that are nowhere are told") {
  CHECK(findings_of(head + "Rnd 4: as Rnd 9\n") ==
        std::vector<std::string>{"I do not find the rounds that this line names"});
}

TEST_CASE("a change to a repeated round that is not understood is told") {
  CHECK(findings_of(head + "Rnd 4: as Rnd 3 but 2 dc in the last st\n").size() == 1);
}

TEST_CASE("a part whose numbers run on opens with the edge of the part before") {
  const Tree tree = read(Source(head + "Fasten off.\n\nBODY\nRnd 4: (sc, inc) x 6 (18)\n"), english()).tree;
  REQUIRE(tree.parts.size() == 2);
  const Node& body = tree.nodes[tree.rounds[3].body];
  REQUIRE(body.child != no_node);
  CHECK(tree.nodes[body.child].work.act == Act::part_edge);
  CHECK(tree.nodes[body.child].round == 2);
}

TEST_CASE("a line inside a part that reads as work and belongs to no round is told") {
  CHECK(
      findings_of(head + "Stuff the head.\n\n2 sc, inc, 8 sc, inc\n\nRnd 4: sc around (12)\n") ==
      std::vector<std::string>{"this line reads as work, and no label says of which round; it is left out"});
  CHECK(findings_of(head + "Count your stitches: there are 12 sc.\nRnd 4: sc around (12)\n").empty());
}

TEST_CASE("a round and nothing more stands for that round") {
  CHECK(shown("R4 (15)") == "4 (15)");
  CHECK(shown("= Rnd 3") == "3");
  CHECK(shown("Rnds 3-4 of the head") == "3-4 of head");
  CHECK(shown("Rnd 3 sc") == "none");
}

TEST_CASE("a number of stitches behind a reference is its count") {
  CHECK(shown("As 2nd row. 4 sc.") == "2 (4)");
  CHECK(shown("Same as rnd 3, 10 sc") == "3 (10)");
  CHECK(shown("As 2nd row. 4 eyes.") == "2 | 4 eyes");
}

TEST_CASE("rounds are told by rounds with an equals sign") {
  CHECK(rounds_of(head + "R4 = R3 (12)\nR5=R3\nRnds 6-7 = Rnds 4-5\n") == "1 2 3 4=2 5=2 6=3 7=4 ");
}

TEST_CASE("the rounds right before may be named by their place") {
  for (const char* same : {"repeat the last round", "same as previous rnd", "as above",
                           "rep preceding row (12)", "same", "Ditto (12)", "as for the prior round"})
    CHECK(std::string(same) + ": " + rounds_of(head + "Rnd 4: " + same + "\n") ==
          std::string(same) + ": 1 2 3 4=2 ");
  CHECK(rounds_of(head + "Rnd 4: 12 sc\nRnds 5-6: rep last 2 rnds\n") == "1 2 3 4 5=2 6=3 ");
  CHECK(rounds_of(head + "Repeat the last round twice.\n") == "1 2 3 4=2 5=2 ");
}

TEST_CASE("rounds of another part may be named behind any verb") {
  CHECK(shown("Work Rnds 1-3 of the head") == "1-3 of head");
  CHECK(shown("Make rounds 2 and 3 of leg (12)") == "2-3 of leg (12)");
}

TEST_CASE("a part sewn over rounds of another names none of its own") {
  const auto sewn = [](const std::string& line) {
    const Placing placing = read(Source(head + line + "\n"), english()).tree.placings.back();
    return std::to_string(placing.from) + "-" + std::to_string(placing.to);
  };
  CHECK(sewn("Fasten off, sew over rounds 8-12 of the hat") == "0-0");
  CHECK(sewn("Fasten off, sew over rounds 2-3 of the head") == "2-3");
  CHECK(sewn("Fasten off, sew over rounds 8-12 of the head") == "8-12");
  CHECK(sewn("Fasten off, sew over rounds 8-12") == "8-12");
}

TEST_CASE("how often rounds are repeated may be told with more") {
  CHECK(rounds_of(head + "Rnds 4-5: as the last round, twice more\n") == "1 2 3 4=2 5=2 ");
  CHECK(rounds_of(head + "Repeat the last round 2 more times.\n") == "1 2 3 4=2 5=2 ");
}

TEST_CASE("a dash behind the round that is named leads to the count") {
  CHECK(shown("As rnd 14 - 18 sc") == shown("As rnd 14 (18 sc)"));
}

TEST_CASE("a first part that has no name but the title may be named by it") {
  CHECK(counts("Fox - Arms\n\nRnd 1: 6 sc in MR\nRnd 2: (sc, inc) x 3 (9)\n\nFox - Legs (make 2)\n\n"
               "Rnds 1-2: work as for the arms. 9 sts.\nRnd 3: sc around (9)\n") == "6 9 6 9 9");
}

TEST_CASE("in other languages what says that rounds are repeated may stand behind them") {
  const auto named = [](const char* language, std::string_view line) {
    const auto reference = read_reference(line, 0, *words::find_vocabulary(language));
    return reference ? reference->from - static_cast<int>(reference->back) : 0;
  };
  CHECK(named("tr", "2. sıra gibi.") == 2);
  CHECK(named("tr", "önceki sıra gibi") == -1);
  CHECK(named("ja", "4段目と同じ") == 4);
  CHECK(named("ja", "3段目をくり返す") == 3);
  CHECK(named("zh-Hans", "与第3圈相同") == 3);
  CHECK(named("zh-Hans", "同上") == -1);
}
