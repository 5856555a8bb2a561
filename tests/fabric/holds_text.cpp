#include "text.hpp"

#include <catch2/catch.hpp>

#include <string>

using namespace whorl;
using test::Text;

namespace {

Text skirt(const std::string& hold) {
  return Text("Moss cap\n\nCAP\nRnd 1: 6 sc in MR (6)\nRnd 2: BLO inc x 6 (12)\n\nSKIRT\n" + hold +
              "\nRnd 1: in the free front loops of Rnd 1 of the cap, sc in each (6)\n");
}

} // namespace

// Trade rules, Loops, holds, parts: common practice, no source
TEST_CASE("a part in free loops runs with its owner's rounds where the owner is held with its start down") {
  for (const char* hold :
       {"Hold the cap with the start down.", "Hold the cap upside down.", "Hold it with the opening up.",
        "A frill.", "With the opening of the cap pointing up, join yarn."}) {
    const Text text = skirt(hold);
    CAPTURE(hold);
    CHECK(text.said == "");
    CHECK(text.into(0) == "cap-1-1");
    CHECK(text.into(1) == "cap-1-2");
  }
}

TEST_CASE("and against them, from the owner's first stitch, where it is held with its start up") {
  for (const char* hold :
       {"Hold the cap with the start up.", "Holding the cap with its magic ring up, join yarn.",
        "The opening of the cap faces you: work against the rounds.",
        "With the opening facing down, join yarn.", "Work in the opposite direction to the rounds."}) {
    const Text text = skirt(hold);
    CAPTURE(hold);
    CHECK(text.said == "");
    CHECK(text.into(0) == "cap-1-1");
    CHECK(text.into(1) == "cap-1-6");
    CHECK(text.into(5) == "cap-1-2");
  }
}
