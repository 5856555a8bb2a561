/// A stitch of the designer's own in one line of the pattern, said as different people say it.

#include "text.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

using namespace whorl;
using test::Text;

namespace {

Text thing(const std::string& line, const std::string& round) {
  return Text("Hedge thing\n\nTerms: US\n" + line +
              "\n\nBODY\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\nRnd 3: " + round + "\n");
}

/// How many legs the stitches of the last round have in all, and how many stitches it makes.
std::pair<std::uint32_t, std::uint32_t> legs_and_tops(const Text& text) {
  std::uint32_t legs = 0;
  for (std::uint32_t i = 0; i < text.last().count; ++i)
    legs +=
        static_cast<std::uint32_t>(fabric::legs_of(text.worked.fabric, text.last().first_stitch + i).size());
  return {legs, text.last().makes};
}

} // namespace

TEST_CASE("three unfinished stitches in one place are one stitch however that is said") {
  for (const char* line : {"Tuft: 3 unfinished dc in the same st, joined together",
                           "Tuft: 3 unfinished dc in the same stitch, closed together",
                           "Tuft = 3 unfinished dc in the same st, joined together",
                           "Tuft -- 3 unfinished dc in the same st, joined together",
                           "Tuft: 3 incomplete dc in same st, yo and pull through all loops",
                           "Tuft: work 3 unfinished dc in the same stitch, then pull through all 4 loops.",
                           "TUFT: 3-dc cluster"}) {
    INFO(line);
    const Text text = thing(line, "(tuft, sc) x 6 (12)");
    CHECK(text.said == "");
    CHECK(legs_and_tops(text) == std::pair(24U, 12U));
  }
}

TEST_CASE("a stitch that does not come down to one loop, or is made of an unknown one, is told") {
  const auto says = [](const char* line, const std::string& words) {
    return thing(line, "(tuft, sc) x 6 (12)").said.find(words) != std::string::npos;
  };
  CHECK(says(
      "Tuft: 3 unfinished tr in the same st",
      "these unfinished stitches leave 4 loops on the hook, and a stitch ends with one: `joined together` "
      "is missing at their end"));
  CHECK(
      says("Tuft: yo, insert hook, pull up a loop, yo, insert hook, pull up a loop, yo, pull through 2 loops",
           "after these moves 4 loops are on the hook, and a stitch ends with one: `yo, pull through all 4 "
           "loops` is missing at their end"));
  CHECK(says("Tuft: 3 unfinished wibble in the same st, joined together",
             "`tuft` is made of `wibble`, and I know no stitch of that name"));
  CHECK(
      says("Tuft = popcorn of 5 wibbles", "`tuft` is made of `wibbles`, and I know no stitch of that name"));
}

TEST_CASE("a standard stitch that a list gives another work is told") {
  const std::string list = "sc: 2 dc in one stitch";
  const whorl::pattern::Source source("Odd thing\n\nTerms: US\n" + list +
                                      "\n\nBODY\nRnd 1: 6 hdc in MR (6)\nRnd 2: sc around (12)\n");
  const auto read = whorl::pattern::read(source, *whorl::words::find_vocabulary("en-US"));
  bool told = false;
  for (const auto& finding : read.findings) told = told || finding.code == "redefined";
  CHECK(told);
}

TEST_CASE("another name for a stitch is that stitch") {
  for (const char* line : {"Bud = bobble", "Bud: bobble", "Bud: same as bobble", "Bud: same as a bobble"}) {
    INFO(line);
    const Text text = thing(line, "(bud, sc) x 6 (12)");
    CHECK(text.said == "");
    CHECK(text.last().makes == 12);
    CHECK(text.last().tallies == 2);
  }
}

TEST_CASE("stitches listed for one place are a group without brackets too") {
  for (const char* line :
       {"Tuft stitch (ts): (sc, ch 1) in the same st", "Tuft stitch (ts): 1 sc, 1 ch in the same st",
        "Tuft (ts): sc and ch 1 in the same stitch"}) {
    INFO(line);
    const Text text = thing(line, "(ts, skip 1) x 6 (6 sc)");
    CHECK(text.said == "");
    CHECK(text.last().spaces + text.last().count >= 12);
  }
}

