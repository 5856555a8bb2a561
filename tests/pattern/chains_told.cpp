// What the chains at the head of a row stand for, told in words: beside the row, above it or within it.
#include "told.hpp"

#include <catch2/catch.hpp>

#include <string>

using namespace whorl;
using namespace whorl::pattern;

namespace {

/// A chain of 17, and a row of 14 double crochets from the fourth chain from the hook, as natives type them.
struct FirstRow {
  const char *language, *chain, *label, *work;
};
constexpr FirstRow rows[] = {
    {"de", "17 Lm anschlagen.", "Reihe 1: ", "ab der 4. Lm von der Nadel in jede Lm 1 Stb"},
    {"fr", "Faire 17 ml.", "Rang 1 : ", "1 bride dans la 4e ml depuis le crochet, 1 bride dans chaque ml"},
    {"es", "Hacer 17 cad.", "Hilera 1: ", "1 pa en la 4ª cad desde el gancho, 1 pa en cada cad"},
    {"it", "Avviare 17 cat.", "Riga 1: ", "1 ma nella 4a cat dall'uncinetto, 1 ma in ogni cat"},
    {"nl", "Haak 17 l.", "Rij 1: ", "1 stk in de 4e l vanaf de naald, 1 stk in elke l"},
    {"pt-BR", "Fazer 17 corr.", "Carr 1: ", "1 pa na 4ª corr a partir da agulha, 1 pa em cada corr"},
    {"da", "Slå 17 lm op.", "Række 1: ", "1 stm i 4. lm fra nålen, 1 stm i hver lm"},
    {"sv", "Lägg upp 17 lm.", "Rad 1: ", "1 st i 4:e lm från nålen, 1 st i varje lm"},
    {"pl", "Łańcuszek z 17 oczek.", "Rząd 1: ", "od 4. oczka od szydełka w każde oczko słupek"},
    {"ru", "Набрать 17 вп.", "1 ряд: ", "с 4-й петли от крючка в каждую петлю ссн"},
    {"tr", "17 zincir çek.", "1. sıra: ", "tığdan 4. zincirden başlayarak her zincire 1 trabzan"},
    {"ja", "鎖17目を作る。", "1段目：", "針から4目めの鎖から長編みを14目編む"},
    {"zh-Hans", "起17针锁针。", "第1行：", "从倒数第4针开始钩14个长针"},
};

struct Remarked {
  const char *language, *told;
};
constexpr Remarked remarks[] = {
    {"de", "Die 3 Lm am Anfang zählen als 1 Stb."},
    {"de", "Die ersten 3 Lm ersetzen das erste Stäbchen."},
    {"de", "Die 3 Anfangsluftmaschen gelten als 1. Stäbchen."},
    {"de", "3 Lm = 1. Stb."},
    {"de", "Die drei Wendeluftmaschen werden als Stäbchen gezählt."},
    {"fr", "Les 3 ml du début comptent comme 1 bride."},
    {"fr", "Les 3 premières mailles en l'air remplacent la première bride."},
    {"fr", "3 ml = 1 bride."},
    {"fr", "Les trois mailles en l'air de départ comptent pour une bride."},
    {"es", "Las 3 cad del inicio cuentan como 1 pa."},
    {"es", "Las 3 primeras cadenas reemplazan el primer punto alto."},
    {"es", "Las tres cadenas iniciales equivalen a una vareta."},
    {"es", "Las 3 cadenas del principio cuentan como el primer punto alto."},
    {"it", "Le 3 cat iniziali contano come 1 ma."},
    {"it", "Le prime 3 catenelle sostituiscono la prima maglia alta."},
    {"it", "Le 3 catenelle dell'inizio valgono una maglia alta."},
    {"it", "Le tre catenelle iniziali si contano come maglia alta."},
    {"nl", "De eerste 3 l tellen als 1 stk."},
    {"nl", "De 3 lossen aan het begin tellen als eerste stokje."},
    {"nl", "De 3 beginlossen vervangen het eerste stokje."},
    {"nl", "Deze 3 lossen gelden als 1 stokje."},
    {"pt-BR", "As 3 corr do início contam como 1 pa."},
    {"pt-BR", "As 3 correntinhas iniciais substituem o primeiro ponto alto."},
    {"pt-BR", "As três primeiras correntinhas valem um ponto alto."},
    {"pt-BR", "As 3 correntinhas do começo equivalem a 1 ponto alto."},
    {"da", "De 3 lm i starten tæller som 1 stm."},
    {"da", "De første 3 luftmasker erstatter den første stangmaske."},
    {"da", "De 3 første lm gælder som 1 stm."},
    {"da", "De 3 lm i begyndelsen regnes som en stangmaske."},
    {"sv", "De 3 lm i början räknas som 1 st."},
    {"sv", "De första 3 luftmaskorna ersätter den första stolpen."},
    {"sv", "De tre vändluftmaskorna motsvarar en stolpe."},
    {"sv", "3 lm = 1 st."},
    {"pl", "Te 3 oczka na początku to też słupek."},
    {"pl", "3 oł na początku liczą się jako słupek."},
    {"pl", "Pierwsze 3 oczka łańcuszka zastępują pierwszy słupek."},
    {"pl", "Początkowe 3 oł to 1 słupek."},
    {"pl", "Trzy oczka łańcuszka na początku rzędu traktujemy jak słupek."},
    {"ru", "3 вп в начале считаются за 1 ссн."},
    {"ru", "Первые 3 воздушные петли заменяют первый столбик с накидом."},
    {"ru", "3 вп подъёма = 1 ссн."},
    {"ru", "Начальные 3 вп считаем как столбик с накидом."},
    {"ru", "Три петли подъёма идут за первый столбик."},
    {"tr", "Baştaki 3 zincir 1 trabzan sayılır."},
    {"tr", "Sıra başındaki 3 zinciri trabzan olarak sayıyoruz."},
    {"tr", "İlk 3 zincir trabzan yerine geçer."},
    {"tr", "3 zincir = 1 trabzan."},
    {"tr", "Başlangıçtaki üç zincir bir trabzan yerine sayılır."},
    {"ja", "はじめの鎖3目は長編み1目に数えます。"},
    {"ja", "立ち上がりの鎖3目は長編み1目と数える。"},
    {"ja", "最初の3目の鎖は長編み1目とします。"},
    {"ja", "最初の鎖3目を長編み1目として数えます。"},
    {"zh-Hans", "开头的3针锁针算1个长针。"},
    {"zh-Hans", "起头的3个辫子针算一个长针。"},
    {"zh-Hans", "3针锁针代替1个长针。"},
    {"zh-Hans", "前3针锁针当作第一个长针。"},
    {"zh-Hans", "起立针3针算1针长针。"},
};

const FirstRow& row_of(const std::string& language) {
  for (const FirstRow& row : rows)
    if (row.language == language) return row;
  return rows[0];
}

} // namespace

TEST_CASE("what the chains skipped at the hook stand for is no work, wherever it is told") {
  for (const Remarked& remark : remarks) {
    const FirstRow& row = row_of(remark.language);
    const std::string chain = std::string(row.chain) + "\n", told = remark.told;
    const std::string work = std::string(row.label) + row.work;
    INFO(remark.language << ": " << told);
    const std::string alone = counts(remark.language, chain + work + " (15)\n");
    CHECK(counts(remark.language, chain + told + "\n" + work + " (15)\n") == alone);
    CHECK(counts(remark.language, told + "\n" + chain + work + " (15)\n") == alone);
    CHECK(counts(remark.language, chain + work + " (15)\n" + told + "\n") == alone);
    CHECK(counts(remark.language, chain + work + ". " + told + " (15)\n") == alone);
    CHECK(alone.substr(alone.size() - 2) == "15");
  }
}

TEST_CASE("chains that are made and told to count in one clause are work") {
  const std::string text = "Rnd 1: ch 3 (counts as 1 dc), 11 dc in MR (12)\n"
                           "Rnd 2: ch 3 (counts as first dc), dc in same st, 2 dc in each st around (24)\n";
  CHECK(counts("en-US", text) == "12 24");
}
