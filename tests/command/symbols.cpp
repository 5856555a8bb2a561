#include "command/run.hpp"

#include <catch2/catch.hpp>

namespace {

const std::string leaf = "Leaf\n\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\nRnd 3: BLO sc around (12)\n";

void fresh() {
  clear();
  write("leaf.txt", leaf);
}

bool has(const std::string& text, const std::string& words) { return text.find(words) != std::string::npos; }

} // namespace

TEST_CASE("symbols lists every stitch and mark with its name") {
  const Ran ran = whorl({"symbols"});
  CHECK(ran.status == 0);
  CHECK(ran.errors.empty());
  for (const char* words : {"Stitches\n", "Decreases\n", "bobble", "treble crochet", "magic ring",
                            "direction of work", "fasten off"}) {
    INFO(words);
    CHECK(has(ran.output, words));
  }
}

TEST_CASE("symbols of a pattern are those of its chart and no others") {
  fresh();
  const Ran ran = whorl({"symbols", "leaf.txt"});
  CHECK(ran.status == 0);
  for (const char* words : {"single crochet", "inc", "BLO", "magic ring"}) CHECK(has(ran.output, words));
  for (const char* words : {"bobble", "together", "treble", "gather"}) CHECK_FALSE(has(ran.output, words));
}

TEST_CASE("symbols names the stitches in UK terms where it is asked to") {
  const Ran ran = whorl({"symbols", "--uk"});
  CHECK(has(ran.output, "half treble crochet"));
  CHECK_FALSE(has(ran.output, "half double crochet"));
}

TEST_CASE("symbols draws by the ending of the output") {
  fresh();
  for (const char* name : {"s.svg", "s.png", "s.pdf", "s.json"}) {
    INFO(name);
    CHECK(whorl({"symbols", "-o", name}).status == 0);
    CHECK(exists(name));
  }
  CHECK(has(read("s.svg"), "Decreases"));
}

TEST_CASE("symbols --json prints one object and nothing else") {
  const Ran ran = whorl({"symbols", "--json"});
  CHECK(ran.output.front() == '{');
  CHECK(has(ran.output, "\"key\": \"sc_2\""));
}

TEST_CASE("symbols never writes over the pattern and knows its endings") {
  fresh();
  CHECK(whorl({"symbols", "leaf.txt", "-o", "leaf.txt"}).status == 2);
  CHECK(whorl({"symbols", "-o", "s.gif"}).status == 2);
  CHECK(whorl({"symbols", "leaf.txt", "--uk"}).status == 2);
  CHECK(read("leaf.txt") == leaf);
}

TEST_CASE("chart leaves out the table and the side view where it is asked to") {
  fresh();
  CHECK(whorl({"chart", "leaf.txt", "-o", "with.svg"}).status == 0);
  CHECK(whorl({"chart", "leaf.txt", "-o", "without.svg", "--no-table", "--no-side-view"}).status == 0);
  CHECK(has(read("with.svg"), "as written"));
  CHECK_FALSE(has(read("without.svg"), "as written"));
}
