#include "pattern/read.hpp"

#include <catch2/catch.hpp>

#include <string>
#include <vector>

using namespace whorl;
using namespace whorl::pattern;

namespace {

const std::string fox = "Fox\n\n"
                        "Head\nRnd 1: 6 sc in MR (6)\nRnd 2: inc around (12)\nRnds 3-8: sc around (12)\n"
                        "HEAD_END"
                        "Ears (make 2)\nRnd 1: 4 sc in MR (4)\nRnd 2: sc around (4)\nFasten off.\n\n";

/// "Head 6-7": the part and the rounds that a line below the ears (or at the end of the head) is placed in.
std::string placed(const std::string& below_ears, const std::string& below_head = {}) {
  std::string text = fox + below_ears;
  text.replace(text.find("HEAD_END"), 8, below_head.empty() ? "\n" : below_head + "\n\n");
  const Tree tree = read(Source(text), *words::find_vocabulary("en-US")).tree;
  for (const Placing& placing : tree.placings)
    if (placing.what == What::eye || placing.what == What::sew)
      return tree.parts[placing.part].name + " " + std::to_string(placing.from) + "-" +
             std::to_string(placing.to);
  return "none";
}

} // namespace

TEST_CASE("what is put together behind the last part goes on the part that is named") {
  CHECK(placed("Assembly\nSew the ears to the head between rounds 2 and 5.\n") == "Head 2-5");
  CHECK(placed("Insert safety eyes between Rnds 6 and 7 of the head, 3 stitches apart.\n") == "Head 6-7");
}

TEST_CASE("what is put together behind the last part goes on the part that has the rounds") {
  CHECK(placed("Insert safety eyes between rounds 6 and 7.\n") == "Head 6-7");
  CHECK(placed("Sew the mouth with black thread on rounds 7 and 8.\n") == "Head 7-8");
}

TEST_CASE("eyes below the last part whose rounds both have go on the longer one") {
  CHECK(placed("Insert safety eyes between rounds 1 and 2.\n") == "Head 1-2");
}

TEST_CASE("eyes below a part that has the rounds stay on it") {
  CHECK(placed("", "Insert safety eyes between rounds 1 and 2.") == "Head 1-2");
  CHECK(placed("", "Insert safety eyes between rounds 5 and 6.") == "Head 5-6");
}

TEST_CASE("what is sewn to something that is not in the text names no rounds") {
  CHECK(placed("Sew to the hat between rounds 14 and 17.\n") == "Ears 0-0");
}

TEST_CASE("a part here that is sewn to something that is not in the text names no rounds") {
  CHECK(placed("sew the ears between R13 and R16 of the body, 5 sts apart\n") == "Ears 0-0");
}

TEST_CASE("eyes in rounds that no part has keep them, to be told of") {
  CHECK(placed("Insert safety eyes between rounds 16 and 17 of the head.\n") == "Head 16-17");
  CHECK(placed("Insert safety eyes between rounds 16 and 17.\n") == "Ears 16-17");
}

TEST_CASE("what is sewn in a round that no part has, to nothing that is named, names no rounds") {
  CHECK(placed("Flatten and sew to row 13, the ears go on top.\n") == "Ears 0-0");
}

TEST_CASE("what is sewn to a part here in rounds that it has not keeps them, to be told of") {
  CHECK(placed("Sew the ears to the head between rounds 13 and 16.\n") == "Head 13-16");
}
