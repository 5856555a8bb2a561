#include "whorl.hpp"
#include "whorl_paint.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <fstream>
#include <iterator>
#include <set>
#include <string>

namespace {

using Json = nlohmann::json;

std::string example(const std::string& name) {
  std::ifstream file(std::string(WHORL_SOURCE_DIR) + "/examples/" + name, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

const char* const examples[] = {"acorn", "bear",     "beechnut", "beetle", "bellflower", "fox",
                                "gnome", "hazelnut", "hedgehog", "mouse",  "snail",      "toadstool"};

} // namespace

TEST_CASE("every example is right: no error and no warning") {
  for (const char* name : examples) {
    const whorl::Pattern pattern = whorl::read(example(std::string(name) + ".txt"));
    for (const whorl::Finding& finding : pattern.findings()) {
      INFO(finding.shown);
      CHECK(finding.severity == whorl::Severity::note);
    }
  }
}

TEST_CASE("the steps beside the hazelnut are what is drawn from it") {
  whorl::StepOptions options;
  options.first_round = 2, options.last_round = 4;
  CHECK(whorl::read(example("hazelnut.txt")).steps(options).strip_svg() == example("hazelnut-steps.svg"));
}

TEST_CASE("the SVG beside every example is what is drawn from it") {
  for (const char* name : examples) {
    INFO(name);
    CHECK(whorl::read(example(std::string(name) + ".txt")).chart().svg() ==
          example(std::string(name) + ".svg"));
  }
}

TEST_CASE("the acorn's rounds count as its text says") {
  const whorl::Pattern pattern = whorl::read(example("acorn.txt"));
  std::vector<std::uint32_t> counted;
  for (const whorl::RoundLine& round : pattern.rounds()) counted.push_back(round.counted);
  CHECK(counted ==
        std::vector<std::uint32_t>{6, 12, 18, 24, 30, 30, 24, 18, 12, 6, 6, 12, 18, 24, 30, 36, 36, 36, 30});
}

TEST_CASE("check's object has the fields that programs rely on") {
  const Json json = Json::parse(whorl::read(example("acorn.txt")).check_json());
  CHECK(json["whorl"] == 1);
  CHECK(json["title"] == "Acorn");
  CHECK(json["language"] == "en-US");
  const Json& line = json["lines"][5];
  CHECK(line["part"] == "NUT");
  CHECK(line["from"] == 6);
  CHECK(line["to"] == 11);
  CHECK(line["uses"] == 30);
  CHECK(line["tally"] == Json{{"sc", 30}});
  CHECK(line["stated"] == 30);
}

namespace {

/// Whether a stitch is one of the two chains of a start; the mark in the middle shows them.
bool is_centre(const Json& part, const Json& stitch) {
  std::size_t chains = 0;
  for (const Json& one : part["stitches"]) chains += one["round"] == 0 && one["kind"] == "ch" ? 1 : 0;
  return chains == 2 && stitch["round"] == 0;
}

} // namespace

TEST_CASE("every stitch of the fabric is drawn or stood for, once besides echoes") {
  for (const char* name : examples) {
    const Json json = Json::parse(whorl::read(example(std::string(name) + ".txt")).chart().json());
    std::multiset<std::string> stitches, drawn;
    for (const Json& part : json["parts"])
      for (const Json& stitch : part["stitches"])
        if (!is_centre(part, stitch)) stitches.insert(stitch["id"].get<std::string>());
    for (const Json& figure : json["figures"])
      for (const Json& entry : figure["drawn"]) {
        if (entry["echo"]) continue;
        drawn.insert(entry["stitch"].get<std::string>());
        for (const Json& other : entry["stands_for"]) drawn.insert(other.get<std::string>());
      }
    CHECK(stitches == drawn);
  }
}

TEST_CASE("everything in the chart's object stands on the sheet") {
  const Json json = Json::parse(whorl::read(example("gnome.txt")).chart().json());
  for (const Json& figure : json["figures"])
    for (const Json& entry : figure["drawn"])
      for (const Json& corner : entry["box"]) {
        CHECK(corner[0] >= 0);
        CHECK(corner[0] <= json["width"]);
        CHECK(corner[1] >= 0);
        CHECK(corner[1] <= json["height"]);
      }
}

TEST_CASE("the same text gives the same bytes") {
  const std::string text = example("gnome.txt");
  CHECK(whorl::read(text).chart().svg() == whorl::read(text).chart().svg());
  CHECK(whorl::read(text).chart().json() == whorl::read(text).chart().json());
}

TEST_CASE("a left-handed chart mirrors places and has the same size") {
  whorl::ChartOptions left;
  left.left_handed = true;
  const whorl::Pattern pattern = whorl::read(example("gnome.txt"));
  CHECK(pattern.chart(left).svg() != pattern.chart().svg());
  CHECK(Json::parse(pattern.chart(left).json())["hand"] == "left");
}

TEST_CASE("rows on rounds are drawn: nothing is said to be missing") {
  const whorl::Pattern pattern =
      whorl::read("Wing\n\nBODY\nRnd 1: 6 sc in magic ring (6)\nRnd 2: inc x 6 (12)\n\n"
                  "FLAP\nRnd 1: 6 sc in magic ring (6)\nRow 2: ch 1, turn, 3 sc (3)\n");
  CHECK(pattern.chart().not_drawn().empty());
}

TEST_CASE("the sheet of a pattern in UK terms names its stitches so") {
  const std::string svg =
      whorl::read("Toadstool\n\nTerms: UK\n\nRound 1: 7 dc in MR (7)\nRound 2: 2 dc in each dc around (14)\n")
          .chart()
          .svg();
  CHECK(svg.find(">UK terms<") != std::string::npos);
  CHECK(svg.find("double crochet, however turned") != std::string::npos);
  CHECK(svg.find("single crochet") == std::string::npos);
}

TEST_CASE("making-up at the foot of the sheet is said in whole sentences, each once") {
  const std::string svg =
      whorl::read("Fox\n\nHead\nRnd 1: 6 sc in MR (6)\nRnd 2: inc around (12)\n\n"
                  "Place the muzzle over round 2 of the head and sew in place. Look at it.\n")
          .chart()
          .svg();
  CHECK(svg.find(">Place the muzzle over round 2 of the head and sew in place.<") != std::string::npos);
  CHECK(svg.find("Look at it") == std::string::npos);
}

TEST_CASE("a pale yarn that is not much rarer has no ground, and the others have one") {
  const std::string svg =
      whorl::read("Toadstool\n\nSTEM\nRnd 1: with cream, 6 sc in MR (6)\nRnd 2: inc x 6 (12)\n\n"
                  "CAP\nRnd 1: with russet, 7 sc in MR (7)\nRnd 2: inc x 7 (14)\n")
          .chart()
          .svg();
  CHECK(svg.find(">in yarn 1 (cream)<") == std::string::npos);
  CHECK(svg.find(">in yarn 2 (russet)<") != std::string::npos);
}

TEST_CASE("of several yarns with grounds the pale one has the palest") {
  const std::string svg = example("fox.svg");
  CHECK(svg.find("#eae7e0") != std::string::npos);
  CHECK(svg.find("#c9c5ba") != std::string::npos);
  CHECK(svg.find("#f3dccb") == std::string::npos);
}

TEST_CASE("a caption says from where a figure is seen as the part's note does") {
  const auto svg = [](const std::string& note) {
    return whorl::read("Owl\n\nHEAD\n" + note + "\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\n")
        .chart()
        .svg();
  };
  CHECK(svg("From the crown down").find("seen from the crown") != std::string::npos);
  CHECK(svg("In moss, worked in a spiral from the tip up").find("seen from the tip") != std::string::npos);
  CHECK(svg("Worked from 2 sides.").find("seen from the start") != std::string::npos);
  CHECK(svg("Stuff it, well, from the inside, and then, later, sew it on").find("seen from the start") !=
        std::string::npos);
}

TEST_CASE("a long end of yarn is told where the parts are put together") {
  const std::string svg =
      whorl::read(
          "Vole\n\nTerms: US\n\nEAR (make 2)\nRnd 1: 6 sc in MR (6)\nFasten off, leaving a long tail.\n\n"
          "TAIL\nRnd 1: 5 sc in MR (5)\nFasten off, leaving a long tail.\n\n"
          "HEAD\nRnd 1: 6 sc in MR (6)\nFasten off.\n")
          .chart()
          .svg();
  CHECK(svg.find("EAR, TAIL: Fasten off, leaving a long tail.") != std::string::npos);
  CHECK(svg.find("HEAD: Fasten off") == std::string::npos);
  CHECK(whorl::read(
            "Waldkauz\n\nFLÜGEL\n1. Rd: 6 fM in den FR (6)\nFaden abschneiden und zum Annähen lang lassen.\n")
            .chart()
            .svg()
            .find("FLÜGEL: Faden abschneiden und zum Annähen lang lassen.") != std::string::npos);
}

TEST_CASE("of a line of work only what is said behind it stands under putting together") {
  const std::string svg =
      whorl::read("Hedgehog\n\nTerms: UK\n\nFEET (make 4)\nRnd 1: 5 dc in MR (5)\n"
                  "Rnd 2: dc round, sl st in next st, fasten off leave tail for sewing\n\n"
                  "Sew the feet under the body.\n")
          .chart()
          .svg();
  CHECK(svg.find(">FEET: fasten off leave tail for sewing<") != std::string::npos);
}

TEST_CASE("what is put together says of which part, once, where the sentence does not") {
  const std::string rounds = "\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\n";
  const std::string sheet =
      whorl::read(
          "Moss gnome\n\nBody" + rounds + "\nEars (make 2)" + rounds + "Flatten and sew to the body.\n\nCap" +
          rounds + "Leave a long end and sew to the body.\n\nTail" + rounds +
          "Sew the tail to the body.\n\nPUTTING TOGETHER\nSew the two halves together round the edge.\n")
          .chart()
          .svg();
  const auto times = [&sheet](const std::string& words) {
    std::size_t many = 0;
    for (std::size_t at = sheet.find(words); at != std::string::npos; at = sheet.find(words, at + 1)) ++many;
    return many;
  };
  CHECK(times("Ears: Flatten and sew to the body.") == 1);
  CHECK(times("Cap: Leave a long end and sew to the body.") == 1);
  CHECK(times("Leave a long end") == 1);
  CHECK(times("Tail: Sew") == 0);
  CHECK(times("Sew the two halves together round the edge.") == 1);
}

TEST_CASE("what is put together says of which part in other languages too") {
  const std::string rounds = "\nRd 1: 6 fM in einen Fadenring (6)\nRd 2: jede M verdoppeln (12)\n";
  const std::string sheet = whorl::read("Mooswichtel\n\nKörper" + rounds + "\nOhren (2x)" + rounds +
                                        "Flach drücken und an den Körper nähen.\n\nMütze" + rounds +
                                        "Die Mütze auf den Körper nähen.\n\nZUSAMMENNÄHEN\n"
                                        "Alle Fäden vernähen.\n")
                                .chart()
                                .svg();
  CHECK(sheet.find(">Ohren: Flach drücken und an den Körper nähen.<") != std::string::npos);
  CHECK(sheet.find(">Die Mütze auf den Körper nähen.<") != std::string::npos);
}

TEST_CASE("the line of a round in the table begins behind its label's mark, be it a wide one") {
  const std::string svg = whorl::read("どんぐり\n\n1段目：わの作り目に細編み6目（6目）\n"
                                      "2段目：すべての目に細編み2目ずつ（12目）\n")
                              .chart()
                              .svg();
  CHECK(svg.find(">わの作り目に細編み6目（6目）<") != std::string::npos);
  CHECK(svg.find(">すべての目に細編み2目ずつ（12目）<") != std::string::npos);
}
