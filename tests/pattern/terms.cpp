#include "pattern/terms.hpp"

#include <catch2/catch.hpp>

using namespace whorl;
using namespace whorl::pattern;

namespace {

const words::Vocabulary& english() { return *words::find_vocabulary("en-US"); }

/// The terms found, and from what: "UK word htr".
std::string found(std::string_view text) {
  const Terms terms = find_terms(Source(text), english());
  const char* from[] = {"given", "stated", "word", "chains", "shortest"};
  std::string told = terms_of(terms.vocabulary->language) + " " + from[static_cast<int>(terms.from)];
  if (!terms.word.empty() && terms.from == Terms::From::word) told += " " + terms.word;
  return told;
}

std::string said(std::string_view text, const char* language = "en-US") {
  const auto told = tell_terms(find_terms(Source(text), *words::find_vocabulary(language)));
  return told ? std::string(name(told->severity)) + ": " + told->message : "";
}

} // namespace

TEST_CASE("terms are stated in a header") {
  CHECK(found("Fox\nTerms: UK\n\nRnd 1: 6 dc in MR") == "UK stated");
  CHECK(found("Fox\nTerminology: US\n\nRnd 1: 12 dc in MR") == "US stated");
}

TEST_CASE("terms are stated in a sentence") {
  CHECK(found("UK terms are used throughout.\nRnd 1: 6 dc in MR") == "UK stated");
  CHECK(found("This pattern is written in British terms.") == "UK stated");
  CHECK(found("The hedgehog uses UK crochet terminology.") == "UK stated");
  CHECK(found("Everything below is in American crochet terms.\n1) 6 dc in mr") == "US stated");
  CHECK(found("English terms are used throughout.\n1st round: 6 dc in a ring") == "UK stated");
  CHECK(found("us terms!!\nr1 6dc in mr") == "US stated");
}

TEST_CASE("us is a word of every day") { CHECK(found("Let us make a fox") == "US given"); }

TEST_CASE("terms that are not used are not stated") {
  CHECK(found("These are UK terms, not US terms.\nR1: 6 dc") == "UK stated");
}

TEST_CASE("a table of both terms states none by the other's names") {
  CHECK(found("UK crochet terms: dc = US single crochet.\nR1: 6 dc in mr") == "UK stated");
}

TEST_CASE("sc and hdc are US terms") {
  CHECK(found("R1: 6sc in mr\nR2: 2 dc in each") == "US word sc");
  CHECK(found("R1: 8 half double crochet in a ring") == "US word half double");
}

TEST_CASE("htr is UK terms") {
  CHECK(found("R1: 5 dc in mr\nR2: 2htr in each") == "UK word htr");
  CHECK(found("R1: 5 double crochet in a ring\nR2: 2 half treble in each") == "UK word half treble");
}

TEST_CASE("miss and tension are UK words where only dc is worked") {
  CHECK(found("Tension: tight\nRow 1: dc in each ch\nRow 2: miss 1, 4 dc") == "UK word tension");
}

TEST_CASE("skip and gauge are no UK words") {
  CHECK(found("Gauge: tight\nR1: 6 dc in ring\nR2: 2 dc in each") == "US given");
}

// trade-facts.md 3: turning chains, sc 1, dc 3, tr 4, first stitch into foundation one more.
TEST_CASE("one chain is as high as a UK dc") {
  CHECK(found("R1: ch 1, 6 dc in ring, join\nR2: ch 1, 2 dc in each, join") == "UK chains");
}

TEST_CASE("three chains are as high as a US dc and a UK tr") {
  CHECK(found("R1: ch 3, 11 dc in ring, join") == "US chains");
  CHECK(found("R1: 3 ch (counts as 1 tr), 11 tr in ring, ss") == "UK chains");
  CHECK(found("R1: ch 4 (counts as first tr), 15 tr in ring, join") == "US chains");
}

