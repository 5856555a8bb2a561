#include "pattern/variant_rounds.hpp"

#include "pattern/read.hpp"
#include "pattern/variants.hpp"

#include <catch2/catch.hpp>

using namespace whorl;
using namespace whorl::pattern;

namespace {

/// How many numbers are still said to be missing before the last round of the first size.
std::size_t missing_in_first(const std::string& text) {
  const std::string chosen = in_variant(text, variants_in(text), 0);
  const Tree tree = read(Source(chosen), *words::find_vocabulary("en-US")).tree;
  REQUIRE_FALSE(tree.rounds.empty());
  Finding missing;
  missing.code = "number";
  missing.span = tree.rounds.back().label_span;
  std::vector<Finding> findings{missing};
  forgive_rounds_of_others(findings, tree, text, chosen);
  return findings.size();
}

const std::string sizes = "Cap\nSizes: S (M, L)\n\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\n";

} // namespace

TEST_CASE("rounds that other sizes work are not missing") {
  CHECK(missing_in_first(sizes +
                         "Size M and L only:\nRnd 3: sc around (12)\nAll sizes:\nRnd 4: sc around\n") == 0);
  CHECK(missing_in_first(sizes + "Rnds 3-5 (3-6, 3-7): sc around\nRnd 8: sc around\n") == 0);
}

TEST_CASE("rounds that no size works are missing") {
  CHECK(missing_in_first(sizes + "Rnd 4: sc around (12, 12, 18)\n") == 1);
  CHECK(missing_in_first(sizes + "Rnds 3-5 (3-6, 3-7): sc around\nRnd 9: sc around\n") == 1);
}
