#include "told.hpp"

#include <catch2/catch.hpp>

using namespace whorl;
using namespace whorl::pattern;

namespace {

const std::string nut = "acorn charm\n\nnut (sand)\nr1 - 5 sc in mr (5)\nr2 - 5 inc (10)\n";

std::string names_in(const std::string& text) {
  std::string names;
  for (const Part& part : read_text(text).tree.parts) names += (names.empty() ? "" : ", ") + part.name;
  return names;
}

} // namespace

TEST_CASE("a word in small letters between a blank line and a first round names a part") {
  CHECK(names_in(nut + "\nstalk\nch 4, sc in 2nd ch from hook, sc in next 2 (3)\n") == "nut, stalk");
}

TEST_CASE("so do two words") {
  CHECK(names_in(nut + "\nlittle stalk\nch 4, sc in 2nd ch from hook, sc in next 2 (3)\n") ==
        "nut, little stalk");
}

TEST_CASE("a yarn in small letters above a first round names no part") {
  CHECK(names_in("acorn charm\n\nbrown\nr1 - 5 sc in mr (5)\n") == "");
}
