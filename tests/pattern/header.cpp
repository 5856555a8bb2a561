#include "pattern/header.hpp"

#include <catch2/catch.hpp>

using namespace whorl;
using namespace whorl::pattern;

namespace {

std::string header(std::string_view line) {
  const auto found = read_header(line, {});
  return found ? found->name + " = " + found->value : "none";
}

} // namespace

TEST_CASE("a header line is a name, a colon and a value") {
  CHECK(header("Yarn: brown") == "Yarn = brown");
  CHECK(header("Materials:") == "Materials = ");
  CHECK(header("**Hook:** 2.5 mm") == "Hook = 2.5 mm");
  CHECK(header("Finished size: 5 cm") == "Finished size = 5 cm");
}

TEST_CASE("a definition is a short name, an equals sign and what it means") {
  CHECK(header("sc = single crochet") == "sc = single crochet");
  CHECK(header("sc2tog = two together") == "sc2tog = two together");
}

TEST_CASE("work with its count is no header") {
  CHECK(header("6 sc in MR = 6") == "none");
  CHECK(header("inc around = 12") == "none");
  CHECK(header("inc x 6 = 12") == "none");
}

TEST_CASE("a sentence with a colon far behind is no header") {
  CHECK(header("Now take the brown yarn and do this: sc") == "none");
  CHECK(header("http://forest") == "none");
}

TEST_CASE("the value of a header is found whatever its capitals") {
  const std::vector<Header> headers{{"TERMS", "UK", {}}, {"Yarn", "brown", {}}};
  CHECK(value_of(headers, "terms") == "UK");
  CHECK(value_of(headers, "hook") == "");
}

TEST_CASE("blanks of every kind are taken off a line") {
  CHECK(trim(" \tnut\r\n") == "nut");
  CHECK(trim("\xC2\xA0nut\xE3\x80\x80") == "nut");
  CHECK(trim("  ") == "");
}

TEST_CASE("a sentence is no heading") {
  CHECK(looks_like_heading("Cap"));
  CHECK(looks_like_heading("HEAD AND BODY (in one piece)"));
  CHECK_FALSE(looks_like_heading("Work in back loops."));
  CHECK_FALSE(looks_like_heading("brown yarn"));
  CHECK_FALSE(looks_like_heading("Sew the cap onto the nut with small stitches"));
}

TEST_CASE("marks of bold words inside a title are not part of it") {
  CHECK(without_bold("Toadstool** (from the top)") == "Toadstool (from the top)");
  CHECK(without_bold("Stump __and__ moss") == "Stump and moss");
}

TEST_CASE("a name in square brackets is a heading, with or without more behind it") {
  const words::Vocabulary& english = *words::find_vocabulary("en-US");
  const Heading heading = read_heading("[Big cap] color red", english);
  CHECK(heading.marked);
  CHECK(heading.name == "Big cap");
  CHECK(heading.note == "color red");
  CHECK(!read_heading("[sc inc] x 6", english).marked);
}
