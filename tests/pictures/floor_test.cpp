#include "pictures/floor.hpp"

#include "pictures/touching.hpp"
#include "whorl.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace whorl;
using pictures::Shape;

namespace {

/// Drawn on 27 November 2026 by `od -An -N4 -tu4 /dev/urandom`, after the last change of a constant of layout
/// or drawing; whoever changes one draws anew.
constexpr std::uint64_t first_of_a_hundred = 1, first_of_a_thousand = 2316253977, first_of_flaps = 2675232682,
                        first_of_fans = 640902942;

/// Half of the sheets as they come, half with options by chance.
ChartOptions options_by_chance(std::uint64_t seed) {
  ChartOptions options;
  pictures::Dice dice(seed ^ 0x5555);
  if (dice.one_in(2)) return options;
  options.left_handed = dice.one_in(3);
  options.fold = !dice.one_in(3);
  options.strips = !dice.one_in(4);
  options.plus = dice.one_in(3);
  options.stroked = dice.one_in(3);
  if (dice.one_in(4)) options.paper = dice.one_in(2) ? Paper::a4 : Paper::letter;
  options.figures_only = dice.one_in(6);
  if (dice.one_in(6)) options.first_round = dice.between(1, 4), options.last_round = options.first_round + 4;
  return options;
}

/// Looks at the sheets of so many patterns of a form. A few have an eye that does not fit, which is no matter
/// here.
void look_at(Shape shape, std::uint64_t first, std::uint64_t many) {
  for (std::uint64_t seed = first; seed < first + many; ++seed) {
    const std::string text = pictures::pattern_by_chance(shape, seed);
    INFO(pictures::name(shape) << " " << seed << '\n' << text);
    const Pattern pattern = read(text);
    REQUIRE(pattern.can_be_drawn());
    const Chart chart = pattern.chart(options_by_chance(seed));
    for (std::size_t sheet = 0; sheet < chart.sheets(); ++sheet) {
      const auto contacts = pictures::touching_besides_loops(chart.scene(sheet));
      INFO(pictures::show(contacts));
      CHECK(contacts.empty());
    }
  }
}

void look_at_all(std::uint64_t first, std::uint64_t many) {
  for (const Shape shape : pictures::all_shapes) look_at(shape, first, many);
}

} // namespace

TEST_CASE("the same seed gives the same pattern, another another") {
  for (const Shape shape : pictures::all_shapes) {
    CHECK(pictures::pattern_by_chance(shape, 7) == pictures::pattern_by_chance(shape, 7));
    CHECK(pictures::pattern_by_chance(shape, 7) != pictures::pattern_by_chance(shape, 8));
  }
}

TEST_CASE("among patterns by chance is every form of figure, and every kind of stitch and sign") {
  std::string drawn, text;
  for (const Shape shape : pictures::all_shapes)
    for (std::uint64_t seed = 1; seed <= 12; ++seed) {
      text += pictures::pattern_by_chance(shape, seed);
      drawn += read(pictures::pattern_by_chance(shape, seed)).chart().json();
    }
  for (const char* form : {"disc", "disc-inward", "strip", "oval", "rows", "sector"})
    CHECK(drawn.find("\"form\": \"" + std::string(form) + "\"") != std::string::npos);
  for (const char* kind :
       {"ch",  "sl st",  "sc",     "hdc",    "dc", "tr",   "dtr", "trtr", "esc",   "ehdc",    "edc",
        "etr", "sc2tog", "dc3tog", "invdec", "bo", "puff", "pc",  "cl",   "tr4cl", "loop st", "picot"})
    CHECK_THAT(drawn, Catch::Contains("\"kind\": \"" + std::string(kind)));
  for (const char* word : {"FPdc", "BPtr", "BLO", "FLO", "rounds below", "ch-1 sp", "sk 1", "in next st",
                           "eyes", "markers", "beads", "in grey", "free front loops", "join with sl st",
                           "leg 2", "Rnds", "through ear", "Sew the ears"})
    CHECK_THAT(text, Catch::Contains(word));
}

TEST_CASE("most edgings by chance stand along their rows") {
  int edgings = 0, along = 0;
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    const std::string text = pictures::pattern_by_chance(Shape::rows, seed);
    if (text.find("evenly around") == std::string::npos) continue;
    const std::string json = read(text).chart().json();
    std::size_t rows = 0, discs = 0;
    for (std::size_t at = 0; (at = json.find("\"form\": \"rows\"", at)) != std::string::npos; ++at) ++rows;
    for (std::size_t at = 0; (at = json.find("\"form\": \"disc\"", at)) != std::string::npos; ++at) ++discs;
    ++edgings;
    along += rows > 0 && discs == 0 ? 1 : 0;
  }
  INFO(along << " of " << edgings);
  CHECK(edgings > 10);
  CHECK(3 * along > 2 * edgings);
}

TEST_CASE(
    "rows by chance that are begun in loops, on a round or on a chain are read and stand on their owner") {
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    const std::string text = pictures::pattern_by_chance(Shape::flaps, seed);
    INFO(text);
    const Pattern pattern = read(text);
    for (const Finding& finding : pattern.findings()) {
      INFO(finding.message);
      CHECK(finding.severity == Severity::note);
    }
    const std::string json = pattern.chart().json();
    const bool frond = text.find("FROND") != std::string::npos;
    CHECK(json.find(frond ? "\"part\": \"frond\"" : "\"part\": \"flap\"", json.find("\"figures\"")) !=
          std::string::npos);
  }
}

TEST_CASE("nothing touches on a hundred sheets of every form and kind") {
  look_at_all(first_of_a_hundred, 13);
}

TEST_CASE("nothing touches on three hundred sheets of rows begun elsewhere", "[.flaps]") {
  look_at(Shape::flaps, first_of_flaps, 300);
}

TEST_CASE("nothing touches on three hundred sheets of rows that spread from a small start", "[.fans]") {
  look_at(Shape::fans, first_of_fans, 300);
}

TEST_CASE("an eye on a strip that is pulled long keeps off the line that leads on") {
  // the line is cut in pieces to be looked at; on a long strip one led past the eye with both ends far away
  const Chart chart = read(pictures::pattern_by_chance(Shape::tube, 129313462)).chart();
  const auto contacts = pictures::touching_besides_loops(chart.scene());
  INFO(pictures::show(contacts));
  CHECK(contacts.empty());
}

TEST_CASE("nothing touches on a thousand sheets of every form and kind", "[.thousand]") {
  look_at_all(first_of_a_thousand, 125);
}
