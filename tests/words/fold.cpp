#include "words/fold.hpp"

#include <catch2/catch.hpp>

using namespace whorl::words;

TEST_CASE("full width letters and figures become plain ones") {
  CHECK(fold("６ｓｃ（18）").text == "6sc(18)");
}

TEST_CASE("dashes, arrows, quotes and blanks each become one") {
  CHECK(fold("a–b—c−d").text == "a-b-c-d");
  CHECK(fold("→⇒➔").text == ">>>");
  CHECK(fold("“x” ‘y’").text == "\"x\" 'y'");
  CHECK(fold("a\u00A0b\u2009c\td").text == "a b c d");
}

TEST_CASE("all times signs become one and stay apart from the letter x") {
  CHECK(fold("✕✖×").text == "×××");
  CHECK(fold("x").text == "x");
}

TEST_CASE("capitals become small and are kept beside") {
  const Folded folded = fold("MR é");
  CHECK(folded.text == "mr é");
  CHECK(folded.capital[0]);
  CHECK_FALSE(folded.capital[3]);
}

TEST_CASE("list marks at the head of a line are dropped") {
  CHECK(fold("• Rnd 1").text == "rnd 1");
  CHECK(fold("- Rnd 1").text == "rnd 1");
}

TEST_CASE("a star at the head of a line that repeats stays") { CHECK(fold("*sc, inc*").text == "*sc, inc*"); }

TEST_CASE("bold stars round a label are dropped") { CHECK(fold("**Rnd 3:** 6 sc").text == "rnd 3: 6 sc"); }

TEST_CASE("no letter changes its alphabet") { CHECK(fold("сс Σ").text == "сс σ"); }

TEST_CASE("an ordinal mark does not become a letter") { CHECK(fold("5ª").text == "5ª"); }

TEST_CASE("bytes that are no text become a blank each") { CHECK(fold("a\xFF\xC3z").text == "a  z"); }

TEST_CASE("every folded byte knows the byte of the file it came from") {
  const Folded folded = fold("ｓｃ→", 100);
  CHECK(folded.text == "sc>");
  CHECK(folded.span(1, 2) == Span{103, 106});
  CHECK(folded.span(0, 3) == Span{100, 109});
}

TEST_CASE("a span that covers an empty one is the other") {
  CHECK(cover({}, {3, 5}) == Span{3, 5});
  CHECK(cover({3, 5}, {8, 9}) == Span{3, 9});
}
