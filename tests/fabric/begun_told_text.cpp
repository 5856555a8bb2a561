/// Sentences above a part's first round that say in which free loops it is begun. Common practice, no source.

#include "text.hpp"

#include <catch2/catch.hpp>

#include <string>

using test::Text;

namespace {

Text skirt(const std::string& lines) {
  return Text(
      "Forest gnome\n\nHEAD\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\nRnd 3: in BLO, sc around (12)\n"
      "Rnds 4-6: sc around (12)\n\nSKIRT\n" +
      lines);
}

} // namespace

TEST_CASE("the free loops that a part is begun in are told in many ways") {
  for (const char* line :
       {"Attach new yarn in any leftover front loop of Round 2 of the head and work all the way round.",
        "Start in the remaining loops of Rnd 2.",
        "Find the front loops left over on Rnd 2. Attach the yarn with a slip stitch.",
        "Attach yarn in front loop of first st of Rnd 2.", "Join yarn to the front loop of any st in rnd 2",
        "With the head in front of you, attach yarn to one of the unused front loops of Rnd 2.",
        "Go back to the front loops you left in Rnd 2 and join yarn there.",
        "Insert hook in any of the leftover front loops from Rnd 2 and join with a sl st.",
        "Pull up a loop in a free front loop of Rnd 2."}) {
    INFO(line);
    const Text text = skirt(std::string(line) + "\nRnd 1: sc around (12)\n");
    CHECK(text.said == "");
    CHECK(text.into("skirt", 1, 1) == "head-2-1");
    CHECK(text.into("skirt", 1, 12) == "head-2-12");
  }
}
