// Ways to say it that the languages share, typed as natives type them.
#include "pattern/language.hpp"
#include "pattern/read.hpp"
#include "pattern/reading.hpp"

#include <catch2/catch.hpp>

#include <string>

using namespace whorl;
using namespace whorl::pattern;

namespace {

Read read_in(const std::string& tag, const std::string& text) {
  return read(Source(text), *words::find_vocabulary(tag));
}

/// What each round leaves open, worked out from its effect alone: "6 12 18".
std::string counts(const std::string& tag, const std::string& text) {
  std::string told;
  std::int64_t open = 0;
  for (const RoundText& round : read_in(tag, text).tree.rounds)
    for (int number = round.from; number <= round.to; ++number) {
      open = outcome(round.effect, open).makes;
      told += (told.empty() ? "" : " ") + std::to_string(open);
    }
  return told;
}

std::string language_of(const std::string& text) {
  return find_language(Source(text), {}).vocabulary->language;
}

} // namespace

TEST_CASE("a sentence that only tells how many there are is the count") {
  CHECK(counts("nl", "1e toer: 6 v in een magische ring\n2e toer: 2 v. in elke v.; men ziet nu 12 v.\n") ==
        "6 12");
  CHECK(counts("en-US", "Rnd 1: 6 sc in MR\nRnd 2: 2 sc in each; thou shouldst see 12 sts.\n") == "6 12");
}

TEST_CASE("the point of an abbreviation ends the sentence of a count too") {
  CHECK(counts(
            "pt-BR",
            "1.ª carreira: 6 p. b. no anel\n2.ª carreira: 2 p. b. em cada p., ficando com 12 p. Encher.\n") ==
        "6 12");
}

TEST_CASE("rounds worked as one before, but for what is told behind it, are worked so") {
  const std::string head = "Rnd 1: 6 sc in MR\nRnd 2: inc x 6\nRnd 3: (sc, inc) x 6\n";
  CHECK(counts("en-US", head + "Rnd 4: as Rnd 3, but (2 sc, inc) x 6 (24)\n") == "6 12 18 24");
  CHECK(counts("it", "1° giro: 6 mb nell'anello\n2° giro: 6 aum\n3° giro: (1 mb, 1 aum) x 6\n"
                     "4° giro: come il 3° giro, ma aumentando ogni 3 maglie\n") == "6 12 18 24");
}

TEST_CASE("a first round is told in a sentence behind the part's name") {
  CHECK(counts("nl", "Kop: Sla een lus om de vinger en haak hierin 6 v.\n2e toer: 2 v. in elke v.\n") ==
        "6 12");
  CHECK(
      counts("es",
             "Cuerpo: Formar un anillo con el hilo y hacer en él 6 p. b.\n2.ª vta.: 2 p. b. en cada p.\n") ==
      "6 12");
}

TEST_CASE("a number alone behind what it counts is the count") {
  CHECK(counts("da", "1 omg: 5fm i ringen\n2 omg: 2fm i hver 10\n3 omg: udt i hver anden 15\n") == "5 10 15");
  CHECK(counts("it", "giro 1: 5mb nell'anello\ngiro 2: 2mb in ogni maglia 10\n") == "5 10");
}

TEST_CASE("a round of one stitch without a number goes on to its end") {
  CHECK(counts("en-US", "Rnd 1: 6 sc in MR\nRnd 2: 2 sc in each\nRnd 3: sc\nRnd 4: sc in BLO\n") ==
        "6 12 12 12");
}

TEST_CASE("a stitch that is glued to a number behind a dash makes it no second number of a range") {
  CHECK(counts("en-US", "Rnd 1 - 6sc\nRnd 2 - 6inc (12)\n") == "6 12");
  CHECK(counts("it", "giro 1 - 6mb\ngiro 2 - 6aum (12)\ngiro 3/4/5 - 12mb\n") == "6 12 12 12 12");
}

TEST_CASE("numbers one after the other with a mark between are a range") {
  CHECK(counts("it", "1)6mb cerchio magico\n2)6aum =12\n3)4)5) 12mb\n") == "6 12 12 12 12");
  CHECK(counts("fr", "Tour 1 : 6 ms dans un CM\nTour 2 : 6 aug\nTours 3-4-5 : 12 ms\n") == "6 12 12 12 12");
}

TEST_CASE("work follows a number of times behind a list") {
  CHECK(counts("en-US", "Rnd 1: 6 sc in MR\nRnd 2: inc x 6\nRnd 3: (sc, inc) x 6\n"
                        "Rnd 4: two sc and one dec, four times, and two more sc, 14 sts\n") == "6 12 18 14");
}

TEST_CASE("no stitch goes into another where no word says so") {
  const Tree tree = read_in("en-US", "Rnd 1: 8 sc in MR\nRnd 2: 1sc 1bo (8)\n").tree;
  REQUIRE(tree.rounds.size() == 2);
  CHECK(tree.rounds[1].effect.pass_uses == 2);
}

TEST_CASE("talk ends at the word that leads to the work") {
  CHECK(counts("de", "1.rd: 6fm fadenring\n2.rd: 6zun (12)\n3.rd: (1fm 1zun)6x (18)\n"
                     "4.rd: nochmal so nur mit 2fm dazwischen also (2fm 1zun)6x (24)\n") == "6 12 18 24");
}

TEST_CASE("a letter of the pattern's own list is no word for round") {
  CHECK(counts("es", "X = punto bajo, V = aumento\n1. 6X en anillo mágico (6)\n2. 6V (12)\n") == "6 12");
  CHECK(counts("pt-BR", "X = ponto baixo, V = aumento\nR1: 6X no anel mágico\nR2: 6V (12)\n") == "6 12");
}

TEST_CASE("own bobbles are known by the words of the language") {
  const Read result = read_in("es", "P = 5 puntos altos en el mismo punto, cerrados juntos\n"
                                    "V1: 6 pb en AM\nV2: 6 aum\nV3: (1 pb, 1 P) x 6\n");
  CHECK(result.findings.empty());
  CHECK(outcome(result.tree.rounds.back().effect, 12).makes == 12);
}

TEST_CASE("lists of abbreviations and prose without figures tell the language") {
  CHECK(language_of("X: maglia bassa\nV: aumento\nA: diminuzione\nR1: 6X\nR2: 6V (12)\n") == "it");
  CHECK(language_of("Rang un : six mailles serrées dans le cercle magique.\n"
                    "Rang deux : deux mailles serrées dans chaque maille.\n") == "fr");
}

TEST_CASE("in German work into each chain follows the chain it begins in without a comma") {
  CHECK(counts("de", "13 Luftmaschen anschlagen.\n"
                     "1. Reihe: ab der 2. Luftmasche in jede Luftmasche 1 feste Masche (12)\n") == "12");
}
