#include "drawing/marks.hpp"

#include "drawing/mark_file.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <fstream>
#include <iterator>

using namespace whorl::drawing;

namespace {

std::string in_svg(const std::string& inside) {
  return R"(<svg xmlns="http://www.w3.org/2000/svg">)" + inside + "</svg>";
}

Mark read_good(const std::string& inside) {
  const MarkReading reading = read_mark("leaf", in_svg(inside));
  REQUIRE(reading.problem == "");
  return reading.mark;
}

std::vector<Point> points_of(const std::string& data) {
  return read_good("<path fill='none' stroke='black' d='" + data + "'/>").pens[0].path.points;
}

std::string problem_of(const std::string& inside) { return read_mark("leaf", in_svg(inside)).problem; }

} // namespace

TEST_CASE("the marks stand sorted by name") {
  const auto& marks = built_in_marks();
  CHECK(std::is_sorted(marks.begin(), marks.end(),
                       [](const Mark& a, const Mark& b) { return a.name < b.name; }));
}

TEST_CASE("every mark says where it is put") {
  for (const Mark& mark : built_in_marks()) {
    INFO(mark.name);
    CHECK(std::any_of(mark.anchors.begin(), mark.anchors.end(), [](const auto& anchor) {
      return anchor.first == "foot" || anchor.first == "middle" || anchor.first == "tip";
    }));
  }
}

TEST_CASE("a mark that is not there is not found") { CHECK(find_mark(built_in_marks(), "acorn") == nullptr); }

TEST_CASE("a mark is the same from its file and built in") {
  for (const Mark& mark : built_in_marks()) {
    INFO(mark.name);
    std::ifstream file(WHORL_SOURCE_DIR "/symbols/" + mark.name + ".svg");
    const std::string text{std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
    CHECK(mark_table({read_mark(mark.name, text).mark}) == mark_table({mark}));
  }
}

TEST_CASE("a hundred units are one W, and y turns upward") {
  CHECK(points_of("M0 0 L50 -100") == std::vector<Point>{{0, 0}, {0.5, 1}});
}

TEST_CASE("small letters of a path count from where it stands") {
  CHECK(points_of("m10 10 10 0h10v-10") == std::vector<Point>{{.1, -.1}, {.2, -.1}, {.3, -.1}, {.3, 0}});
}

TEST_CASE("a smooth curve mirrors the handle before it") {
  CHECK(points_of("M0 0C0 10 10 20 20 20S40 10 40 0")[4] == Point{.3, -.2});
}

TEST_CASE("numbers may stand without blanks between them") {
  CHECK(points_of("M-30-70L.5.5") == std::vector<Point>{{-.3, .7}, {.005, -.005}});
}

TEST_CASE("groups move what is in them, the inner first") {
  const Mark mark = read_good("<g transform='translate(100)'><g transform='scale(2, 1) matrix(0 1 -1 0 0 0)'>"
                              "<path d='M10 0L20 0'/></g></g>");
  CHECK(mark.pens[0].path.points == std::vector<Point>{{1, -.1}, {1, -.2}});
}

TEST_CASE("pens are read from a style as from attributes") {
  const Mark mark = read_good("<path style='fill:none;stroke:#000;stroke-width:8px' d='M0 0L1 0'/>");
  CHECK(mark.pens[0].stroke == 0.08);
}

TEST_CASE("a shape without a line is filled") {
  CHECK(read_good("<path d='M0 0L1 0L0 1Z'/>").pens[0].stroke == 0);
}

TEST_CASE("anchors are the circles of their group") {
  const Mark mark = read_good("<path d='M0 0L1 0'/><g id='anchors'><circle id='top' cx='5' cy='-80'/></g>");
  CHECK(anchor(mark, "top") == Point{.05, .8});
}

TEST_CASE("a mark that holds other shapes than paths is refused in words") {
  CHECK(problem_of("<rect width='3' height='3'/>") == "it holds <rect>; turn it into a path");
}

TEST_CASE("an elliptical arc is refused in words") {
  CHECK(problem_of("<path d='M0 0A5 5 0 0 1 10 0'/>") ==
        "a path is broken or holds elliptical arcs; turn them into curves");
}

TEST_CASE("a transform that turns by an angle is refused in words") {
  CHECK(problem_of("<g transform='rotate(30)'><path d='M0 0L1 0'/></g>") ==
        "its transforms may be translate, scale and matrix only");
}

TEST_CASE("an SVG without a path is refused in words") {
  CHECK(problem_of("<title>leaf</title>") == "it draws nothing");
}

TEST_CASE("what is no SVG is refused in words") {
  CHECK(read_mark("leaf", "acorn").problem == "it is no SVG");
}
