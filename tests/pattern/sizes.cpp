#include "pattern/sizes.hpp"

#include <catch2/catch.hpp>

using namespace whorl::pattern;

namespace {

std::string first_size(std::string text) {
  blank_sizes(text);
  std::string told;
  for (const char c : text)
    if (c != ' ' || (!told.empty() && told.back() != ' ')) told += c;
  return told;
}

} // namespace

TEST_CASE("of sizes in brackets of their own the first is worked") {
  CHECK(first_size("6 (8) (10) sc in MR (6) (8) (10)") == "6 sc in MR (6) ");
}

TEST_CASE("sizes behind a stated count are no counts") {
  CHECK(first_size("sc around 12 (16) (20) sts") == "sc around 12 sts");
}

TEST_CASE("a count behind how often is no size") {
  CHECK(first_size("(2 sc, inc) x 6 (24) (6 rounds)") == "(2 sc, inc) x 6 (24) (6 rounds)");
}

TEST_CASE("two brackets alone are a count and something else") {
  CHECK(first_size("sc around (12) (18)") == "sc around (12) (18)");
}
