#include "text.hpp"

#include <catch2/catch.hpp>

#include <string>
#include <vector>

using namespace whorl;
using test::Text;

TEST_CASE("yarn that is joined between the rounds is joined to the first stitch of the next") {
  const Text text(
      "Moss ring\n\nWith brown yarn\nRnd 1: 6 sc in magic ring (6)\nRnd 2: inc x 6 (12)\nFasten off "
      "brown.\nJoin green yarn in any st.\nRnd 3: sc in each st (12)\nChange to brown.\nRnd 4: sc in each "
      "st (12)\n");
  CHECK(text.said == "");
  const auto& fabric = text.worked.fabric;
  CHECK(fabric.rounds[2].attached);
  CHECK(fabric.stitches[fabric.rounds[2].first_stitch].yarn == 2);
  CHECK_FALSE(fabric.rounds[3].attached);
  CHECK(fabric.stitches[fabric.rounds[3].first_stitch].yarn == 1);
}

TEST_CASE("a line that only names a yarn names no part") {
  const Text text("Moss ring\n\nWith brown yarn\nRnd 1: 6 sc in magic ring (6)\n");
  CHECK(text.worked.fabric.parts[0].name == "");
  CHECK(text.read.tree.yarns == std::vector<std::string>{"brown"});
}

TEST_CASE("parts that are attached bring in no yarn") {
  const Text text(
      "Moss ring\n\nRnd 1: 6 sc in magic ring (6)\nAttach the ears to the head.\nRnd 2: inc x 6 (12)\n");
  CHECK_FALSE(text.last().attached);
}