TEST_CASE("a stitch told move by move needs no list around it") {
  const Text text =
      thing("Thorn: yo, insert hook, pull up a loop, yo, pull through 2 loops, yo, pull through 2 loops",
            "12 thorn (12)");
  CHECK(text.said == "");
  CHECK(text.last().makes == 12);
}

TEST_CASE("a stitch goes into a round further down, with a comma before the number too") {
  for (const char* line :
       {"Deep (dp): sc 1 round down", "Deep: dc, 1 round down", "Deep = spike 1 round down"}) {
    INFO(line);
    const std::string name = line[5] == '(' ? "dp" : "deep";
    const Text text = thing(line, "(" + name + ", sc) x 6 (12)");
    CHECK(text.said == "");
    CHECK(text.into(0).substr(0, 7) == "body-1-");
  }
}

// Common practice, no source
TEST_CASE(
    "a stitch of the pattern's own is named behind a heading, as another name, or by a word for a colour") {
  for (const char* told : {"special stitch: bud (bobble of 4 dc)", "bud = another name for sc",
                           "Bud: short for sc", "Rose = dc, ch 1, dc in same st\nbud = short for sc"}) {
    CAPTURE(told);
    const test::Text text("Hedge bud\n\n" + std::string(told) +
                          "\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\n" +
                          "Rnd 3: (sc, bud in next st) x 6\n");
    CHECK(text.said == "");
    CHECK(text.last().uses == 12);
  }
}

// Common practice, no source
TEST_CASE("moves that are told of a stitch some rounds down make a spike") {
  const test::Text text(
      "Pine ball\n\nLong spike: insert hook 3 rounds below, draw up a long loop, yarn over, pull through "
      "2 loops\n\nBody\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\nRnd 3: sc around (12)\n"
      "Rnd 4: sc around (12)\nRnd 5: (long spike, sc) x 6 (12)\n");
  CHECK(text.said == "");
  CHECK(text.into(0).substr(0, 7) == "body-1-"); // three below the one that it would go into
}

TEST_CASE("other moves than the usual ones of a stitch are noted, the usual ones and no others are not") {
  const auto notes = [](const std::string& line) {
    const test::Text text("Moss ball\n\nSpecial stitches\n" + line +
                          "\n\nRnd 1: 6 sc in MR (6)\nRnd 2: 6 dc (6)\n");
    return std::count_if(text.read.findings.begin(), text.read.findings.end(),
                         [](const pattern::Finding& finding) { return finding.code == "redefined"; });
  };
  CHECK(notes("sc: insert hook, pull up a loop, yo, pull through 1 loop, yo, pull through 2 loops") == 1);
  CHECK(notes("sc: insert hook, pull up a loop, yo, pull through 2 loops") == 0);
  CHECK(notes("dc: yo, insert hook, pull up a loop, (yo, pull through 2 loops) twice") == 0);
}

TEST_CASE("moves that are to be repeated are made again, over the next stitches or in the same") {
  const std::string pass = "yo, insert hook in next st, pull up a loop, yo, pull through 2 loops; ";
  const std::string close = "yo, pull through all 4 loops";
  for (const std::string again : {"repeat from yo over next 2 sts; ", "rep from yo 2 more times; "}) {
    CAPTURE(again);
    const Text text = thing("Star: " + pass + again + close, "star x 4 (4)");
    CHECK(text.said == "");
    CHECK(legs_and_tops(text) == std::pair<std::uint32_t, std::uint32_t>{12, 4});
    CHECK(text.last().uses == 12);
  }
}

