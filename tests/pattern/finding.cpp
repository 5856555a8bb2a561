#include "pattern/finding.hpp"

#include <catch2/catch.hpp>

using namespace whorl::pattern;

TEST_CASE("severities have the names that a person reads") {
  CHECK(std::string(name(Severity::error)) == "error");
  CHECK(std::string(name(Severity::warning)) == "warning");
  CHECK(std::string(name(Severity::note)) == "note");
}
