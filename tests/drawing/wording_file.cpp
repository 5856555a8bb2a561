#include "drawing/wording_file.hpp"

#include <catch2/catch.hpp>

using namespace whorl::drawing;

TEST_CASE("Sheet words are read by their ids, blanks at the ends left out") {
  const WordingReading read =
      read_wording("<sheet language=\"en\"><text id=\"figure\"> Fig.\n {1} </text></sheet>");
  CHECK(read.problem.empty());
  CHECK(read.language == "en");
  CHECK(read.wording == Wording{{"figure", "Fig. {1}"}});
}

TEST_CASE("Two texts with one id are a problem") {
  const char* xml = "<sheet language=\"en\"><text id=\"a\">x</text><text id=\"a\">y</text></sheet>";
  CHECK(read_wording(xml).problem == "it has two texts called \"a\"");
}

TEST_CASE("Sheet words without a language are a problem") {
  CHECK(read_wording("<sheet><text id=\"a\">x</text></sheet>").problem == "it names no language");
}

TEST_CASE("What is no list of sheet words is a problem") {
  CHECK(read_wording("<words/>").problem == "it is no list of sheet words");
  CHECK(read_wording("not at all").problem == "it is no list of sheet words");
}

TEST_CASE("The words of a region's language are those of the language") {
  REQUIRE(find_wording("en") != nullptr);
  CHECK(find_wording("en-US") == find_wording("en"));
  CHECK(find_wording("xx") == nullptr);
}

TEST_CASE("A dialect has its own words, and those of its language for all else") {
  REQUIRE(find_wording("en-GB") != nullptr);
  CHECK(find_wording("en-GB")->at("terms-us") == "UK terms");
  CHECK(find_wording("en-GB")->at("figure") == find_wording("en")->at("figure"));
  CHECK(find_wording("en")->count("terms-us@en-GB") == 0);
}
