// First rows along a chain and rounds on both of its sides, as natives of thirteen languages tell them.
#include "told.hpp"

#include <catch2/catch.hpp>

#include <string>

using namespace whorl;
using namespace whorl::pattern;

namespace {

/// A chain and the row or round into it.
struct Along {
  const char *language, *text;
};
constexpr Along rows[] = {
    {"de", "31 Lm anschlagen.\nReihe 1: hStb ab der 3. Lm von der Nadel bis zum Ende (29)\n"},
    {"de", "31 Lm anschlagen.\nReihe 1: ab der 3. Lm von der Nadel je 1 hStb bis zum Ende (29)\n"},
    {"de", "31 Lm anschlagen.\nReihe 1: 1 hStb in die 3. Lm von der Nadel und in jede weitere Lm (29)\n"},
    {"de", "31 Lm anschlagen.\nReihe 1: je 1 hStb ab der 3. Lm von der Nadel (29)\n"},
    {"de", "31 Lm anschlagen.\nReihe 1: in die 3. Lm von der Nadel 1 hStb, dann in jede Lm 1 hStb (29)\n"},
    {"de", "31 Lm anschlagen.\nReihe 1: ab der 3. Lm in jede Lm 1 hStb (29)\n"},
    {"fr", "31 ml.\nRang 1 : dB à partir de la 3e ml depuis le crochet jusqu'à la fin (29)\n"},
    {"fr", "31 ml.\nRang 1 : 1 demi-bride dans la 3e ml depuis le crochet et dans chaque ml suivante (29)\n"},
    {"fr", "31 ml.\nRang 1 : à partir de la 3e ml 1 demi-bride dans chaque ml (29)\n"},
    {"fr", "31 ml.\nRang 1 : 1 demi-bride dans chaque ml à partir de la 3e depuis le crochet (29)\n"},
    {"es", "31 cad.\nHilera 1: 1 mpa en la 3ª cad desde el gancho y en cada cad hasta el final (29)\n"},
    {"es", "31 cad.\nHilera 1: mpa desde la 3ª cad desde el gancho hasta el final (29)\n"},
    {"es", "31 cad.\nHilera 1: 1 mpa en cada cad desde la 3ª cad desde el gancho (29)\n"},
    {"it", "31 cat.\nRiga 1: mma dalla 3a cat dall'uncinetto fino alla fine (29)\n"},
    {"it", "31 cat.\nRiga 1: 1 mma nella 3a cat dall'uncinetto e in ogni cat (29)\n"},
    {"it", "31 cat.\nRiga 1: dalla 3a cat dall'uncinetto 1 mma in ogni cat (29)\n"},
    {"it", "31 cat.\nRiga 1: 1 mma in ogni cat a partire dalla 3a dall'uncinetto (29)\n"},
    {"nl", "31 l.\nRij 1: hstk vanaf de 3e l vanaf de naald tot het einde (29)\n"},
    {"nl", "31 l.\nRij 1: 1 hstk in de 3e l vanaf de naald en in elke l (29)\n"},
    {"nl", "31 l.\nRij 1: vanaf de 3e l vanaf de naald in elke l 1 hstk (29)\n"},
    {"nl", "31 l.\nRij 1: 1 hstk in elke l vanaf de 3e l vanaf de naald (29)\n"},
    {"pt-BR", "31 corr.\nCarr 1: mpa a partir da 3ª corr da agulha até o fim (29)\n"},
    {"pt-BR", "31 corr.\nCarr 1: 1 mpa na 3ª corr a partir da agulha e em cada corr (29)\n"},
    {"pt-BR", "31 corr.\nCarr 1: a partir da 3ª corr da agulha 1 mpa em cada corr (29)\n"},
    {"pt-BR", "31 corr.\nCarr 1: 1 mpa em cada corr a partir da 3ª corr da agulha (29)\n"},
    {"da", "31 lm.\nRække 1: hstm fra 3. lm fra nålen til enden (29)\n"},
    {"da", "31 lm.\nRække 1: 1 hstm i 3. lm fra nålen og i hver lm (29)\n"},
    {"da", "31 lm.\nRække 1: fra 3. lm fra nålen 1 hstm i hver lm (29)\n"},
    {"da", "31 lm.\nRække 1: 1 hstm i hver lm fra 3. lm fra nålen (29)\n"},
    {"sv", "31 lm.\nRad 1: hst från 3:e lm från nålen till slutet (29)\n"},
    {"sv", "31 lm.\nRad 1: 1 hst i 3:e lm från nålen och i varje lm (29)\n"},
    {"sv", "31 lm.\nRad 1: från 3:e lm från nålen 1 hst i varje lm (29)\n"},
    {"sv", "31 lm.\nRad 1: 1 hst i varje lm från 3:e lm från nålen (29)\n"},
    {"pl", "31 oł.\nRząd 1: półsłupki nawijane od 3. oł od szydełka do końca (29)\n"},
    {"pl", "31 oł.\nRząd 1: 1 psn w 3. oł od szydełka i w każde następne oł (29)\n"},
    {"pl", "31 oł.\nRząd 1: od 3. oł od szydełka w każde oł 1 psn (29)\n"},
    {"pl", "31 oł.\nRząd 1: po 1 psn w każde oł od 3. oł od szydełka (29)\n"},
    {"pl", "31 oł.\nRząd 1: w trzecie oczko od szydełka i dalej w każde po psn (29)\n"},
    {"ru", "31 вп.\n1 ряд: пссн с 3-й вп от крючка до конца (29)\n"},
    {"ru", "31 вп.\n1 ряд: 1 пссн в 3-ю вп от крючка и в каждую следующую (29)\n"},
    {"ru", "31 вп.\n1 ряд: с 3-й вп от крючка по 1 пссн в каждую вп (29)\n"},
    {"ru", "31 вп.\n1 ряд: по 1 пссн в каждую вп начиная с 3-й от крючка (29)\n"},
    {"ru", "31 вп.\n1 ряд: в третью петлю от крючка и далее в каждую по пссн (29)\n"},
    {"tr", "31 zincir.\n1. sıra: tığdan 3. zincirden başlayarak sona kadar yarım trabzan (29)\n"},
    {"tr", "31 zincir.\n1. sıra: tığdan 3. zincire ve sonraki her zincire 1 yarım trabzan (29)\n"},
    {"tr", "31 zincir.\n1. sıra: tığdan itibaren 3. zincirden her zincire 1 yarım trabzan (29)\n"},
    {"tr", "31 zincir.\n1. sıra: 3. zincirden itibaren her zincire 1 yarım trabzan (29)\n"},
    {"ja", "鎖31目。\n1段目：針から3目めから中長編みを最後まで（29目）\n"},
    {"ja", "鎖31目。\n1段目：針から3目めの鎖に中長編み1目、続けて各目に中長編み1目ずつ（29目）\n"},
    {"ja", "鎖31目。\n1段目：針から3目めの鎖から中長編みを1目ずつ（29目）\n"},
    {"ja", "鎖31目。\n1段目：3目めから中長編み29目（29目）\n"},
    {"zh-Hans", "起31针锁针。\n第1行：从倒数第3针开始，每针一个中长针（29针）\n"},
    {"zh-Hans", "起31针锁针。\n第1行：倒数第3针开始每针钩1个中长针，到头（29针）\n"},
    {"zh-Hans", "起31针锁针。\n第1行：从第3针开始钩中长针到结束（29针）\n"},
    {"zh-Hans", "起31针锁针。\n第1行：从倒数第3针起钩29个中长针（29针）\n"},
};

constexpr Along ovals[] = {
    {"de", "8 Lm anschlagen.\nRd 1: ab der 2. Lm von der Nadel 6 fM, 3 fM in die letzte Lm, auf der anderen "
           "Seite 5 fM, 2 fM in die letzte Lm (16)\n"},
    {"de", "8 Lm anschlagen.\nRd 1: 6 fM ab der 2. Lm von der Nadel, in die letzte Lm 3 fM, auf der "
           "Rückseite der Kette 5 fM, in die letzte 2 fM (16)\n"},
    {"de", "8 Lm anschlagen.\nRd 1: in die 2. Lm ab Nadel 1 fM, 5 fM, 3 fM in die letzte Lm, weiter auf der "
           "Gegenseite 5 fM, in die letzte Lm 2 fM (16)\n"},
    {"de", "8 Lm anschlagen.\nRd 1: 1 Lm überspringen, 6 fM, 3 fM in die letzte Lm, Arbeit drehen, auf der "
           "anderen Seite 5 fM, 2 fM in die letzte Lm (16)\n"},
    {"de", "8 Lm anschlagen.\nRd 1: ab der 2. Masche: 6 fM, 3 fM in die letzte Masche, auf der Unterseite 5 "
           "fM, 2 fM in die letzte Masche (16)\n"},
    {"fr", "8 ml.\nTour 1 : à partir de la 2e ml depuis le crochet, 6 ms, 3 ms dans la dernière ml, de "
           "l'autre côté de la chaînette 5 ms, 2 ms dans la dernière (16)\n"},
    {"fr", "8 ml.\nTour 1 : 1 ms dans la 2e ml à partir du crochet, 5 ms, 3 ms dans la dernière ml, tourner, "
           "de l'autre côté 5 ms, 2 ms dans la dernière ml (16)\n"},
    {"fr", "8 ml.\nTour 1 : sauter 1 ml, 6 ms, 3 ms dans la dernière ml, sur l'autre côté 5 ms, 2 ms dans la "
           "dernière ml (16)\n"},
    {"fr", "8 ml.\nTour 1 : dans la 2e ml depuis le crochet : 1 ms, puis 5 ms, 3 ms dans la dernière, en "
           "dessous 5 ms, 2 ms dans la dernière (16)\n"},
    {"es", "8 cad.\nVuelta 1: desde la 2ª cad desde el gancho 6 pb, 3 pb en la última cad, por el otro lado "
           "5 pb, 2 pb en la última (16)\n"},
    {"es", "8 cad.\nVuelta 1: 1 pb en la segunda cad desde la aguja, 5 pb, 3 pb en la última cad, girar y "
           "por el otro lado de la cadena 5 pb, 2 pb en la última (16)\n"},
    {"es",
     "8 cad.\nVuelta 1: saltar 1 cad, 6 pb, 3 pb en la última, del otro lado 5 pb, 2 pb en la última (16)\n"},
    {"es", "8 cad.\nVuelta 1: empezando en la 2ª cadena: 6 pb, 3 pb en la última, al otro lado 5 pb, 2 pb en "
           "la última (16)\n"},
    {"it", "8 cat.\nGiro 1: dalla 2a cat dall'uncinetto 6 mb, 3 mb nell'ultima cat, dall'altro lato 5 mb, 2 "
           "mb nell'ultima (16)\n"},
    {"it", "8 cat.\nGiro 1: 1 mb nella seconda cat dall'uncinetto, 5 mb, 3 mb nell'ultima cat, sull'altro "
           "lato della catenella 5 mb, 2 mb nell'ultima (16)\n"},
    {"it",
     "8 cat.\nGiro 1: saltare 1 cat, 6 mb, 3 mb nell'ultima, dall'altra parte 5 mb, 2 mb nell'ultima (16)\n"},
    {"it", "8 cat.\nGiro 1: iniziando dalla 2a catenella: 6 mb, 3 mb nell'ultima, dall'altro lato 5 mb, 2 mb "
           "nell'ultima (16)\n"},
    {"nl", "8 l.\nToer 1: vanaf de 2e l vanaf de naald 6 v, 3 v in de laatste l, aan de andere kant 5 v, 2 v "
           "in de laatste (16)\n"},
    {"nl", "8 l.\nToer 1: 1 v in de 2e l vanaf de naald, 5 v, 3 v in de laatste l, aan de andere kant van de "
           "ketting 5 v, 2 v in de laatste (16)\n"},
    {"nl", "8 l.\nToer 1: sla 1 l over, 6 v, 3 v in de laatste l, keer om, andere kant 5 v, 2 v in de "
           "laatste (16)\n"},
    {"nl", "8 l.\nToer 1: begin in de 2e l: 6 v, 3 v in de laatste, aan de onderkant 5 v, 2 v in de laatste "
           "(16)\n"},
    {"pt-BR", "8 corr.\nCarr 1: a partir da 2ª corr da agulha 6 pb, 3 pb na última corr, do outro lado 5 pb, "
              "2 pb na última (16)\n"},
    {"pt-BR", "8 corr.\nCarr 1: 1 pb na segunda corr a partir da agulha, 5 pb, 3 pb na última corr, do outro "
              "lado da corrente 5 pb, 2 pb na última (16)\n"},
    {"pt-BR",
     "8 corr.\nCarr 1: pular 1 corr, 6 pb, 3 pb na última, virar, do outro lado 5 pb, 2 pb na última (16)\n"},
    {"pt-BR", "8 corr.\nCarr 1: começando na 2ª corr: 6 pb, 3 pb na última, pelo outro lado 5 pb, 2 pb na "
              "última (16)\n"},
    {"da", "8 lm.\nOmg 1: fra 2. lm fra nålen 6 fm, 3 fm i sidste lm, på den anden side 5 fm, 2 fm i sidste "
           "(16)\n"},
    {"da", "8 lm.\nOmg 1: 1 fm i anden lm fra nålen, 5 fm, 3 fm i sidste lm, på den anden side af kæden 5 "
           "fm, 2 fm i sidste (16)\n"},
    {"da", "8 lm.\nOmg 1: spring 1 lm over, 6 fm, 3 fm i sidste lm, vend, på bagsiden 5 fm, 2 fm i sidste lm "
           "(16)\n"},
    {"da", "8 lm.\nOmg 1: start i 2. lm: 6 fm, 3 fm i den sidste, på den modsatte side 5 fm, 2 fm i den "
           "sidste (16)\n"},
    {"sv",
     "8 lm.\nVarv 1: från 2:a lm från nålen 6 fm, 3 fm i sista lm, på andra sidan 5 fm, 2 fm i sista (16)\n"},
    {"sv", "8 lm.\nVarv 1: 1 fm i andra lm från nålen, 5 fm, 3 fm i sista lm, på andra sidan kedjan 5 fm, 2 "
           "fm i sista (16)\n"},
    {"sv",
     "8 lm.\nVarv 1: hoppa över 1 lm, 6 fm, 3 fm i sista lm, vänd, andra sidan 5 fm, 2 fm i sista lm (16)\n"},
    {"sv", "8 lm.\nVarv 1: börja i 2:a lm: 6 fm, 3 fm i sista, längs andra sidan 5 fm, 2 fm i sista (16)\n"},
    {"pl", "8 oł.\nokr. 1: od 2. oł od szydełka 6 ps, 3 ps w ostatnie oł, po drugiej stronie łańcuszka 5 ps, "
           "2 ps w ostatnie (16)\n"},
    {"pl", "8 oł.\nokr. 1: 1 ps w drugie oł od szydełka, 5 ps, 3 ps w ostatnie oł, z drugiej strony 5 ps, 2 "
           "ps w ostatnie oł (16)\n"},
    {"pl", "8 oł.\nokr. 1: pominąć 1 oł, 6 ps, 3 ps w ostatnie, obrócić, po drugiej stronie 5 ps, 2 ps w "
           "ostatnie (16)\n"},
    {"pl", "8 oł.\nokr. 1: zaczynając od 2. oczka: 6 ps, w ostatnie 3 ps, wzdłuż drugiej strony 5 ps, w "
           "ostatnie 2 ps (16)\n"},
    {"ru", "8 вп.\n1р. со 2-й вп от крючка 6сбн, 3сбн в последнюю вп, по другой стороне цепочки 5сбн, 2сбн в "
           "последнюю (16)\n"},
    {"ru", "8 вп.\n1р. 1сбн во вторую вп от крючка, 5сбн, 3сбн в последнюю вп, с другой стороны 5сбн, 2сбн в "
           "последнюю (16)\n"},
    {"ru", "8 вп.\n1р. пропустить 1 вп, 6сбн, 3сбн в последнюю, повернуть, по другой стороне 5сбн, 2сбн в "
           "последнюю (16)\n"},
    {"ru", "8 вп.\n1р. начиная со второй петли: 6сбн, в последнюю 3сбн, по второй стороне 5сбн, в последнюю "
           "2сбн (16)\n"},
    {"ru", "8 вп.\n1р. во 2 петлю от крючка 6сбн, 3сбн в 1 петлю, 5сбн, 2сбн в 1 петлю (16)\n"},
    {"tr", "8 zincir.\n1. sıra: tığdan itibaren 2. zincirden başlayarak 6x, son zincire 3x, diğer tarafta "
           "5x, son zincire 2x (16)\n"},
    {"tr", "8 zincir.\n1. sıra: tığdan 2. zincire 1x, 5x, son zincire 3x, zincirin öbür tarafından 5x, son "
           "zincire 2x (16)\n"},
    {"tr",
     "8 zincir.\n1. sıra: 1 zincir atla, 6x, son zincire 3x, dön, diğer taraf 5x, son zincire 2x (16)\n"},
    {"tr",
     "8 zincir.\n1. sıra: 2. zincirden başla: 6x, son zincire 3x, arka tarafına 5x, son zincire 2x (16)\n"},
    {"tr",
     "8 zincir.\n1. sıra: ikinci zincirden itibaren 6x, sonuncuya 3x, karşı tarafa 5x, sonuncuya 2x (16)\n"},
    {"ja",
     "鎖8目。\n1段目：針から2目めの鎖から細編み6目、最後の鎖に3目、反対側に5目、最後の鎖に2目（16目）\n"},
    {"ja", "鎖8目。\n1段目：2目めから細編み6目、端の目に細編み3目、鎖の反対側に細編み5目、端の目に細編み2目（"
           "16目）\n"},
    {"ja", "鎖8目。\n1段目：鎖1目とばして細編み6目、最後の目に細編み3目編み入れ、反対側に細編み5目、最後の目"
           "に細編み2目（16目）\n"},
    {"ja", "鎖8目。\n1段目：端から2目めに細編み1目、続けて細編み5目、最後の目に3目、裏側に細編み5目、最後の目"
           "に2目（16目）\n"},
    {"zh-Hans", "起8针锁针。\n第1圈：从倒数第2针开始6X，最后一针3X，另一侧5X，最后一针2X（16针）\n"},
    {"zh-Hans", "起8针锁针。\n第1圈：倒数第二针起6个短针，最后一针里钩3个短针，转到另一边5个短针，最后一针里2"
                "个短针（16针）\n"},
    {"zh-Hans", "起8针锁针。\n第1圈：跳过1针，6X，最后一针钩3X，反面5X，最后一针2X（16针）\n"},
    {"zh-Hans", "起8针锁针。\n第1圈：第2针开始钩6X，尾针3X，对面5X，尾针2X（16针）\n"},
    {"zh-Hans",
     "起8针锁针。\n第1圈：从第二个辫子开始6短，最后一个辫子3短，翻过来另一边5短，最后2短在同一针（16针）\n"},
};

} // namespace

TEST_CASE("a first row of 29 goes along a chain from the one that is named") {
  for (const Along& row : rows) {
    INFO(row.language << ": " << row.text);
    const std::string open = counts(row.language, row.text);
    CHECK(open.substr(open.size() < 2 ? 0 : open.size() - 2) == "29");
  }
}

TEST_CASE("a first round of 16 goes along both sides of a chain") {
  for (const Along& oval : ovals) {
    INFO(oval.language << ": " << oval.text);
    const std::string open = counts(oval.language, oval.text);
    CHECK(open.substr(open.size() < 2 ? 0 : open.size() - 2) == "16");
  }
}
