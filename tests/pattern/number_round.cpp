#include "told.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

namespace {

const std::string start = "Mouse\n\n1. 6 sc in MR (6)\n2. inc x 6 (12)\n";

} // namespace

TEST_CASE("a number behind a label is a whole round of that many stitches") {
  CHECK(counts(start + "3. 12\n4-6. 12\n7. (2, dec) x 3 (9)\n8. 9 (9)\n") == "6 12 12 12 9 9");
  CHECK(counts("Mouse\n\nRnd 1: 6 sc in MR\nRnd 2: 6\nRnd 3: 6.\n") == "6 6 6");
}

TEST_CASE("a number alone may have its loops beside it") {
  for (const char* round : {"BLO 12", "BLO 12 (12)", "in back loops only: 12", "12 BLO", "12 (12)"}) {
    INFO(round);
    CHECK(counts(start + "3. " + round + "\n") == "6 12 12");
  }
}

TEST_CASE("numbers alone stand among increases and decreases where the line states its count") {
  CHECK(counts(start + "3. dec, 10 (11)\n") == "6 12 11");
  CHECK(counts(start + "3. 5, dec, 5 (11)\n") == "6 12 11");
  CHECK(counts(start + "3. inc, 10, inc (14)\n") == "6 12 14");
}

TEST_CASE("a number alone among named stitches lacks one") {
  const auto read = read_text(start + "3. 5 sc, 6, inc (13)\n");
  CHECK(std::any_of(read.findings.begin(), read.findings.end(), [](const whorl::pattern::Finding& found) {
    return found.message == "I do not know what `6` is to do here";
  }));
}
