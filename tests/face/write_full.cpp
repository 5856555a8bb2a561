#include "whorl.hpp"
#include "words/vocabulary.hpp"

#include <catch2/catch.hpp>

#include <string>
#include <vector>

using namespace whorl;

namespace {

const char* const berry = "Rowan berry\n\nTerms: US\n\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\nRnd 3: "
                          "(sc, inc) x 6 (18)\nRnd 4: sc around (18)\n"
                          "Rnd 5: 3 sc, (sc, dec) x 4, sc, dec\nRnd 6: BLO: 2 sc, sk 1, 2 hdc in next st, 9 "
                          "dc (13)\nRnd 7: sc, (dec, sk 1, sc) around\n";

Written in_full(const std::string& language) {
  WriteOptions options;
  options.language = language;
  options.form = WriteForm::full;
  return read(berry).written(options);
}

bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

std::vector<std::string> languages() {
  std::vector<std::string> all;
  for (const words::LanguageName& language : words::known_vocabularies())
    if (language.language.find("-x-") == std::string_view::npos &&
        language.language.find("-old") == std::string_view::npos)
      all.emplace_back(language.language);
  return all;
}

} // namespace

TEST_CASE("in full words a round has a step a line, with the stitches so far, and its repeat at the end") {
  const std::string text = in_full("en-US").text();
  INFO(text);
  CHECK(has(text, "Round 3:\n*single crochet (1 so far)\n2 single crochet in the next stitch (3 so "
                  "far)\nrepeat from * 5 more times (18)\n"));
  CHECK(has(text, "Round 4: single crochet in each stitch around (18)\n"));
  CHECK(has(text, "Round 5:\n3 single crochet (3 so far)\n*single crochet (4 so far)\nsingle crochet 2 "
                  "together (5 so far)\n"
                  "repeat from * 3 more times (11 so far)\n"));
}

TEST_CASE("in full words no language has an abbreviation, and what is written reads back") {
  for (const std::string& language : languages()) {
    const Written out = in_full(language);
    INFO(language << '\n' << out.text() << out.left_table());
    CHECK(out.same_work());
    for (const LeftPassage& left : out.left()) CHECK_FALSE(left.work);
    CHECK(has(out.text(), "\n*"));
  }
}

TEST_CASE("words that a language prints in full are put by their number") {
  CHECK(has(in_full("de").text(), "Runde 1: 6 feste Maschen in den Fadenring (6)\n"));
  CHECK(has(in_full("pl").text(),
            "\n2 półsłupki w kolejne oczko (dotąd 3)\npowtórzyć od * jeszcze 5 razy (18)\n"));
  CHECK(has(in_full("ru").text(),
            "*столбик без накида (пока 1)\n2 столбика без накида в следующую петлю (пока 3)\n"));
  CHECK(has(in_full("ja").text(), "*から*をあと5回くり返す (18)\n"));
}
