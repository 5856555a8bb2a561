#include "whorl.hpp"
#include "whorl_paint.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <fstream>
#include <iterator>
#include <map>
#include <set>
#include <string>

using namespace whorl;

namespace {

using Json = nlohmann::json;

Pattern acorn() {
  std::ifstream file(std::string(WHORL_SOURCE_DIR) + "/examples/acorn.txt", std::ios::binary);
  return read(std::string(std::istreambuf_iterator<char>(file), {}));
}

/// A scarf of so many rows for a hedgehog.
Pattern scarf(int rows) {
  std::string text = "Scarf\n\nCh 11\nRow 1: sc in 2nd ch from hook, sc across, turn (10)\n";
  for (int row = 2; row <= rows; ++row)
    text += "Row " + std::to_string(row) + ": ch 1, sc across, turn (10)\n";
  return read(text);
}

/// The rounds that a chart draws, and those that it repeats.
struct Rounds {
  std::set<int> drawn, repeated;
};

Rounds rounds_of(const Chart& chart) {
  const Json json = Json::parse(chart.json());
  std::map<std::string, int> round;
  for (const Json& part : json["parts"])
    for (const Json& stitch : part["stitches"]) round[stitch["id"]] = stitch["round"];
  Rounds rounds;
  for (const Json& figure : json["figures"])
    for (const Json& entry : figure["drawn"]) {
      (entry["echo"] ? rounds.repeated : rounds.drawn).insert(round[entry["stitch"]]);
      for (const Json& other : entry["stands_for"]) rounds.drawn.insert(round[other]);
    }
  return rounds;
}

} // namespace

TEST_CASE("rounds that are asked for are all drawn, and the one before is repeated") {
  ChartOptions options;
  options.parts = {"nut"};
  options.first_round = 8;
  options.last_round = 13;
  const Rounds rounds = rounds_of(acorn().chart(options));
  CHECK(rounds.drawn == std::set<int>{8, 9, 10, 11, 12, 13});
  CHECK(rounds.repeated == std::set<int>{7, 11});
}

TEST_CASE("rows that are asked for begin with the row before, faint, and without the starting chain") {
  ChartOptions options;
  options.first_round = 4;
  options.last_round = 6;
  const Rounds rows = rounds_of(scarf(8).chart(options));
  CHECK(rows.drawn == std::set<int>{4, 5, 6});
  CHECK(rows.repeated == std::set<int>{3});
}

TEST_CASE("the table of chosen rounds has no others") {
  ChartOptions options;
  options.parts = {"CAP"};
  options.first_round = 7;
  const std::string svg = acorn().chart(options).svg();
  CHECK(svg.find(">sc around (36)<") != std::string::npos);
  CHECK(svg.find("inc in each st around") == std::string::npos);
}

TEST_CASE("every figure stands on one sheet of paper of its size") {
  ChartOptions options;
  options.paper = Paper::a4;
  options.stitch = 6;
  const Chart chart = acorn().chart(options);
  REQUIRE(chart.sheets() > 1);
  const Json json = Json::parse(chart.json());
  CHECK(json["sheets"].size() == chart.sheets());
  for (const Json& figure : json["figures"])
    for (const Json& corner : figure["box"]) {
      CHECK(corner[0] >= 0);
      CHECK(corner[1] >= 0);
      const Json& sheet = json["sheets"][figure["sheet"].get<std::size_t>() - 1];
      CHECK(corner[0] <= sheet["width"]);
      CHECK(corner[1] <= sheet["height"]);
    }
}

TEST_CASE("a strip longer than a sheet goes on on another with its last round repeated") {
  std::string text = "Worm\n\nRnd 1: 6 sc in MR (6)\n";
  for (int round = 2; round <= 80; ++round)
    text += "Rnd " + std::to_string(round) + (round % 3 == 0 ? ": BLO" : ":") + " sc around (6)\n";
  ChartOptions options;
  options.paper = Paper::a4;
  const Chart chart = read(text).chart(options);
  CHECK(chart.sheets() > 1);
  CHECK(chart.remarks().empty());
  const Rounds rounds = rounds_of(chart);
  CHECK(rounds.drawn.size() == 80);
  CHECK(rounds.repeated.size() > 1);
}

TEST_CASE("a flat piece longer than a sheet goes on on another with its last row repeated") {
  ChartOptions options;
  options.paper = Paper::letter;
  options.fold = false;
  const Chart chart = scarf(90).chart(options);
  CHECK(chart.sheets() > 1);
  CHECK(chart.remarks().empty());
  const Rounds rows = rounds_of(chart);
  CHECK(rows.drawn.size() == 91); // the starting chain is row 0
  CHECK(rows.repeated.size() > 1);
}

TEST_CASE("a figure wider than the paper is drawn smaller, and that is said") {
  ChartOptions options;
  options.paper = Paper::letter;
  options.stitch = 12;
  const Chart chart = acorn().chart(options);
  for (std::size_t i = 0; i < chart.sheets(); ++i) CHECK(chart.width(i) + chart.height(i) == 215.9 + 279.4);
  REQUIRE(chart.remarks().size() == 1);
  CHECK(chart.remarks()[0].find("a figure would be larger than the paper, so stitches are drawn ") == 0);
}

TEST_CASE(
    "a figure wider than the paper with the smallest stitches is drawn all the same, and that is said") {
  ChartOptions options;
  options.paper = Paper::a4;
  std::string text = "Lily pad\n\nRnd 1: 12 dc in MR (12)\nRnd 2: 2 dc in each st around (24)\n";
  for (int round = 3; round <= 24; ++round)
    text += "Rnd " + std::to_string(round) + ": (" + std::to_string(round - 2) +
            " dc, 2 dc in next st) x 12 (" + std::to_string(12 * round) + ")\n";
  const Chart chart = read(text).chart(options);
  CHECK(chart.svg().find("data-stitch") != std::string::npos);
  CHECK_FALSE(chart.remarks().empty());
}

TEST_CASE("a table longer than a sheet goes on on another") {
  ChartOptions options;
  options.paper = Paper::a4;
  options.stitch = 3;
  options.fold = false;
  std::string text = "Worm\n\nRnd 1: 6 sc in MR (6)\n";
  for (int round = 2; round <= 70; ++round) text += "Rnd " + std::to_string(round) + ": sc around (6)\n";
  const Chart chart = read(text).chart(options);
  for (std::size_t i = 0; i < chart.sheets(); ++i) CHECK(chart.width(i) + chart.height(i) == 210 + 297);
}

TEST_CASE("a chart of a part that is not there has one empty sheet and says why") {
  ChartOptions options;
  options.parts = {"Gills"};
  const Chart chart = acorn().chart(options);
  CHECK(chart.problem().find("Gills") != std::string::npos);
  CHECK(chart.sheets() == 1);
}

TEST_CASE("sheets of paper are the same bytes twice") {
  ChartOptions options;
  options.paper = Paper::a4;
  CHECK(acorn().chart(options).svg() == acorn().chart(options).svg());
}
