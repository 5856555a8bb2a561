#include "command/run.hpp"

#include <catch2/catch.hpp>

namespace {

void fresh() {
  clear();
  write("nut.txt",
        "Beech nut\n\nSizes: small (medium, large)\n\nRnd 1: 6 (7, 8) sc in MR (6 (7, 8))\n"
        "Rnd 2: inc in each st around (12 (14, 15))\n\nLeaf (large only)\nRnd 1: 5 sc in MR (5)\n");
}

bool has(const std::string& text, const std::string& words) { return text.find(words) != std::string::npos; }

} // namespace

TEST_CASE("check looks at every variant and tells of each") {
  fresh();
  const Ran ran = whorl({"check", "nut.txt"});
  CHECK(ran.status == 1);
  CHECK(has(ran.output, "small               12   2 lines of rounds: every count agrees."));
  CHECK(has(ran.output, "medium              14   2 lines of rounds: every count agrees."));
  CHECK(has(ran.output, "large               16   3 lines of rounds: 1 error."));
  CHECK(has(ran.errors, "large: nut.txt:6:31: error: round 2 makes 16 stitches, the pattern says 15"));
}

TEST_CASE("check of one variant reads its own numbers, lines and parts") {
  fresh();
  const Ran ran = whorl({"check", "nut.txt", "--variant", "medium"});
  CHECK(ran.status == 0);
  CHECK(has(ran.output, "14      14      +7"));
  CHECK_FALSE(has(ran.output, "Leaf"));
  CHECK_FALSE(has(ran.output, "Variants"));
}

TEST_CASE("a chart says which variant it shows, and has its parts") {
  fresh();
  CHECK(whorl({"chart", "nut.txt", "-o", "nut.svg", "--variant", "medium"}).status == 0);
  CHECK(has(read("nut.svg"), "medium"));
  CHECK_FALSE(has(read("nut.svg"), "Leaf"));
  CHECK(whorl({"chart", "nut.txt", "-o", "nut.json", "--variant", "medium"}).status == 0);
  CHECK(has(read("nut.json"), "\"variant\": \"medium\""));
}

TEST_CASE("a chart of a variant says its yarn and its hook") {
  clear();
  write("nut.txt", "Beech nut\n\nSizes: small (medium, large)\nYarn: cotton in brown\nHook: 2 (2.5, 3) mm\n\n"
                   "Rnd 1: 6 (7, 8) sc in MR (6 (7, 8))\n");
  CHECK(whorl({"chart", "nut.txt", "-o", "nut.svg", "--variant", "large"}).status == 0);
  CHECK(has(read("nut.svg"), "Yarn: cotton in brown"));
  CHECK(has(read("nut.svg"), "Hook: 3 mm"));
}

TEST_CASE("a variant that the pattern does not have is a wrong call, and those it has are named") {
  fresh();
  for (const std::vector<std::string>& call : {std::vector<std::string>{"check", "nut.txt"},
                                               {"chart", "nut.txt", "-o", "nut.svg"},
                                               {"steps", "nut.txt", "-o", "s"}}) {
    std::vector<std::string> words = call;
    words.insert(words.end(), {"--variant", "huge"});
    const Ran ran = whorl(words);
    CHECK(ran.status == 2);
    CHECK(has(ran.errors, "there is no variant `huge` here; the text has: small, medium, large"));
  }
}
