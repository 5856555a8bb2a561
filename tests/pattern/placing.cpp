#include "pattern/reading.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <string>

using namespace whorl;
using namespace whorl::pattern;

namespace {

std::vector<Placing> placings(const std::string& text) {
  return read_placings(text, {0, static_cast<std::uint32_t>(text.size())}, *words::find_vocabulary("en-US"));
}

} // namespace

TEST_CASE("eyes know their rounds and how far they stand apart") {
  const auto all = placings("Insert safety eyes between rounds 10 and 11, 6 sts apart.");
  REQUIRE(all.size() == 1);
  CHECK(all[0].what == What::eye);
  CHECK(all[0].from == 10);
  CHECK(all[0].to == 11);
  CHECK(all[0].apart == 6);
}

TEST_CASE("rounds named one by one are both known") {
  const auto all = placings("Place eyes between Rnd 11 and Rnd 12");
  REQUIRE(all.size() == 1);
  CHECK(all[0].from == 11);
  CHECK(all[0].to == 12);
}

TEST_CASE("fastening off with its tail is one clause") {
  const auto all = placings("Fasten off, leaving a long tail for sewing.");
  REQUIRE(all.size() == 1);
  CHECK(all[0].what == What::cut);
  CHECK_FALSE(all[0].gather);
  CHECK(all[0].text == "Fasten off, leaving a long tail for sewing.");
}

TEST_CASE("closing the last stitches is a cut that gathers") {
  const auto all = placings("Fasten off and weave the tail through the remaining sts, pull tight.");
  REQUIRE(all.size() == 1);
  CHECK(all[0].what == What::cut);
  CHECK(all[0].gather);
}

TEST_CASE("two things in one sentence are two placings") {
  const auto all = placings("Stuff firmly and place a marker. Sew the cap to the nut.");
  REQUIRE(all.size() == 3);
  CHECK(all[0].what == What::stuff);
  CHECK(all[1].what == What::marker);
  CHECK(all[2].what == What::sew);
}

TEST_CASE("a line that places nothing is one note with its text") {
  const auto all = placings("The moss under the oak is soft. Nobody knows why.");
  REQUIRE(all.size() == 1);
  CHECK(all[0].what == What::note);
  CHECK(all[0].text == "The moss under the oak is soft. Nobody knows why.");
}

TEST_CASE("joining yarn is no join of a round") {
  const auto all = placings("Join yarn in the free front loops of Rnd 8.");
  REQUIRE(all.size() == 1);
  CHECK(all[0].what == What::join);
  CHECK(all[0].from == 8);
}

TEST_CASE("embroidery is told by the holes that it goes between") {
  struct Case {
    const char* text;
    int from, to;
    std::uint32_t apart;
    bool across;
  };
  for (const Case& one : {Case{"Embroider the nose between Rnds 8 and 9, over 4 sts.", 8, 9, 4, true},
                          Case{"Embroider a mouth over the middle 6 sts of Rnd 10.", 10, 10, 6, true},
                          Case{"Embroider a nose on Rnd 7, 4 sts wide", 7, 7, 4, true},
                          Case{"Embroider the eyes on Rnd 7, 6 sts apart.", 7, 7, 6, false},
                          Case{"Embroider the nose with brown yarn over R1 and R2.", 1, 2, 0, false},
                          Case{"Embroider 5 or 6 white dots.", 0, 0, 0, false}}) {
    INFO(one.text);
    const auto all = placings(one.text);
    REQUIRE(all.size() == 1);
    CHECK(all[0].what == What::embroider);
    CHECK(all[0].from == one.from);
    CHECK(all[0].to == one.to);
    CHECK(all[0].apart == one.apart);
    CHECK(all[0].across == one.across);
  }
}

