// Places that prose names between and behind the rounds: they are no rounds.
#include "pattern/read.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <string>

using namespace whorl;
using namespace whorl::pattern;

namespace {

/// Three rounds of 6, 12 and 12, and the fourth again as the third.
struct Rounds {
  const char *language, *first, *second, *third, *fourth;
};
constexpr Rounds all_rounds[] = {
    {"de", "Rd 1: 6 fM in Fadenring", "Rd 2: 6 zun", "Rd 3: 12 fM", "Rd 4: 12 fM"},
    {"fr", "Tour 1 : 6 ms dans un cercle magique", "Tour 2 : 6 aug", "Tour 3 : 12 ms", "Tour 4 : 12 ms"},
    {"es", "Vuelta 1: 6 pb en anillo mágico", "Vuelta 2: 6 aum", "Vuelta 3: 12 pb", "Vuelta 4: 12 pb"},
    {"it", "Giro 1: 6 mb nell'anello magico", "Giro 2: 6 aum", "Giro 3: 12 mb", "Giro 4: 12 mb"},
    {"nl", "Toer 1: 6 v in magische ring", "Toer 2: 6 meerd", "Toer 3: 12 v", "Toer 4: 12 v"},
    {"pt-BR", "Carr 1: 6 pb no anel mágico", "Carr 2: 6 aum", "Carr 3: 12 pb", "Carr 4: 12 pb"},
    {"da", "Omg 1: 6 fm i magisk ring", "Omg 2: 6 udt", "Omg 3: 12 fm", "Omg 4: 12 fm"},
    {"sv", "Varv 1: 6 fm i magisk ring", "Varv 2: 6 ök", "Varv 3: 12 fm", "Varv 4: 12 fm"},
    {"pl", "okr. 1: 6 ps w mk", "okr. 2: 6 dod", "okr. 3: 12 ps", "okr. 4: 12 ps"},
    {"ru", "1р. 6сбн в КА", "2р. 6пр", "3р. 12сбн", "4р. 12сбн"},
    {"tr", "1. sıra: sihirli halkaya 6x", "2. sıra: 6v", "3. sıra: 12x", "4. sıra: 12x"},
    {"ja", "1段目：わに細編み6", "2段目：増し目6", "3段目：細編み12", "4段目：細編み12"},
    {"zh-Hans", "第1圈：环起6X", "第2圈：6V", "第3圈：12X", "第4圈：12X"},
};

/// Where a part is sewn on, eyes are put, an end is left.
struct Place {
  const char *language, *told;
};
constexpr Place places[] = {
    {"de", "An Rd. 2 des Körpers annähen."},
    {"de", "Auf Höhe der 2. Rd am Körper annähen."},
    {"de", "Zwischen Rd 1 und 3 annähen, 4 M Abstand."},
    {"de", "Augen in Rd 2 mit 4 M Abstand anbringen."},
    {"de", "Nase über Rd 2 sticken, 3 M breit."},
    {"de", "Den Faden 30 cm lang abschneiden."},
    {"de", "Ohren auf Rd 2-3 seitlich annähen"},
    {"de", "2 cm unter der 3. Rd festnähen"},
    {"de", "Flügel links und rechts an der 2. Rd. festnähen."},
    {"de", "In Rd 2 des Kopfes einnähen."},
    {"fr", "Coudre au rang 2 du corps."},
    {"fr", "Coudre à hauteur du 2e tour du corps."},
    {"fr", "Coudre entre les tours 1 et 3, à 4 mailles d'écart."},
    {"fr", "Placer les yeux au T2 avec 4 mailles d'écart."},
    {"fr", "Broder le nez sur le tour 2, 3 mailles de large."},
    {"fr", "Laisser un fil de 30 cm."},
    {"fr", "Coudre les oreilles sur les T2-3 de chaque côté"},
    {"fr", "Fixer 2 cm sous le 3e tour"},
    {"fr", "Ailes cousues à gauche et à droite du 2e tour."},
    {"es", "Coser en la vuelta 2 del cuerpo."},
    {"es", "Coser a la altura de la 2ª vuelta del cuerpo."},
    {"es", "Coser entre las vueltas 1 y 3, a 4 puntos de distancia."},
    {"es", "Poner los ojos en la v2 con 4 puntos de separación."},
    {"es", "Bordar la nariz sobre la vuelta 2, 3 puntos de ancho."},
    {"es", "Dejar una hebra de 30 cm."},
    {"es", "Coser las orejas en las vueltas 2-3 a los lados"},
    {"es", "Pegar 2 cm debajo de la vuelta 3"},
    {"it", "Cucire al giro 2 del corpo."},
    {"it", "Cucire all'altezza del 2° giro del corpo."},
    {"it", "Cucire tra il giro 1 e il giro 3, a 4 maglie di distanza."},
    {"it", "Mettere gli occhi sul giro 2 con 4 maglie di distanza."},
    {"it", "Ricamare il naso sul giro 2, largo 3 maglie."},
    {"it", "Lasciare 30 cm di filo."},
    {"it", "Cucire le orecchie sui giri 2-3 ai lati"},
    {"it", "Fissare 2 cm sotto il 3° giro"},
    {"nl", "Naai op toer 2 van het lijf."},
    {"nl", "Naai ter hoogte van de 2e toer van het lijf."},
    {"nl", "Naai tussen toer 1 en 3 met 4 steken ertussen."},
    {"nl", "Oogjes in toer 2 met 4 steken ertussen."},
    {"nl", "Borduur de neus over toer 2, 3 steken breed."},
    {"nl", "Laat een draad van 30 cm hangen."},
    {"nl", "Naai de oren op toer 2-3 aan de zijkanten"},
    {"nl", "Zet vast 2 cm onder toer 3"},
    {"pt-BR", "Costurar na carr 2 do corpo."},
    {"pt-BR", "Costurar na altura da 2ª carreira do corpo."},
    {"pt-BR", "Costurar entre as carreiras 1 e 3, com 4 pontos de distância."},
    {"pt-BR", "Colocar os olhos na carr 2 com 4 pontos de distância."},
    {"pt-BR", "Bordar o nariz na carr 2, com 3 pontos de largura."},
    {"pt-BR", "Deixar um fio de 30 cm."},
    {"pt-BR", "Costurar as orelhas nas carr 2-3 dos lados"},
    {"pt-BR", "Fixar 2 cm abaixo da carr 3"},
    {"da", "Sy på omg 2 på kroppen."},
    {"da", "Sy fast ud for 2. omg på kroppen."},
    {"da", "Sy fast mellem omg 1 og 3 med 4 masker imellem."},
    {"da", "Sæt øjnene i omg 2 med 4 masker imellem."},
    {"da", "Broder næsen over omg 2, 3 masker bred."},
    {"da", "Lad 30 cm garn hænge."},
    {"da", "Sy ørerne på omg 2-3 i siderne"},
    {"da", "Hæft 2 cm under omg 3"},
    {"sv", "Sy fast på varv 2 på kroppen."},
    {"sv", "Sy fast i höjd med 2:a varvet på kroppen."},
    {"sv", "Sy fast mellan varv 1 och 3 med 4 maskor emellan."},
    {"sv", "Sätt ögonen på varv 2 med 4 maskors mellanrum."},
    {"sv", "Brodera nosen över varv 2, 3 maskor bred."},
    {"sv", "Lämna 30 cm garn."},
    {"sv", "Sy öronen på varv 2-3 på sidorna"},
    {"sv", "Fäst 2 cm under varv 3"},
    {"pl", "Przyszyć na 2. okr. tułowia."},
    {"pl", "Przyszyć na wysokości 2. okr. tułowia."},
    {"pl", "Przyszyć między 1 a 3 okr., 4 oczka odstępu."},
    {"pl", "Oczy na 2 okr. w odstępie 4 oczek."},
    {"pl", "Nos wyszyć nad 2. okr., szeroki na 3 oczka."},
    {"pl", "Zostawić 30 cm nitki."},
    {"pl", "Uszy przyszyć na okr. 2-3 po bokach"},
    {"pl", "Doszyć 2 cm pod 3. okr."},
    {"pl", "Skrzydła po lewej i prawej stronie 2. okr."},
    {"ru", "Пришить на 2р. тела."},
    {"ru", "Пришить на уровне 2-го ряда тела."},
    {"ru", "Пришить между 1 и 3р., расстояние 4 петли."},
    {"ru", "Глаза вставить на 2р. через 4 петли."},
    {"ru", "Носик вышить над 2р., ширина 3 петли."},
    {"ru", "Оставить нить 30 см."},
    {"ru", "Уши пришить на 2-3р. по бокам"},
    {"ru", "Закрепить на 2 см ниже 3р."},
    {"ru", "Крылья справа и слева от 2р."},
    {"ru", "На 2 р. вшить глазки."},
    {"tr", "Gövdenin 2. sırasına dik."},
    {"tr", "Gövdede 2. sıra hizasına dikin."},
    {"tr", "1. ve 3. sıra arasına 4 ilmek arayla dik."},
    {"tr", "Gözleri 2. sıraya 4 ilmek arayla tak."},
    {"tr", "Burnu 2. sıranın üstüne 3 ilmek genişliğinde işle."},
    {"tr", "30 cm ip bırak."},
    {"tr", "Kulakları 2-3. sıralara yanlardan dik"},
    {"tr", "3. sıranın 2 cm altına tuttur"},
    {"ja", "胴の2段目に縫いつける。"},
    {"ja", "胴の2段目の高さに縫いつけます。"},
    {"ja", "1段目と3段目の間に4目あけて縫いつける。"},
    {"ja", "目は2段目に4目あけてつける。"},
    {"ja", "鼻は2段目の上に3目の幅で刺しゅうする。"},
    {"ja", "糸を30cm残す。"},
    {"ja", "耳は2〜3段目の両わきに縫いつける"},
    {"ja", "3段目の2cm下にとめる"},
    {"zh-Hans", "缝在身体第2圈。"},
    {"zh-Hans", "缝到身体第2圈的高度。"},
    {"zh-Hans", "缝在第1圈和第3圈之间，间隔4针。"},
    {"zh-Hans", "眼睛装在第2圈，间隔4针。"},
    {"zh-Hans", "鼻子绣在第2圈上面，宽3针。"},
    {"zh-Hans", "留30厘米线头。"},
    {"zh-Hans", "耳朵缝在第2-3圈两侧"},
    {"zh-Hans", "固定在第3圈下方2厘米处"},
};

const Rounds& rounds_of(const std::string& language) {
  for (const Rounds& rounds : all_rounds)
    if (rounds.language == language) return rounds;
  return all_rounds[0];
}

/// The numbers of the rounds, and how many findings are no notes: "1 2 3; 0".
std::string read_as(const std::string& language, const std::string& text) {
  const Read read = pattern::read(Source(text), *words::find_vocabulary(language));
  std::string told;
  for (const RoundText& round : read.tree.rounds) told += std::to_string(round.from) + " ";
  const auto is_finding = [](const Finding& finding) { return finding.severity != Severity::note; };
  return told + std::to_string(std::count_if(read.findings.begin(), read.findings.end(), is_finding));
}

} // namespace

TEST_CASE("a place that prose names in any language is no round") {
  for (const Place& place : places) {
    const Rounds& rounds = rounds_of(place.language);
    const std::string head =
        std::string(rounds.first) + "\n" + rounds.second + "\n" + rounds.third + "\n" + place.told + "\n";
    INFO(place.language << ": " << place.told);
    CHECK(read_as(place.language, head) == "1 2 3 0");
    CHECK(read_as(place.language, head + rounds.fourth + "\n") == "1 2 3 4 0");
  }
}
