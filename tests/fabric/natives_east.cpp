// Ways to say it that were found in what Russians, Poles, Turks, Japanese and Chinese type, and that every
// language shares.
#include "fabric/check.hpp"
#include "fabric/work.hpp"
#include "pattern/read.hpp"
#include "pattern/reading.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <string>

using namespace whorl;
using namespace whorl::pattern;

namespace {

Read read_in(const std::string& tag, const std::string& text) {
  return read(Source(text), *words::find_vocabulary(tag));
}

/// What each round leaves open: "6 12 18"; "-" for one that is not worked.
std::string counts(const std::string& tag, const std::string& text) {
  const Tree tree = read_in(tag, text).tree;
  const fabric::Fabric fabric = fabric::work(tree).fabric;
  std::string told;
  for (const fabric::Round& round : fabric.rounds)
    if (round.number > 0)
      told += (told.empty() ? "" : " ") + (round.worked ? std::to_string(round.counted) : std::string("-"));
  return told;
}

/// How many stitches of the last round are worked in back loops alone.
std::size_t in_back_loops(const std::string& tag, const std::string& text) {
  const Tree tree = read_in(tag, text).tree;
  const fabric::Fabric fabric = fabric::work(tree).fabric;
  const fabric::Round& last = fabric.rounds.back();
  std::size_t count = 0;
  for (fabric::StitchId id = last.first_stitch; id < last.first_stitch + last.count; ++id)
    count += legs_of(fabric, id).begin()->into.loops == stitch::back;
  return count;
}

std::size_t complaints(const std::string& tag, const std::string& text) {
  const Read result = read_in(tag, text);
  const fabric::Worked worked = fabric::work(result.tree);
  std::vector<Finding> all = result.findings;
  all.insert(all.end(), worked.findings.begin(), worked.findings.end());
  const std::vector<Finding> checked = fabric::check(result.tree, worked.fabric);
  all.insert(all.end(), checked.begin(), checked.end());
  return static_cast<std::size_t>(std::count_if(
      all.begin(), all.end(), [](const Finding& one) { return one.severity != Severity::note; }));
}

} // namespace

TEST_CASE("two numbers that a bracket closes each are a range") {
  CHECK(counts("en-US", "1) 6 sc in MR\n2) 6 inc\n3) 4) 12 sc\n5) - 7) 12 sc\n") == "6 12 12 12 12 12 12");
  CHECK(counts("zh-Hans", "①环起6短针\n②每针加1\n③④ 12短针\n") == "6 12 12 12");
}

TEST_CASE("a number glued to a stitch before an equals sign is no label") {
  CHECK(counts("ru", "1р 6сбн в ка =6\n2р 6сбн =6\n3р (сбн, пр)*3 =9\n") == "6 6 9");
}

TEST_CASE("loops that are told in the line above a round are those of that round") {
  const std::string head = "R1: 6 sc in MR\nR2: 6 inc\n";
  CHECK(in_back_loops("en-US", head + "Now with white, in back loops only\nR3: 12 sc\n") == 12);
  CHECK(in_back_loops("en-US", head + "Now with white, in back loops only\nR3: 12 sc\nR4: 12 sc\n") == 0);
  CHECK(in_back_loops("en-US", head + "Leave the back loops for the frill\nR3: 12 sc\n") == 0);
  CHECK(in_back_loops("pl", "rz 1 6 psł w mk\nrz 2 6 dod\nteraz białym, tylko za tylne nitki\nrz 3 12 psł\n") == 12);
}

TEST_CASE("a number of rounds beside the count in its brackets is no count") {
  CHECK(complaints("en-US", "R1: 6 sc in MR\nR2: 6 inc (12 sts)\nR3-5: 12 sc (12 sts, 3 rounds)\n") == 0);
  CHECK(complaints("ru", "1 ряд: 6 сбн в КА\n2 ряд: 6 пр\n3-5 ряд: 12 сбн (3 ряда, 12 петель)\n") == 0);
  CHECK(complaints("en-US", "R1: 6 sc in MR\nR2: 6 inc\nR3-5: 12 sc (11 sts, 3 rounds)\n") == 1);
}

TEST_CASE("words that end the piece may follow the count") {
  CHECK(counts("ru", "1р 6сбн в ка =6\n2р 6пр =12\n3р 6уб =6 стянуть\n") == "6 12 6");
  CHECK(counts("tr", "1) halkaya 6x\n2) 6v 12\n3) 6a 6 kapat\n") == "6 12 6");
  CHECK(counts("zh-Hans", "1. 环起6x 6\n2. 6v 12\n3. 6a 6 收口\n") == "6 12 6");
}

TEST_CASE("shaping told as evenly spread comes to its count, in whatever order the words stand") {
  CHECK(counts("pl", "1 okr: 6 ps w MK\n2 okr: 6 dod\n3 okr: dodać równomiernie 6 oczek (18)\n") == "6 12 18");
  CHECK(counts("tr", "1. sıra: SH içine 6x\n2. sıra: 6v\n3. sıra: 6 ilmek eşit aralıklarla artırılır (18)\n") ==
        "6 12 18");
  CHECK(counts("zh-Hans", "第1圈：环起6X\n第2圈：6V\n第3圈：平均加6针，共18针\n") == "6 12 18");
}