TEST_CASE("the loops through which the last stitches are gathered are heard") {
  struct Case {
    const char* text;
    std::uint8_t loops;
  };
  for (const Case& one :
       {Case{"Fasten off, weave the tail through the front loops of the last 6 sts and pull tight.",
             stitch::front},
        Case{"Close the hole through the back loops only.", stitch::back},
        Case{"Gather the last 6 sts through both loops, fasten off.", stitch::both},
        Case{"Fasten off and weave the tail through the remaining sts, pull tight.", 0}}) {
    INFO(one.text);
    const auto all = placings(one.text);
    REQUIRE_FALSE(all.empty());
    std::uint8_t loops = 0;
    for (const Placing& placing : all)
      if (placing.gather) loops = static_cast<std::uint8_t>(loops | placing.loops);
    CHECK(loops == one.loops);
  }
}

TEST_CASE("holes that a text numbers by their stitches are known") {
  using Holes = std::vector<std::uint16_t>;
  struct Case {
    const char* text;
    Holes holes;
  };
  for (const Case& one :
       {Case{"Embroider a mouth over Rnd 10 between stitches 14 and 17.", {14, 16}},
        Case{"Embroider the nose from hole 14 to hole 17 of Rnd 10.", {14, 17}},
        Case{"Embroider a line on Rnd 10 from stitch 14 to stitch 17.", {13, 17}},
        Case{"Insert eyes in Rnd 8 between stitches 10 and 11 and between stitches 20 and 21.", {10, 20}},
        Case{"Place eyes between rounds 8 and 9, at stitches 10 and 20.", {10, 20}},
        Case{"Place a marker in the 15th st of Rnd 7.", {15}},
        Case{"Put a stitch marker in st 10 of Rnd 6 and in st 20.", {10, 20}},
        Case{"Insert eyes between rounds 8 and 9, 6 stitches apart.", {}},
        Case{"Embroider the nose between Rnds 8 and 9, over 4 sts.", {}},
        Case{"Place a marker in the first st.", {}}}) {
    INFO(one.text);
    const auto all = placings(one.text);
    REQUIRE_FALSE(all.empty());
    CHECK(all[0].after == one.holes);
    if (!one.holes.empty()) CHECK(all[0].apart == 0);
  }
}

TEST_CASE("the last stitches are gathered in many words") {
  for (const char* text :
       {"Cut yarn, leave a tail, weave it through the front loop only of each st, pull tight.",
        "Fasten off. With a needle pick up both loops of the remaining 6 sts, pull tight.",
        "Sew the hole shut through the back loops.", "Stuff firmly and close."}) {
    INFO(text);
    const auto all = placings(text);
    CHECK(std::any_of(all.begin(), all.end(), [](const Placing& placing) { return placing.gather; }));
  }
}

TEST_CASE("what is not to be done is a note") {
  const auto first = [](const std::string& text, const char* language) {
    return read_placings(text, {0, static_cast<std::uint32_t>(text.size())},
                         *words::find_vocabulary(language))[0]
        .what;
  };
  CHECK(first("Do not stuff.", "en-US") == What::note);
  CHECK(first("Don't fasten off.", "en-US") == What::note);
  CHECK(first("Nicht ausstopfen.", "de") == What::note);
  CHECK(first("Ne pas rembourrer.", "fr") == What::note);
  CHECK(first("耳に綿を詰める。", "ja") == What::stuff);
  CHECK(first("Stuff firmly, so that no gap shows.", "en-US") == What::stuff);
}

TEST_CASE("the verb tells what is done with a thing that stands before it") {
  const std::string text = "Nase aufsticken.", tail = "Faden abschneiden und zum Annähen lang lassen.";
  const auto all =
      read_placings(text, {0, static_cast<std::uint32_t>(text.size())}, *words::find_vocabulary("de"));
  CHECK(all[0].what == What::embroider);
  for (const Placing& placing :
       read_placings(tail, {0, static_cast<std::uint32_t>(tail.size())}, *words::find_vocabulary("de")))
    CHECK(placing.what != What::sew);
}

TEST_CASE("a thing without a verb of its own is embroidered as the one before") {
  const auto all = placings("Embroider the eyes on R5 and the nose on R1.");
  REQUIRE(all.size() == 2);
  CHECK(all[0].what == What::embroider);
  CHECK(all[1].what == What::embroider);
  const auto put_in = placings("Embroider a mouth on R5. The eyes go between R5 and R6.");
  REQUIRE(put_in.size() == 2);
  CHECK(put_in[1].what == What::eye);
}
