#include "pattern/language.hpp"

#include <catch2/catch.hpp>

using namespace whorl;
using namespace whorl::pattern;

namespace {

std::string language_of(std::string_view text, std::string_view named = {}) {
  return find_language(Source(text), named).vocabulary->language;
}

} // namespace

TEST_CASE("a text's language is found out by its words") {
  CHECK(language_of("Acorn\n\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\n") == "en-US");
  CHECK(language_of("Eichel\n\n1. Rd: 6 fM in den Fadenring (6)\n2. Rd: jede M verdoppeln (12)\n") == "de");
  CHECK(language_of("Gland\n\nRang 1 : 6 ms dans un cercle magique (6)\nRang 2 : 6 aug (12)\n") == "fr");
}

TEST_CASE("a text may state its language, in the words of any") {
  CHECK(language_of("Sprache: Deutsch\nR1: 6 X\n") == "de");
  CHECK(language_of("Language: french\nR1: 6 X\n") == "fr");
  CHECK(language_of("Idioma: pt-br\nR1: 6 X\n") == "pt-BR");
}

TEST_CASE("the call goes before what the text says") {
  CHECK(language_of("Sprache: Deutsch\nR1: 6 X\n", "fr") == "fr");
}

TEST_CASE("what no words tell is English") { CHECK(language_of("R1: 6X\nR2: 6V\n") == "en-US"); }

TEST_CASE("a language that the words told is said, one that the text states is not") {
  const Language told =
      find_language(Source("Rang 1 : 6 mailles serrées dans un cercle magique (6)\n"), {});
  REQUIRE(tell_language(told));
  CHECK(tell_language(told)->severity == Severity::note);
  CHECK(tell_language(told)->message.find("`fr`") != std::string::npos);
  CHECK_FALSE(tell_language(find_language(Source("Langue : français\nRang 1 : 6 ms\n"), {})));
}
