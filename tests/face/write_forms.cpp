#include "whorl.hpp"
#include "words/vocabulary.hpp"

#include <catch2/catch.hpp>

#include <string>

using namespace whorl;

namespace {

const char* const berry =
    "Rowan berry\n\nTerms: US\nYarn: red and white\nNote: <small> & round.\n\nBERRY (make 2)\n"
    "Work loosely at the top.\n\nRnd 1: with red, 6 sc in MR (6)\nRnd 2: inc x 6 (12)\n"
    "Rnd 3: sc, inc, sc, inc, sc, inc, sc, inc, sc, inc, sc, inc (18)\nChange to white.\n"
    "Rnds 4-6: BLO sc around (18)\nInsert the eyes between Rnds 4 and 5, 3 sts apart.\n"
    "Fasten off.\n";

Written written(const std::string& language, WriteForm form = WriteForm::kept,
                const std::string& filled = "") {
  WriteOptions options;
  options.language = language;
  options.form = form;
  options.filled = filled;
  return read(berry).written(options);
}

bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

} // namespace

TEST_CASE("a pattern in UK terms has UK stitches and says so") {
  const std::string text = written("en-GB").text();
  INFO(text);
  CHECK(has(text, "Terms: UK\n"));
  CHECK(has(text, "BERRY (make 2)\n"));
  CHECK(has(text, "6 dc in MR (6)\n"));
  CHECK(has(text, "Insert the eyes between Rnds 4 and 5, 3 sts apart.\n"));
  CHECK(has(text, "dc = double crochet"));
  CHECK_FALSE(has(text, "sc"));
  CHECK(written("en-GB").left().empty());
}

TEST_CASE("the shortest repeats of a round typed out are found") {
  const std::string text = written("en-US", WriteForm::shortest).text();
  INFO(text);
  CHECK(has(text, "Rnd 3: (sc, inc) x 6 (18)\n"));
  CHECK(has(text, "Rnds 4-6: BLO"));
}

TEST_CASE("in full words there is no abbreviation of a stitch") {
  const std::string text = written("en-US", WriteForm::full).text();
  INFO(text);
  CHECK(has(text, "6 single crochet in magic ring (6)\n"));
  CHECK(has(text, "Round 2: (2 single crochet in the next stitch) 6 times (12)\n"));
}

TEST_CASE("a page has headings, and marks of its own are none of the text's") {
  const Written out = written("en-US");
  CHECK(has(out.html(), "<h1>Rowan berry</h1>"));
  CHECK(has(out.html(), "<h2>BERRY (make 2)</h2>"));
  CHECK(has(out.html(), "&lt;small&gt; &amp; round."));
  CHECK(has(out.html(), "<html lang=\"en-US\">"));
  CHECK(has(out.markdown(), "# Rowan berry\n"));
  CHECK(has(out.markdown(), "## BERRY (make 2)\n"));
  CHECK(has(out.markdown(), "\\<small\\>"));
}

TEST_CASE("side by side every typed line has its written one") {
  const Written out = written("en-GB");
  INFO(out.markdown_side_by_side());
  CHECK(has(out.markdown_side_by_side(), "| Rnd 2: inc x 6 (12) | Rnd 2: 6 inc (12) |\n"));
  CHECK(has(out.html_side_by_side(),
            "<td lang=\"en-US\">Rnd 1: with red, 6 sc in MR (6)</td><td lang=\"en-GB\">Rnd 1: with "
            "red 6 dc in MR (6)</td>"));
}

TEST_CASE(
    "abbreviations of the pattern's own are kept where it has a list, which tells them in every language") {
  const char* const list =
      "Pine marten\n\nTerms: US\n\nV = inc, A = dec, X = sc, mb = bobble, W = 3 sc in the same st\n\nBODY\n"
      "Rnd 1: 6X in MR (6)\nRnd 2: 6V (12)\nRnd 3: (X, V) x 6 (18)\nRnd 4: (2X, mb) x 6 (18)\n"
      "Rnd 5: (X, A) x 6 (12)\nRnd 6: (X, W) x 6 (24)\nRnd 7: 12A (12)\n";
  for (const words::LanguageName& language : words::known_vocabularies()) {
    if (language.language.find("-x-") != std::string_view::npos) continue;
    WriteOptions options;
    options.language = std::string(language.language);
    const Written out = read(list).written(options);
    INFO(language.language << '\n' << out.text() << out.left_table());
    CHECK(out.same_work());
    for (const LeftPassage& left : out.left()) CHECK_FALSE(left.work);
    for (const char* kept : {"6V", "12A", "V = ", "A = "}) CHECK(has(out.text(), kept));
    CHECK(has(out.text(), "mb)") != (language.language == "it")); // where it is a single crochet
  }
}

TEST_CASE("in full words the pattern's own abbreviations are written out") {
  const std::string text =
      read("Mole\n\nTerms: US\n\nX = sc, V = inc\n\nRnd 1: 6X in MR (6)\nRnd 2: 6V (12)\n")
          .written({"en-US", WriteForm::full, ""})
          .text();
  INFO(text);
  CHECK(has(text, "6 single crochet in magic ring (6)"));
  CHECK_FALSE(has(text, "6V"));
}

