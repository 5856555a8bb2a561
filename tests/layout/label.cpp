#include "layout/label.hpp"

#include "balls.hpp"

#include <catch2/catch.hpp>

using namespace whorl;
using namespace whorl::layout;

namespace {

std::string text_of(const std::vector<Run>& runs) {
  std::string text;
  for (const Run& run : runs) text += run.text + "|";
  return text;
}

Lettering letter_of(const fabric::Fabric& fabric, std::uint32_t first, std::uint32_t last,
                    std::uint8_t loops = stitch::both, bool inward = false) {
  Ring ring;
  ring.round = first;
  ring.last_round = last;
  return letter(fabric, ring, loops, inward, test::extents_of(fabric), {});
}

} // namespace

TEST_CASE("a label gives number and count") {
  CHECK(text_of(letter_of(test::ball({6, 12}), 1, 1).first) == "2|\u00B7|12|");
}

TEST_CASE("a folded ring's label gives its range and on a second line how many rounds") {
  const Lettering label = letter_of(test::ball({6, 6, 6, 6}), 1, 3);
  CHECK(text_of(label.first) == "2\u20134|\u00B7|6|");
  CHECK(text_of(label.below) == "3 rounds|");
  CHECK(label.second == 0.74);
}

TEST_CASE("a label in back or front loops says so on the side of the feet") {
  const fabric::Fabric fabric = test::ball({6, 6});
  CHECK(text_of(letter_of(fabric, 1, 1, stitch::back).below) == "BLO|");
  CHECK(letter_of(fabric, 1, 1, stitch::back).second == -0.64);
  CHECK(text_of(letter_of(fabric, 1, 1, stitch::front, true).below) == "FLO|");
  CHECK(letter_of(fabric, 1, 1, stitch::front, true).second == 0.64);
}

TEST_CASE("a count that the text states otherwise carries a mark") {
  fabric::Fabric fabric = test::ball({6, 12});
  fabric.rounds[1].stated = 13;
  CHECK(text_of(letter_of(fabric, 1, 1).first) == "2|\u00B7|12 (!)|");
}

TEST_CASE("the second round of one number carries a letter") {
  fabric::Fabric fabric = test::ball({6, 12});
  fabric.rounds[1].number = 41;
  fabric.rounds[1].again = 1;
  CHECK(text_of(letter_of(fabric, 1, 1).first) == "41b|\u00B7|12|");
}

TEST_CASE("runs of a label stand side by side with the dot between") {
  const Lettering label = letter_of(test::ball({6, 12}), 1, 1);
  CHECK(label.first[1].x == Approx(label.first[0].width + 0.14));
  CHECK(label.first[2].x == Approx(label.first[1].x + label.first[1].width + 0.14));
  CHECK(label.width == Approx(label.first[2].x + label.first[2].width));
}

TEST_CASE("a number is filled into words of any language") {
  CHECK(fill_in("{} Runden", 5) == "5 Runden");
  CHECK(fill_in("from figure {}", 12) == "from figure 12");
  CHECK(fill_in("nothing", 1) == "nothing");
}

TEST_CASE("the width of a text counts letters, not bytes") {
  const Extents extents = test::extents_of(test::ball({6}));
  CHECK(text_width(extents, Face::bold, "7\u20139") == Approx(3 * 0.556));
  CHECK(text_width(extents, Face::regular, "\u20AC") == Approx(extents.regular.fallback));
}