TEST_CASE("a dc in the second chain is a UK dc, in the fourth a US one") {
  CHECK(found("Row 1: ch 10, 1 dc in 2nd ch from hook and in each ch") == "UK chains");
  CHECK(found("Row 1: ch 17, dc in 4th ch from hook and across") == "US chains");
}

TEST_CASE("chains before other work tell nothing") {
  CHECK(found("R1: ch 2, join to the leg with a dc") == "US given");
}

TEST_CASE("a toy whose shortest stitch is dc is in UK terms") {
  CHECK(found("r1 6dc in mr\nr2 2dc in each (12)") == "UK shortest");
}

TEST_CASE("a ring of twelve dc is as flat as US dc are") {
  CHECK(found("r1 12 dc in mr\nr2 2dc in each (24)") == "US given");
}

TEST_CASE("the terms that were taken are said, and why") {
  CHECK(said("r1 6 sc in mr") ==
        "note: the words are read in US terms, because the pattern says `sc`; a line "
        "`Terms: US` in the pattern says so");
  CHECK(said("r1 6dc in mr\nr2 2dc in each") == "note: the words are read in UK terms, because dc is the "
                                                "pattern's shortest stitch; a line `Terms: UK` in "
                                                "the pattern says so");
  CHECK(said("Leaf\nR1: ch 3, 11 dc in ring") == "note: the words are read in US terms, because of the "
                                                 "height of the chains before its first stitches; a line "
                                                 "`Terms: US` in the pattern says so");
  CHECK(said("R1: 12 tr in ring") ==
        "note: the words are read in US terms; a line `Terms: US` in the pattern says so");
}

TEST_CASE("terms that the text says are not said once more") {
  CHECK(said("UK terms\nr1 6 dc in mr").empty());
}

TEST_CASE("a text that says UK and works sc is told") {
  CHECK(said("Written in UK terms.\nR1: 6 sc in MR") ==
        "warning: the pattern says `UK`, but `sc` is a US word; its words are read in US terms");
}

TEST_CASE("a text that says US and works htr is told") {
  CHECK(said("US terms\nR1: 6 dc in MR\nR2: 12 htr") ==
        "warning: the pattern says `US`, but `htr` is a UK word; its words are read in UK terms");
}

TEST_CASE("terms that were asked for stay, and the text that says others is told") {
  CHECK(said("US terms\nR1: 6 dc in MR", "en-GB") ==
        "warning: the pattern says `US`, and its words are read in UK terms");
}

TEST_CASE("a stitch is spoken of in the terms of the pattern") {
  const words::Vocabulary& uk = *words::find_vocabulary("en-GB");
  CHECK(spoken("sc", uk) == "dc");
  CHECK(spoken("sc2tog", uk) == "dc2tog");
  CHECK(spoken("hdc3tog", uk) == "htr3tog");
  CHECK(spoken("sc2tog", english()) == "sc2tog");
  CHECK(spoken("invdec", uk) == "invdec");
}

TEST_CASE("abbreviations set apart with stops or blanks tell as well") {
  CHECK(found("1st rnd: 6 s. c. in ring") == "US word sc");
  CHECK(found("1st rnd: 6 d.c. in ring\n2nd rnd: miss 1, 5 d.c.") == "UK word miss");
  CHECK(found("1st rnd: 6 d c in ring\n2nd rnd: 2 d c in each d c") == "UK shortest");
  CHECK(found("1st rnd: 8 h.tr. in ring") == "UK word htr");
  CHECK(found("1st rnd: 8 h.d.c. in ring") == "US word hdc");
}

TEST_CASE("names of several stitches tell, and raised trebles") {
  CHECK(found("R1: 10 half trebles in a ring") == "UK word half treble");
  CHECK(found("R1: 10 half doubles in a ring") == "US word half double");
  CHECK(found("R1: 12 tr in ring\nR2: 1 rtrf round each st") == "UK word rtrf");
}

TEST_CASE("chains between two legs tell nothing of the height of a stitch") {
  CHECK(found("R1: 5 dc in MR\nR2: 10 dc\nR3: 2ch, 1dc into the first leg to join, 9 dc") == "UK shortest");
}