TEST_CASE("where eyes go is said without anything left over, there and back") {
  const char* const eyes = "Vole\n\nTerms: US\n\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\nRnd 3: sc "
                           "around (12)\nRnd 4: sc around (12)\n"
                           "Insert safety eyes between rounds 3 and 4, 4 stitches apart.\nSew beads between "
                           "rounds 2 and 3, 2 stitches apart.\n";
  for (const words::LanguageName& language : words::known_vocabularies()) {
    if (language.language.find("-x-") != std::string_view::npos) continue;
    WriteOptions there, back;
    there.language = std::string(language.language);
    back.language = "en-US";
    const Written out = read(eyes).written(there);
    const Written again = read(out.text()).written(back);
    INFO(language.language << '\n' << out.text() << again.text());
    CHECK_FALSE(has(out.text(), "["));
    CHECK(has(again.text(), "safety eyes between rounds 3 and 4, 4 stitches apart.\n"));
    CHECK(has(again.text(), "Sew beads between rounds 2 and 3, 2 stitches apart.\n"));
  }
}

TEST_CASE("what a translator filled in stands in the text") {
  const std::string filled =
      "Work loosely at the top.\tKeep it loose at the crown.\nno tab here\nBERRY (make 2)\tHIP (make 2)\n";
  const Written out = written("en-GB", WriteForm::kept, filled);
  INFO(out.text());
  CHECK(has(out.text(), "Keep it loose at the crown.\n"));
  CHECK(has(out.text(), "HIP (make 2)\n"));
  CHECK_FALSE(has(out.text(), "Work loosely"));
  CHECK(out.same_work());
}

TEST_CASE("a translation that would be other work is not taken, and that is said") {
  const std::string filled = "Rnd 2: inc x 6 (12)\tRnd 2: 6 sc (6)\nNowhere\tRien\n";
  const Written out = written("en-GB", WriteForm::kept, filled);
  CHECK(has(out.text(), "Rnd 2: 6 inc (12)\n"));
  CHECK(out.same_work());
  REQUIRE(out.refused().size() == 2);
  CHECK(out.refused()[0].line == 0);
  CHECK(out.refused()[0].text == "Nowhere");
  CHECK(out.refused()[1].line == 11);
  CHECK(out.refused()[1].text == "Rnd 2: 6 sc (6)");
}

TEST_CASE("a line that only its translator understands is taken from the table") {
  const char* const odd = "Gall\n\nTerms: US\n\nRnd 1: 6 sc in MR (6)\nRnd 2: fold it over 3 sc twigs into 4 (12)\n"
                          "Rnd 3: 12 sc (12)\n";
  WriteOptions options;
  options.language = "fr";
  options.filled = "Rnd 2: fold it over 3 sc twigs into 4 (12)\tTour 2 : 6 aug (12)\n";
  const Written out = read(odd).written(options);
  INFO(out.text() << out.left_table());
  CHECK(out.refused().empty());
  CHECK(has(out.text(), "Tour 2 : 6 aug (12)\nTour 3 : 12 ms (12)\n"));
  options.filled = "Rnd 2: fold it over 3 sc twigs into 4 (12)\tTour 5 : 6 aug (12)\n";
  CHECK(read(odd).written(options).refused().size() == 1);
}

TEST_CASE("a noun before another is no colour") {
  WriteOptions options;
  options.language = "de";
  const Written out = read("Vole\n\nTerms: US\nYarn: brown wool, 6 mm safety eyes\n\nRnd 1: 6 sc in MR (6)\nNose tip.\n")
                          .written(options);
  INFO(out.text());
  CHECK_FALSE(has(out.text(), "Spitze in Nase"));
  CHECK(has(out.text(), "Garn: Wolle, braun, Sicherheitsaugen (6 mm)"));
}

TEST_CASE("a line that is not understood is carried over and left to the translator") {
  WriteOptions options;
  options.language = "en-GB";
  const Written out =
      read("Gall\n\nRnd 1: 6 sc in MR (6)\nRnd 2: fold it over 3 sc twigs into 4 (12)\nRnd 3: 12 sc (12)\n")
          .written(options);
  INFO(out.text());
  CHECK(has(out.text(), "Rnd 3: 12 dc (12)\n"));
  CHECK(has(out.text(), "twigs"));
}

TEST_CASE("every known language reads back what is written in it, or leaves it to the translator") {
  const char* const plain = "Fir cone\n\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\nRnd 3: (sc, inc) x 6 "
                            "(18)\nRnd 4: sc around (18)\n"
                            "Rnd 5: (sc, dec) x 6 (12)\nRnd 6: dec x 6 (6)\nFasten off.\n";
  for (const words::LanguageName& language : words::known_vocabularies()) {
    if (language.language.find("-x-") != std::string_view::npos) continue;
    WriteOptions options;
    options.language = std::string(language.language);
    const Written out = read(plain).written(options);
    INFO(language.language << '\n' << out.text() << out.left_table());
    CHECK(out.same_work());
    for (const LeftPassage& left : out.left()) CHECK_FALSE(left.work);
  }
}

TEST_CASE("nothing to write is nothing, not a crash") {
  for (const char* text : {"", "\n", "Fir cone", "Rnd 1:", "Rnd 1: 6 sc in MR (6", "\xff\xfe"}) {
    const Written out = read(text).written();
    CHECK(out.html().size() > 10);
    CHECK(out.markdown_side_by_side().size() > 10);
  }
}
