#include "pattern/dot_leaders.hpp"

#include <catch2/catch.hpp>

using whorl::pattern::rule_dot_leaders;

namespace {

std::string ruled(std::string text) {
  rule_dot_leaders(text);
  return text;
}

} // namespace

TEST_CASE("dots that lead from column to column become a bar, every byte in its place") {
  CHECK(ruled("R1 .... 6 sc .... 6\nR2..... inc x 6 .... 12\n") ==
        "R1 |    6 sc |    6\nR2 |    inc x 6 |    12\n");
  CHECK(ruled("R1 \xE2\x80\xA6\xE2\x80\xA6 6 sc\nR2 ____ inc x 6\n") == "R1 |      6 sc\nR2 |    inc x 6\n");
}

TEST_CASE("dots of a single line, at its end, or of a range lead to nothing") {
  for (const std::string text : {"Wait for it .... done\nRnd 1: 6 sc\n", "and so on ...\nand on ....\n",
                                 "R5...R7: 18 sc\nR8...R9: 18 sc\n"})
    CHECK(ruled(text) == text);
}
