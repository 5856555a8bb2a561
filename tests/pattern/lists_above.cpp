// Lists of materials and abbreviations and remarks above the rounds: none of them is a round.
#include "told.hpp"

#include <catch2/catch.hpp>

#include <string>

using namespace whorl;
using namespace whorl::pattern;

namespace {

/// What stands above rounds of 6, 12 and 18, and the rounds.
struct Above {
  const char *language, *list;
};
constexpr Above lists[] = {
    {"de", "Material: 50 g braune Wolle, Häkelnadel 3 mm, 2 Augen 8 mm"},
    {"de", "Abkürzungen: fM feste Masche, zun Zunahme (2 fM in eine M), abn Abnahme (2 M zusammen)"},
    {"de", "fM = feste Masche\nzun = 2 fM in 1 M\nabn = 2 M zusammen abmaschen"},
    {"de", "fM feste Masche\nzun Zunahme\nabn Abnahme"},
    {"de", "fM feste Masche zun Zunahme abn Abnahme Lm Luftmasche"},
    {"de", "Lm: Luftmasche / fM: feste Masche / Km: Kettmasche"},
    {"de", "zun: 2 fM in eine M häkeln. abn: 2 M zusammen häkeln."},
    {"de", "Maschenprobe: 5 M und 6 Rd = 2 cm"},
    {"de", "Größe: etwa 12 cm hoch"},
    {"de", "Es wird in Spiralrunden gehäkelt, nicht mit Kettmasche schließen."},
    {"fr", "Matériel : 50 g de laine marron, crochet 3 mm, 2 yeux 8 mm"},
    {"fr", "Abréviations : ms maille serrée, aug augmentation (2 ms dans la même maille), dim diminution"},
    {"fr", "ms = maille serrée\naug = 2 ms dans la même maille\ndim = 2 ms ensemble"},
    {"fr", "ms maille serrée aug augmentation dim diminution ml maille en l'air"},
    {"fr", "aug : 2 ms dans la même m. dim : 2 ms rabattues ensemble."},
    {"fr", "Échantillon : 5 m et 6 rangs = 2 cm"},
    {"fr", "On travaille en spirale, sans fermer par une maille coulée."},
    {"es", "Materiales: 50 g de lana marrón, aguja de 3 mm, 2 ojos de 8 mm"},
    {"es", "Abreviaturas: pb punto bajo, aum aumento (2 pb en el mismo punto), dism disminución"},
    {"es", "pb = punto bajo\naum = 2 pb en el mismo punto\ndism = 2 pb juntos"},
    {"es", "pb punto bajo aum aumento dism disminución cad cadena"},
    {"es", "Muestra: 5 p y 6 vueltas = 2 cm"},
    {"es", "Se teje en espiral, sin cerrar con punto raso."},
    {"it", "Materiali: 50 g di lana marrone, uncinetto 3 mm, 2 occhi da 8 mm"},
    {"it", "Abbreviazioni: mb maglia bassa, aum aumento (2 mb nella stessa maglia), dim diminuzione"},
    {"it", "mb = maglia bassa\naum = 2 mb nella stessa maglia\ndim = 2 mb insieme"},
    {"it", "mb maglia bassa aum aumento dim diminuzione cat catenella"},
    {"it", "Si lavora a spirale, senza chiudere con la maglia bassissima."},
    {"nl", "Materiaal: 50 g bruine wol, haaknaald 3 mm, 2 oogjes 8 mm"},
    {"nl", "Afkortingen: v vaste, meerd meerdering (2 v in één steek), mind mindering"},
    {"nl", "v = vaste\nmeerd = 2 v in dezelfde steek\nmind = 2 v samen"},
    {"nl", "v vaste meerd meerdering mind mindering l losse"},
    {"nl", "Er wordt in spiralen gehaakt, niet sluiten met een halve vaste."},
    {"pt-BR", "Materiais: 50 g de lã marrom, agulha 3 mm, 2 olhos 8 mm"},
    {"pt-BR", "Abreviações: pb ponto baixo, aum aumento (2 pb no mesmo ponto), dim diminuição"},
    {"pt-BR", "pb = ponto baixo\naum = 2 pb no mesmo ponto\ndim = 2 pb juntos"},
    {"pt-BR", "pb ponto baixo aum aumento dim diminuição corr correntinha"},
    {"pt-BR", "Trabalhar em espiral, sem fechar com ponto baixíssimo."},
    {"da", "Materialer: 50 g brunt garn, hæklenål 3 mm, 2 øjne 8 mm"},
    {"da", "Forkortelser: fm fastmaske, udt udtagning (2 fm i samme m), indt indtagning"},
    {"da", "fm = fastmaske\nudt = 2 fm i samme m\nindt = 2 m sammen"},
    {"da", "fm fastmaske udt udtagning indt indtagning lm luftmaske"},
    {"da", "Der hækles i spiral, luk ikke med en kædemaske."},
    {"sv", "Material: 50 g brunt garn, virknål 3 mm, 2 ögon 8 mm"},
    {"sv", "Förkortningar: fm fast maska, ök ökning (2 fm i samma m), min minskning"},
    {"sv", "fm = fast maska\nök = 2 fm i samma m\nmin = 2 m tillsammans"},
    {"sv", "fm fast maska ök ökning min minskning lm luftmaska"},
    {"sv", "fm fast maska\nök 2 fm i samma m\nmin 2 m ihop\nlm luftmaska"},
    {"sv", "Virka i spiral, slut inte varven med smygmaska."},
    {"pl", "Materiały: 50 g brązowej włóczki, szydełko 3 mm, 2 oczka 8 mm"},
    {"pl", "Skróty: ps półsłupek, dod dodane oczko (2 ps w jedno oczko), odj odjęte oczko"},
    {"pl", "ps - półsłupek\ndod - 2 ps w jedno oczko\nodj - 2 oczka razem\nmk - magiczne kółko"},
    {"pl", "ps półsłupek dod dodanie odj odjęcie mk magiczne kółko"},
    {"pl", "ps półsłupek\ndod 2 ps w jedno oczko\nodj 2 oczka razem\nmk magiczne kółko"},
    {"pl", "Próbka: 5 o. i 6 okr. = 2 cm"},
    {"pl", "Robimy spiralnie, nie zamykamy okrążeń oczkiem ścisłym."},
    {"ru", "Материалы: пряжа коричневая 50 г, крючок 3 мм, глазки 8 мм 2 шт."},
    {"ru", "Сокращения: сбн столбик без накида, пр прибавка (2 сбн в одну петлю), уб убавка"},
    {"ru", "сбн - столбик без накида\nпр - 2 сбн в одну петлю\nуб - 2 петли вместе\nКА - кольцо амигуруми"},
    {"ru", "сбн столбик без накида пр прибавка уб убавка вп воздушная петля"},
    {"ru", "сбн столбик без накида\nпр прибавка 2 сбн в одну петлю\nуб убавка 2 сбн вместе"},
    {"ru", "Плотность: 5 п. и 6 рядов = 2 см"},
    {"ru", "Вяжем по спирали, ряды соединительным столбиком не закрываем."},
    {"tr", "Malzemeler: 50 g kahverengi ip, 3 mm tığ, 2 adet 8 mm göz"},
    {"tr", "Kısaltmalar: x sık iğne, v artırma (aynı ilmeğe 2x), a eksiltme"},
    {"tr", "x = sık iğne\nv = aynı ilmeğe 2x\na = 2 ilmeği birlikte"},
    {"tr", "x sık iğne v artırma a eksiltme zn zincir"},
    {"tr", "x sık iğne\nv artırma aynı ilmeğe 2 sık iğne\na eksiltme 2 ilmek birlikte\nzn zincir"},
    {"tr", "Sarmal örülür, sıralar kaydırma ilmekle kapatılmaz."},
    {"ja", "材料：茶色の毛糸50g、かぎ針3mm、目8mm2個"},
    {"ja", "記号：X細編み、V増し目（同じ目に細編み2目）、A減らし目"},
    {"ja", "細編み＝X\n増し目＝V（同じ目に細編み2目）"},
    {"ja", "増し目：同じ目に細編み2目\n減らし目：2目を一度に編む"},
    {"ja", "ぐるぐると編み、段の終わりで引き抜きません。"},
    {"zh-Hans", "材料：棕色线50克，3毫米钩针，8毫米眼睛2个"},
    {"zh-Hans", "图解：X短针，V加针（同一针里钩2X），A减针"},
    {"zh-Hans", "X=短针\nV=同一针里钩2X\nA=2针并1针"},
    {"zh-Hans", "X短针 V加针 A减针 CH辫子针"},
    {"zh-Hans", "X 短针\nV 加针 一针里钩两个短针\nA 减针 两针并一针"},
    {"zh-Hans", "螺旋钩，每圈结束不用引拔。"},
};

constexpr Above rounds[] = {
    {"de", "Rd 1: 6 fM in Fadenring\nRd 2: 6 zun\nRd 3: (1 fM, zun) x 6\n"},
    {"fr", "Tour 1 : 6 ms dans un cercle magique\nTour 2 : 6 aug\nTour 3 : (1 ms, 1 aug) x 6\n"},
    {"es", "Vuelta 1: 6 pb en anillo mágico\nVuelta 2: 6 aum\nVuelta 3: (1 pb, 1 aum) x 6\n"},
    {"it", "Giro 1: 6 mb nell'anello magico\nGiro 2: 6 aum\nGiro 3: (1 mb, 1 aum) x 6\n"},
    {"nl", "Toer 1: 6 v in magische ring\nToer 2: 6 meerd\nToer 3: (1 v, meerd) x 6\n"},
    {"pt-BR", "Carr 1: 6 pb no anel mágico\nCarr 2: 6 aum\nCarr 3: (1 pb, 1 aum) x 6\n"},
    {"da", "Omg 1: 6 fm i magisk ring\nOmg 2: 6 udt\nOmg 3: (1 fm, udt) x 6\n"},
    {"sv", "Varv 1: 6 fm i magisk ring\nVarv 2: 6 ök\nVarv 3: (1 fm, ök) x 6\n"},
    {"pl", "okr. 1: 6 ps w mk\nokr. 2: 6 dod\nokr. 3: (1 ps, dod) x 6\n"},
    {"ru", "1р. 6сбн в КА\n2р. 6пр\n3р. (1сбн, пр)*6\n"},
    {"tr", "1. sıra: sihirli halkaya 6x\n2. sıra: 6v\n3. sıra: (1x, 1v)*6\n"},
    {"ja", "1段目：わに細編み6\n2段目：増し目6\n3段目：（細編み1、増し目1）×6\n"},
    {"zh-Hans", "第1圈：环起6X\n第2圈：6V\n第3圈：(1X,1V)*6\n"},
};

} // namespace

TEST_CASE("a list above the rounds in any language, with marks or without, is no round") {
  for (const Above& above : lists)
    for (const Above& below : rounds) {
      if (std::string(above.language) != below.language) continue;
      INFO(above.language << ": " << above.list);
      const std::string list = above.list;
      CHECK(counts(above.language, list + "\n" + below.list) == "6 12 18");
      CHECK(counts(above.language, "Nisse\n\n" + list + "\n\n" + below.list) == "6 12 18");
    }
}
