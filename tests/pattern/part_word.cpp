#include "told.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace whorl;
using namespace whorl::pattern;

namespace {

const std::string branch = "FAWN\n\nBranch\nRnd 1: 4 sc in MR (4)\nRnd 2: sc around (4)\n";
const std::string beam = "\nBeam\nRnd 1: 5 sc in MR (5)\nRnds 2-4: sc around (5)\n";

bool joins(const std::string& text) {
  const Tree tree = read_text(text).tree;
  return std::any_of(tree.nodes.begin(), tree.nodes.end(),
                     [](const Node& node) { return node.work.act == Act::part_edge; });
}

} // namespace

TEST_CASE("two parts that a round goes round by name are joined") {
  CHECK(counts(branch + beam + "Rnd 5: sc 4 around the branch, sc 5 around the beam (9)\n") == "4 4 5 5 9");
  CHECK(joins(branch + beam + "Rnd 5: sc 4 around the branch, sc 5 around the beam (9)\n"));
}

TEST_CASE("a round that goes round one part by name joins nothing") {
  CHECK_FALSE(joins(branch + beam + "Rnd 5: sc 5 around the beam (5)\n"));
}
