#include "pattern/read.hpp"

#include <catch2/catch.hpp>

#include <sstream>

using namespace whorl;
using namespace whorl::pattern;

namespace {

/// The numbers of a text's rounds.
std::string numbers_of(const std::string& pattern) {
  std::ostringstream text;
  for (const RoundText& round : read(Source(pattern), *words::find_vocabulary("en-US")).tree.rounds)
    text << round.from << (round.to == round.from ? "" : "-" + std::to_string(round.to)) << " ";
  return text.str();
}

} // namespace

TEST_CASE("an unknown word with numbers that follow on at the heads of lines is a word for round") {
  CHECK(numbers_of("Snail\n\nVta 1 - 7 sc in MR (7)\nVta 2 - 7 inc (14)\nVta 3 - 14 sc (14)\n") == "1 2 3 ");
  CHECK(numbers_of("Fox\n\nLap 1: 6 sc in MR\nLap 2: 6 inc\nLap 3-5: 12 sc\n") == "1 2 3-5 ");
  CHECK(numbers_of("Bear\n\n1. krs: 6 sc in MR\n2. krs: 6 inc\n3. krs: 12 sc\n") == "1 2 3 ");
  CHECK(numbers_of("Owl\n\nGiro 1: 6 sc in MR\nGiro 2: 6 inc\nGiro 3: 12 sc\n\nGiro 4: 12 sc\n") ==
        "1 2 3 4 ");
}

TEST_CASE("ranges behind a pattern's own word for round may be linked by a short word") {
  const std::string head = "Owl\n\nTour 1 : 6 sc in MR\nTour 2 : 6 inc\n";
  CHECK(numbers_of(head + "Tour 3 \xC3\xA0 6 : 12 sc\nTour 7 : 12 sc\n") == "1 2 3-6 7 ");
  CHECK(numbers_of(head + "Tour 3 et 4 : 12 sc\nTour 5 : 12 sc\n") == "1 2 3-4 5 ");
  CHECK(numbers_of(head + "Tour 3 - Tour 5 - 12 sc\nTour 6 - 12 sc\n") == "1 2 3-5 6 ");
}

TEST_CASE("a list of petals that each begin anew has no word for round") {
  const std::string petals = "Anemone\n\nPetal 1: ch 6, sc in 2nd ch from hook and in each ch across (5)\n"
                             "Petal 2: ch 6, sc in 2nd ch from hook and in each ch across (5)\n"
                             "Petal 3: ch 6, sc in 2nd ch from hook and in each ch across (5)\n";
  CHECK(numbers_of(petals) != "1 2 3 ");
}

TEST_CASE("numbered parts have no word for round where rounds have a known one") {
  CHECK(
      numbers_of("Gnome\n\nLEG 1\nRnd 1: 6 sc in MR\nLEG 2\nRnd 1: 6 sc in MR\nLEG 3\nRnd 1: 6 sc in MR\n") ==
      "1 1 1 ");
}

TEST_CASE("parts with numbers have no word for round where rounds are numbers alone") {
  CHECK(
      numbers_of("Beetle\n\nLeg 1 (left)\n1. 6 sc in MR\n2. 6 sc\n\nLeg 2 (right)\n1. 6 sc in MR\n2. 6 sc\n\n"
                 "Leg 3 (hind)\n1. 6 sc in MR\n2. 6 sc\n") == "1 2 1 2 1 2 ");
}

TEST_CASE("a letter that the pattern's list gives another meaning begins no piece") {
  CHECK(numbers_of("Fox\nml = chain, mc = slip stitch\n\nTour 1 : 6 sc in magic ring, mc (6)\n"
                   "Tour 2 : ml, 6 inc, mc (12)\nTour 3 : ml, 12 sc, mc (12)\n") == "1 2 3 ");
}
