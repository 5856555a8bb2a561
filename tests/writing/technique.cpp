#include "writing/technique.hpp"

#include "writing/wording.hpp"

#include <catch2/catch.hpp>

using namespace whorl;
using Lines = std::vector<std::string>;

namespace {

const std::string rounds = "Rnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\nRnd 3: (sc, dec) x 4 (8)\n";

std::string text_of(const std::string& line, const std::string& below = "") {
  return "Slug\n\nTerms: US\n" + line + "\n\nBody\n" + below + rounds;
}

std::string last_fact(const std::string& text, const std::string& name) {
  return wording::told(text, name).front().facts.back();
}

} // namespace

TEST_CASE("Yarn under changes how loops are drawn up, and no other move") {
  const Lines under{"Insert the hook into the next stitch.",
                    "Yarn under and draw up a loop: 2 loops on the hook.",
                    "Yarn over and draw through both loops: 1 loop on the hook."};
  CHECK(wording::sentences(text_of("All sc are worked yarn under."), "sc") == under);
  CHECK(wording::sentences(text_of("Use yarn under throughout."), "sc") == under);
  CHECK(wording::sentences(text_of("The increases are worked yarn under."), "sc") != under);
}

TEST_CASE("What is told of increases goes before what is told of their stitch") {
  const Lines moves =
      wording::sentences(text_of("All sc are worked yarn under. Use yarn over for the increases."), "inc");
  REQUIRE(moves.size() == 6);
  CHECK(moves[1] == "Yarn over and draw up a loop: 2 loops on the hook.");
}

TEST_CASE("A hook that goes between the legs says so") {
  CHECK(wording::sentences(text_of("Work the sc into the middle of the V."), "sc").front() ==
        "Insert the hook between the legs of the next stitch.");
}

TEST_CASE("A technique of one part is told beside the moves") {
  CHECK(last_fact(text_of("", "Work yarn under.\n"), "sc") == "Technique: yarn under in Body.");
  CHECK(last_fact(text_of("From round 2 on work tightly."), "sc") ==
        "Technique: worked tightly from round 2 on.");
  CHECK(last_fact(text_of("Worked inside out. Work tightly."), "sc") ==
        "Technique: worked inside out; worked tightly.");
}
