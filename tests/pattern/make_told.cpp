#include "pattern/make_told.hpp"
#include "pattern/header.hpp"

#include <catch2/catch.hpp>
#include <string>

using namespace whorl;
using namespace whorl::pattern;

namespace {

std::string heading(std::string_view line, const char* language = "en-US") {
  const Heading told = read_heading(line, *words::find_vocabulary(language));
  return told.name + " x " + std::to_string(told.make) + (told.note.empty() ? "" : " | " + told.note);
}

std::uint32_t alone(std::string_view line) {
  return make_alone(line, *words::find_vocabulary("en-US")).count;
}

} // namespace

TEST_CASE("a heading says in many ways how many are made") {
  CHECK(heading("Wings (make 2)") == "Wings x 2");
  CHECK(heading("Wings (2)") == "Wings x 2");
  CHECK(heading("Wings [2]") == "Wings x 2");
  CHECK(heading("WINGS *2") == "WINGS x 2");
  CHECK(heading("Wings, make 2 each") == "Wings x 2");
  CHECK(heading("Wings (make one pair)") == "Wings x 2");
  CHECK(heading("Wings (make a pair)") == "Wings x 2");
  CHECK(heading("Wings (2 pairs)") == "Wings x 4");
  CHECK(heading("feet (yellow) x2") == "feet x 2 | yellow");
}

TEST_CASE("how many are made may stand before the name") {
  CHECK(heading("Make 2 wings") == "wings x 2");
  CHECK(heading("Two wings") == "wings x 2");
  CHECK(heading("2 wings") == "wings x 2");
}

TEST_CASE("behind how many are made the colour may stand") {
  CHECK(heading("Ears (Make two in pink.)") == "Ears x 2 | in pink");
  CHECK(heading("Wings: make 2 in brown") == "Wings x 2 | in brown");
}

TEST_CASE("pieces are counted in other languages too") {
  CHECK(heading("Füße (4 Stück)", "de") == "Füße x 4");
  CHECK(heading("Flügel (1 Paar)", "de") == "Flügel x 2");
  CHECK(heading("耳（2枚）", "ja") == "耳 x 2");
  CHECK(heading("耳朵（1对）", "zh-Hans") == "耳朵 x 2");
}

TEST_CASE("a number in brackets is no number of pieces behind stitches or where it is large") {
  CHECK(heading("Inc around (12)") == "Inc around x 1 | 12");
  CHECK(heading("Round body (24)") == "Round body x 1 | 24");
}

TEST_CASE("a numbered part has its name behind a dash") {
  CHECK(heading("Part 2 - Wings (make 2)") == "Part 2 - Wings x 2");
  CHECK(heading("Leg 2 - in brown") == "Leg 2 x 1 | in brown");
}

TEST_CASE("a line of its own says how many are made") {
  CHECK(alone("(make 2)") == 2);
  CHECK(alone("Make 2.") == 2);
  CHECK(alone("x2") == 2);
  CHECK(alone("Make 4 (legs).") == 4);
  CHECK(alone("Make 2. These are the eyes.") == 2);
  CHECK(alone("There are 12.") == 0);
  CHECK(alone("Make 2 sc in the ring.") == 0);
  CHECK(alone("Work 6 rounds.") == 0);
}