TEST_CASE("a bobble or cluster is of as many stitches, and takes as many, as its explanation says") {
  struct Told {
    const char* line;
    const char* round;
    std::uint32_t legs, makes;
  };
  for (
      const Told& told : std::vector<Told>{
          {"Bobble: 3 unfinished dc in the same st, joined together", "(bobble, sc) x 6", 24, 12},
          {"Cluster: 3 unfinished dc over the next 3 sts, joined together", "cluster around", 12, 4},
          {"Cluster (cl): dc3tog over the next 3 sts.", "cl around", 12, 4},
          {"Cluster (cl): work 3 dc together over next 3 sts", "cl around", 12, 4},
          {"Cl = cluster: 3 dc tog in same st", "(cl, sc) x 6", 24, 12},
          {"Puff stitch (puff): yo, insert hook, pull up a loop; repeat 4 more times in same st (11 loops on "
           "hook), yo, pull through all, ch 1",
           "(puff, sc) x 6", 36, 12},
          {"Bobble stitch (bo): (yo, insert hook, yo, pull up loop, yo, pull through 2 loops) 4 times in "
           "same stitch, yo, pull through all 5 loops.",
           "(bo, sc) x 6", 30, 12},
          {"3-dc cluster (dc3cl): *yo, insert hook in same st, yo, pull up a loop, yo, pull through 2 loops; "
           "rep from * twice more, yo and pull through all 4 loops",
           "(dc3cl, sc) x 6", 24, 12},
          {"3dccl: 3 unfinished dc in the same st, joined together", "(3dccl, sc) x 6", 24, 12}}) {
    INFO(told.line);
    const Text text = thing("Special stitches\n" + std::string(told.line), told.round);
    CHECK(text.said == "");
    CHECK(legs_and_tops(text) == std::pair(told.legs, told.makes));
  }
}

TEST_CASE("a long stitch is a spike as deep as its explanation says") {
  for (const char* line : {"lst (long stitch): sc worked into the row below", "lst: sc in the round below",
                           "lst: long sc, insert hook 1 round below",
                           "lst: insert hook 1 round below, pull up a loop, yo, pull through both loops"}) {
    INFO(line);
    const Text text = thing("Special stitches\n" + std::string(line), "(lst, sc) x 6 (12)");
    CHECK(text.said == "");
    CHECK(text.into(0).substr(0, 7) == "body-1-");
  }
}

TEST_CASE("a word that nobody knows is told where it stands for a stitch") {
  for (const char* round : {"*zorp, sc in next st* around", "[sc in next st, zorp] around",
                            "5 sc, zorp in next st, sc in next 6 sts"}) {
    INFO(round);
    CHECK(thing("", round).said.find("`zorp` is not understood here and left out") != std::string::npos);
  }
}

TEST_CASE("an own stitch that goes into several places is worked to its end") {
  const auto curls = [](const std::string& told, const std::string& round) {
    return Text("Fern\n\nTerms: US\nSpecial stitches\n" + told +
                "\n\nBODY\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\nRnd 3: " + round + "\n");
  };
  for (const char* round : {"curl x 6 (12)", "(curl) 6 times (12)", "6 curls (12)"}) {
    INFO(round);
    const Text text = curls("Curl stitch (curl): ch 3, sl st in the same st, sc in next st.", round);
    CHECK(text.said == "");
    CHECK(text.last().uses == 12);
  }
  const Text text = curls("Curl: ch 3, sc in next st.", "curl x 12 (12)");
  CHECK(text.said == "");
  CHECK(text.last().uses == 12);
}

TEST_CASE("an own stitch that goes back along its chain is told of, and a part that does so is a part") {
  const std::string told = "sc, ch 3, sl st in 2nd ch from hook, sc in next ch, sc in same st";
  CHECK(thing("Frond (fr): " + told, "(sc, fr) x 6").said.find("goes back along a chain") !=
        std::string::npos);
  CHECK(thing("Tail: ch 10, sl st in 2nd ch from hook, sc in next 8 ch", "sc around (12)\nSew the tail on.")
            .said == "");
}

TEST_CASE("A name that the language has for loops is the stitch that its line explains") {
  const char* line = GENERATE("bp = bumpy petal: 4 dc in same st, ch 2, sl st in same st",
                              "bp = bumpy petal: (4 dc, ch 2, sl st) in same st",
                              "bp: 4 dc in same st, ch 2, sl st in same st");
  CAPTURE(line);
  const test::Text text("Moss\nTerms: US\n\n" + std::string(line) +
                        "\n\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\nRnd 3: (sc, bp) x 6\n");
  CHECK(text.said == "");
  CHECK(text.last().uses == 12);
  CHECK(text.last().counted == 30);
}

TEST_CASE("A name that the language has otherwise and that nobody can follow is said") {
  const test::Text text(
      "Moss\nTerms: US\n\nbp = bumpy petal\n\nRnd 1: 6 sc in MR (6)\nRnd 2: (bp) x 6 (6)\n");
  CHECK(text.said.find("what `bp` is here is not understood") != std::string::npos);
}
