#include "pattern/report.hpp"

#include <catch2/catch.hpp>

using namespace whorl::pattern;

namespace {

Finding about(Span span, std::string message) {
  Finding finding;
  finding.span = span;
  finding.message = std::move(message);
  return finding;
}

std::string shown(std::string_view text, Span span) {
  return show(about(span, "too many"), Source(text), "nut.txt");
}

} // namespace

TEST_CASE("a finding shows its place, the line and a caret under the words") {
  CHECK(shown("Nut\nRnd 2: inc x 6 (13)\n", {20, 22}) == "nut.txt:2:17: error: too many\n"
                                                         "    Rnd 2: inc x 6 (13)\n"
                                                         "                    ^~\n");
}

TEST_CASE("a finding about the whole text shows no line") {
  CHECK(shown("", {}) == "nut.txt:1:1: error: too many\n");
}

TEST_CASE("wide characters move the caret by two cells and the column by one") {
  CHECK(shown("細編み sc", {10, 12}) == "nut.txt:1:5: error: too many\n"
                                        "    細編み sc\n"
                                        "           ^~\n");
}

TEST_CASE("a mark that takes no cell does not move the caret") {
  CHECK(shown("u\u0308 sc", {4, 6}) == "nut.txt:1:4: error: too many\n"
                                       "    u\u0308 sc\n"
                                       "      ^~\n");
}

TEST_CASE("a tab is shown as blanks up to the next stop") {
  CHECK(shown("R1\tsc", {3, 5}) == "nut.txt:1:4: error: too many\n"
                                   "    R1      sc\n"
                                   "            ^~\n");
}

TEST_CASE("a byte that is no text is shown as one cell") {
  CHECK(shown("a\xFF sc", {1, 2}) == "nut.txt:1:2: error: too many\n"
                                     "    a\uFFFD sc\n"
                                     "     ^\n");
}

TEST_CASE("a span over several lines is underlined to the end of its first") {
  CHECK(shown("sc 6,\ninc", {3, 9}) == "nut.txt:1:4: error: too many\n"
                                       "    sc 6,\n"
                                       "       ^~\n");
}

TEST_CASE("a long line is shortened on both sides of the caret") {
  std::string text;
  for (int i = 0; i < 200; ++i) text += "sc, ";
  text.replace(400, 2, "XX");
  const std::string before = "sc, sc, sc, sc, sc, sc, sc, sc, sc, sc, ";
  const std::string behind = ", sc, sc, sc, sc, sc, sc, sc, sc, sc, sc, sc, sc, sc, sc, ";
  CHECK(shown(text, {400, 402}) == "nut.txt:1:401: error: too many\n"
                                   "    …" +
                                       before + "XX" + behind + "…\n" + std::string(45, ' ') + "^~\n");
}

TEST_CASE("the mend and the second place stand behind the line") {
  Finding finding = about({5, 7}, "13 is stated, 12 are made");
  finding.severity = Severity::warning;
  finding.mend = "inc (12)";
  finding.remarks.push_back({{9, 12}, "the next round uses 12"});
  CHECK(show(finding, Source("inc (13)\ncap"), "nut.txt") ==
        "nut.txt:1:6: warning: 13 is stated, 12 are made\n"
        "    inc (13)\n"
        "         ^~\n"
        "  mend: inc (12)\n"
        "nut.txt:2:1: see: the next round uses 12\n"
        "    cap\n"
        "    ^~~\n");
}
