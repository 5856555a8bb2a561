#include "whorl.hpp"
#include "words/vocabulary.hpp"

#include <catch2/catch.hpp>

#include <string>

using namespace whorl;

namespace {

const char* const squirrel =
    "Squirrel\n\nTerms: US\nYarn: light worsted, rust (50 g) and cream (10 g)\nHook: 2.5 mm\n"
    "Materials: toy stuffing, two 8 mm safety eyes, a tapestry needle\n\n"
    "EAR (make 2)\nIn rust. Do not stuff.\n\nRnd 1: 6 sc in MR (6)\nFasten off, leaving a long tail for "
    "sewing.\n\n"
    "HEAD\n\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\nStuff the head firmly.\nHide a hazel leaf in it. "
    "Weave in the ends.\n"
    "Fasten off and hang it up.\n";

std::string written(const std::string& language) {
  WriteOptions options;
  options.language = language;
  return read(squirrel).written(options).text();
}

bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

} // namespace

TEST_CASE("materials, headings and usual sentences are in the language") {
  const std::string text = written("de");
  INFO(text);
  CHECK(has(text, "Garn: mittelstarkes Garn, rost (50 g) und creme (10 g)\nNadel: 2,5 mm\n"));
  CHECK(has(text, "Material: Füllwatte, 2 Sicherheitsaugen (8 mm), Wollnadel\n"));
  CHECK(has(text, "OHR (2× häkeln)\nIn rost. Nicht ausstopfen.\n"));
  CHECK(has(text, "Kopf fest ausstopfen.\n"));
  CHECK(has(written("fr"), "Rembourrer fermement : tête.\n"));
  CHECK(has(written("ja"), "頭に綿をしっかり詰める。\n"));
}

TEST_CASE("what is said besides is left as its author has it, and not lost") {
  for (const words::LanguageName& language : words::known_vocabularies()) {
    if (language.language.find("-x-") != std::string_view::npos) continue;
    const std::string text = written(std::string(language.language));
    INFO(text);
    CHECK(has(text, "Hide a hazel leaf in it."));
    CHECK(has(text, "hang it up"));
  }
}

TEST_CASE("a repeat with stars stays one, and a stitch of the pattern's own is told in the language") {
  const std::string text = "Rowan twig\n\nTerms: US\n\nThorn = sc, ch 3, sl st back into that sc. Pull it straight.\n"
                           "Bobble (bo): 4 dc in same st, closed together\n\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\n"
                           "Rnd 3: *thorn, sc; repeat from * 5 more times (12)\nRnd 4: (bo, sc) x 6 (12)\n";
  WriteOptions options;
  options.language = "de";
  const Written out = read(text).written(options);
  INFO(out.text() << out.left_table());
  CHECK(out.same_work());
  CHECK(has(out.text(), "Rd 3: *thorn, fM; ab * noch 5x wdh (12)\n"));
  CHECK(has(out.text(), "Rd 4: (bo, fM) x 6 (12)\n"));
  CHECK(has(out.text(), " = fM, 3 Lm, Km zurück in diese fM\n(Pull it straight)"));
  CHECK(has(out.text(), "Bobble (bo): 4 Stb in dieselbe M, zusammen abgemascht\n"));
}
