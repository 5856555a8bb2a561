#include "pattern/source.hpp"

#include <catch2/catch.hpp>

using namespace whorl::pattern;

namespace {

std::vector<std::string> lines_of(std::string_view text) {
  const Source source(text);
  std::vector<std::string> lines;
  for (std::size_t i = 0; i < source.line_count(); ++i) lines.emplace_back(source.at(source.line(i)));
  return lines;
}

using Lines = std::vector<std::string>;

} // namespace

TEST_CASE("lines end with a line feed, a carriage return or both") {
  CHECK(lines_of("acorn\nnut\ncap") == Lines{"acorn", "nut", "cap"});
  CHECK(lines_of("acorn\r\nnut\r\n") == Lines{"acorn", "nut"});
  CHECK(lines_of("acorn\rnut\r\rcap") == Lines{"acorn", "nut", "", "cap"});
}

TEST_CASE("a text without a line end is one line, and so is an empty one") {
  CHECK(lines_of("acorn") == Lines{"acorn"});
  CHECK(lines_of("") == Lines{""});
}

TEST_CASE("a byte order mark is no part of the first line and takes no column") {
  const Source source("\xEF\xBB\xBFnut");
  CHECK(source.at(source.line(0)) == "nut");
  CHECK(source.position(3).column == 1);
}

TEST_CASE("columns are counted in code points from 1") {
  const Source source("Äste\n€ × 2");
  CHECK(source.position(2).column == 2);
  CHECK(source.position(source.line(1).begin + 4).line == 2);
  CHECK(source.position(source.line(1).begin + 4).column == 3);
}

TEST_CASE("the length of a span is its code points") {
  const Source source("= × = 18");
  CHECK(source.length({2, 4}) == 1);
  CHECK(source.length({0, 9}) == 8);
}

TEST_CASE("bytes that are not UTF-8 are told run by run") {
  const Source source("sc \xFF\xFE 6 \xC3( \x80");
  REQUIRE(source.bad_bytes().size() == 3);
  CHECK(source.bad_bytes()[0] == Span{3, 5});
  CHECK(source.bad_bytes()[1] == Span{8, 9});
  CHECK(source.bad_bytes()[2] == Span{11, 12});
}

TEST_CASE("a NUL is no text") {
  const Source source(std::string_view("sc\0\0 6", 6));
  REQUIRE(source.bad_bytes().size() == 1);
  CHECK(source.bad_bytes()[0] == Span{2, 4});
}

TEST_CASE("a place behind the last line end belongs to the last line") {
  const Source source("nut\ncap\n");
  CHECK(source.position(8).line == 2);
}
