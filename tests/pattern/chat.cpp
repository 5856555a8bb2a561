#include "pattern/read.hpp"

#include <catch2/catch.hpp>

#include <string>

using namespace whorl;
using namespace whorl::pattern;

namespace {

/// What is found in a piece of two rounds whose third is this.
std::string told(const std::string& work) {
  const Source source("Acorn\n\nRnd 1: 6 sc in MR (6)\nRnd 2: inc in each st (12)\nRnd 3: " + work + "\n");
  const auto read_text = read(source, *words::find_vocabulary("en-US"));
  for (const Finding& finding : read_text.findings)
    if (finding.severity != Severity::note) return finding.message;
  const RoundText& round = read_text.tree.rounds.back();
  return round.stated.empty() ? "no count" : std::to_string(round.stated.front().count);
}

} // namespace

TEST_CASE("sentences behind the work that tell of no work are notes") {
  CHECK(told("(sc, inc) x 6. My owl came to look at this bit.") == "no count");
  CHECK(told("(sc, inc) x 6 (18). You gain one stitch each time, which is lovely.") == "18");
}

TEST_CASE("a count that a sentence behind the work states is the round's") {
  CHECK(told("(sc, inc) x 6. It grows nicely. There should be 18 stitches.") == "18");
  CHECK(told("(sc, inc) x 6. You should be left with 18 stitches.") == "18");
}

TEST_CASE("a sentence before the work that tells of none is a note") {
  CHECK(told("We go gently wider here. (sc, inc) x 6 (18)") == "18");
  CHECK(told("We do not want our increases to line up and make a hexagon, so work (sc, inc) x 6 (18)") ==
        "18");
}

TEST_CASE("a sentence that says how the count grows tells of no work") {
  CHECK(told("(sc, inc) x 6. You gain one stitch each time, so you have 18 sts after Round 7.") ==
        "no count");
}