TEST_CASE("a part that is sewn on may name rounds of what it is sewn to") {
  CHECK(complaints("en-US", "R1: 4 sc in MR\nR2: 4 sc\nSew between rounds 9 and 10 of the head.\n") == 0);
}

TEST_CASE("a chain that turns up to a first round belongs to the chain above it") {
  CHECK(counts("en-US", "Ch 5.\nR1: ch 1, 4 sc, 3 sc in last ch, on other side 3 sc, inc (12)\n") == "12");
  CHECK(counts("ja", "鎖5目で編み始めます。\n1段目：立ち上がり鎖1目、細編み4目、端の目に3目、反対側に3目、端の目に2目（12目）\n") ==
        "12");
}

TEST_CASE("stitches go on from a chain that is named by its number") {
  CHECK(counts("zh-Hans", "R1: 起7CH，从倒数第二针开始钩5X，W，4X，V（14）\n") == "14");
  CHECK(counts("tr", "6 zincir çekin\n1) ikinci zincirden 4x, son zincire 3x, karşı taraftan 3x, son zincire 2x (12)\n") ==
        "12");
  CHECK(counts("ja", "鎖6目\n1段目：鎖の2目めから細編み4目、端の目に3目、反対側に3目、最後の目に2目（12目）\n") == "12");
}

TEST_CASE("parts are joined by a chain that is told in the line above the round") {
  CHECK(counts("en-US", "Leg (make 2)\nR1: 6 sc in MR\nR2: 6 inc\nDo not cut the second. Ch 3 and join to the first leg.\n"
                        "Body\nR3: 12 sc around first leg, 3 sc in the chs, 12 sc around second leg, 3 sc on the other "
                        "side of the chs (30)\nR4: 30 sc\n") == "6 12 30 30");
  CHECK(counts("ru", "Ножка 2 шт\n1р 6 сбн в ка\n2р 6 пр\nВторую не обрывать, набрать 3 вп и соединить с первой ножкой.\n"
                     "3р 12 сбн по первой ножке, 3 сбн по вп, 12 сбн по второй, 3 сбн по вп (30)\n4р 30 сбн\n") ==
        "6 12 30 30");
  CHECK(counts("zh-Hans", "腿（2条）\n1、环起6X\n2、6V\n身体\n3、3辫子针，第一条腿12X，辫子上3X，第二条腿12X，辫子另一面3X【30】\n"
                          "4、30X\n") == "6 12 30 30");
}

TEST_CASE("a letter with a point or a colon stands for the word for round") {
  CHECK(counts("pl", "o.1  8 pn w kółko\no.2  po 2 pn w każde (16)\n") == "8 16");
  CHECK(counts("pl", "O1: MK, 6 ps\nO2: 6 dod\nO3–O5: 12 ps\n") == "6 12 12 12 12");
}

TEST_CASE("a table tells how many are added to a round in words") {
  CHECK(counts("ja", "1段：わに細編み6目\n2段：12目（6目増）\n3段：18目（6目増）\n4段：12目（6目減）\n") == "6 12 18 12");
}

TEST_CASE("a line that closes a flat piece is no round, and no complaint") {
  CHECK(complaints("zh-Hans", "R1：环起8X\nR2：8X\n对折钩4X合拢\n") == 0);
  CHECK(complaints("ru", "1 ряд: 8 сбн в КА\n2 ряд: 8 сбн\nСложите пополам, провяжите 4 СБН через обе стенки.\n") == 0);
}

TEST_CASE("brackets explain how a count is come by") {
  CHECK(counts("en-US", "R1: 6 sc in MR\nR2: 12 sc (inc in each st)\nR3: 18 (sc, inc x 6)\n") == "6 12 18");
  CHECK(counts("ru", "Ряд №1 – 6 сбн в КА\nРяд №2 – 12 сбн (прибавка в каждой петле)\nРяды №3-№5 – 12 сбн\n") ==
        "6 12 12 12 12");
  CHECK(counts("ja", "1段　6目\n2段　9目（細1、増×3）\n3〜4段　9目\n") == "6 9 9 9");
}

TEST_CASE("a count in words stands behind a comma") {
  CHECK(counts("pl", "Okrążenie 1: sześć półsłupków w kółko\nOkrążenie 2: dodajemy w każdym, dwanaście\n") == "6 12");
}

TEST_CASE("a letter that other scripts do not have tells that a text is not English") {
  CHECK(complaints("zh-Hans", "1、6（环起）\n2、12（+6）\n3、12\n") == 0);
}

TEST_CASE("a round of which nothing is told but its count goes on plainly") {
  CHECK(counts("zh-Hans", "第1圈：环起6短针\n第2圈：6加针\n第3、4圈：就一直绕——12\n") == "6 12 12 12");
  CHECK(counts("en-US", "R1: 6 sc in MR\nR2: 6 inc\nR3: meander merrily - 12\n") == "6 12 12");
  CHECK(complaints("en-US", "R1: 6 sc in MR\nR2: 6 inc\nR3: meander merrily - 18\n") > 0);
}

TEST_CASE("rounds between which something is put begin none") {
  CHECK(counts("ru", "1. 6 сбн в КА\n2. 6 сбн\nГлаза между 1 и 2 р. на расстоянии 2 п.\n3. 6 сбн\n") == "6 6 6");
}
