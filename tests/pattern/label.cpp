#include "pattern/label.hpp"

#include <catch2/catch.hpp>

#include <sstream>

using namespace whorl;
using namespace whorl::pattern;

namespace {

std::string shown(const Label& label, std::string_view line) {
  std::ostringstream text;
  text << (label.kind == RoundKind::row ? "row " : "");
  if (label.relative)
    text << "next " << label.to;
  else
    text << label.from;
  if (!label.relative && label.to != label.from) text << "-" << label.to;
  if (label.again > 0) text << " again " << label.again;
  text << " | " << line.substr(label.span.begin, label.span.length()) << " | " << line.substr(label.work);
  return text.str();
}

/// The likeliest way to read a line's label: number, label as typed, work.
std::string likeliest(std::string_view line) {
  const auto labels = read_labels(line, 0, *words::find_vocabulary("en-US"));
  return labels.empty() ? "none" : shown(labels.front(), line);
}

std::vector<std::string> every_way(std::string_view line) {
  std::vector<std::string> ways;
  for (const Label& label : read_labels(line, 0, *words::find_vocabulary("en-US")))
    ways.push_back(shown(label, line));
  return ways;
}

struct Row {
  const char* line;
  const char* expected;
};

} // namespace

TEST_CASE("the labels that people type are read with number, extent and work") {
  const Row rows[] = {
      {"Rnd 3: sc 6", "3 | Rnd 3 | sc 6"},
      {"Rounds 6, 7 – 1 sc in each", "6-7 | Rounds 6, 7 | 1 sc in each"},
      {"R4 - 21 (21)", "4 | R4 | 21 (21)"},
      {"Rows 6-end: sc across", "row 6 | Rows 6-end | sc across"},
      {"Row 3 and onward: sc across", "row 3 | Row 3 and onward | sc across"},
      {"ROUND 3+: sc around", "3 | ROUND 3+ | sc around"},
      {"(18) R3: sc 6", "3 | R3 | sc 6"},
      {"For Rounds 10 to 12: sc 6", "10-12 | Rounds 10 to 12 | sc 6"},
      {"The 3rd round: sc 6", "3 | 3rd round | sc 6"},
      {"R5..R7: sc 6", "5-7 | R5..R7 | sc 6"},
      {"Rnd 5...7: sc 6", "5-7 | Rnd 5...7 | sc 6"},
      {"5~7: sc 6", "5-7 | 5~7 | sc 6"},
      {"Rounds 3 through to 5: sc 6", "3-5 | Rounds 3 through to 5 | sc 6"},
      {"Rnd IV: sc 6", "4 | Rnd IV | sc 6"},
      {"Round no. 3: sc 6", "3 | Round no. 3 | sc 6"},
      {"Round number 3: sc 6", "3 | Round number 3 | sc 6"},
      {"Round 3a: sc 6", "3 | Round 3a | sc 6"},
      {"3p: sc 6", "3 | 3p | sc 6"},
      {"4-6p. sc 18", "4-6 | 4-6p | sc 18"},
      {"[Rnd 3] sc 6", "3 | Rnd 3 | sc 6"},
      {"(Rnd 3) sc 6", "3 | Rnd 3 | sc 6"},
      {"{R3} sc 6", "3 | R3 | sc 6"},
      {"[Rnds 3-5]: sc 6", "3-5 | Rnds 3-5 | sc 6"},
      {"(3) sc 6", "3 | 3 | sc 6"},
      {"[3] (sc, inc) x 6", "3 | 3 | (sc, inc) x 6"},
      {"(4-6) sc around", "4-6 | 4-6 | sc around"},
      {"Rnd S: sc around", "5 | Rnd S | sc around"},
      {"Rnd3: sc 6", "3 | Rnd3 | sc 6"},
      {"Rnd3. 40 sc", "3 | Rnd3 | 40 sc"},
      {"RND 3: sc 6", "3 | RND 3 | sc 6"},
      {"rnd 3: sc 6", "3 | rnd 3 | sc 6"},
      {"Rnd. 3: sc 6", "3 | Rnd. 3 | sc 6"},
      {"Rnd 3 : sc 6", "3 | Rnd 3 | sc 6"},
      {"Rnd 3\xC2\xA0: sc 6", "3 | Rnd 3 | sc 6"},
      {"Rnd 3 - sc 6", "3 | Rnd 3 | sc 6"},
      {"Rnd 3 – sc 6", "3 | Rnd 3 | sc 6"},
      {"Rnd 3 — sc 6", "3 | Rnd 3 | sc 6"},
      {"Rnd 3) sc 6", "3 | Rnd 3 | sc 6"},
      {"Rnd 3 sc in each st", "3 | Rnd 3 | sc in each st"},
      {"Rd 3: sc 6", "3 | Rd 3 | sc 6"},
      {"Round 3: sc 6", "3 | Round 3 | sc 6"},
      {"ROUND 3: sc 6", "3 | ROUND 3 | sc 6"},
      {"ROUND 3 (sc, inc) x 6", "3 | ROUND 3 | (sc, inc) x 6"},
      {"Round 3 - sc 6", "3 | Round 3 | sc 6"},
      {"Round 3. sc 6", "3 | Round 3 | sc 6"},
      {"Round #3: sc 6", "3 | Round #3 | sc 6"},
      {"R3: sc 6", "3 | R3 | sc 6"},
      {"R3 sc 6", "3 | R3 | sc 6"},
      {"R3. sc 6", "3 | R3 | sc 6"},
      {"R 3 : sc 6", "3 | R 3 | sc 6"},
      {"R3) sc 6", "3 | R3 | sc 6"},
      {"3. sc 6", "3 | 3 | sc 6"},
      {"3) sc 6", "3 | 3 | sc 6"},
      {"3: sc 6", "3 | 3 | sc 6"},
      {"3- sc 6", "3 | 3 | sc 6"},
      {"3 - sc 6", "3 | 3 | sc 6"},
      {"3> sc 6", "3 | 3 | sc 6"},
      {"3 → sc 6", "3 | 3 | sc 6"},
      {"#3 - sc 6", "3 | #3 | sc 6"},
      {"#4: sc 6", "4 | #4 | sc 6"},
      {"- Rnd 3: sc 6", "3 | Rnd 3 | sc 6"},
      {"• Rnd 3: sc 6", "3 | Rnd 3 | sc 6"},
      {"**Rnd 3:** sc 6", "3 | Rnd 3 | sc 6"},
      {"  Rnd 3: sc 6", "3 | Rnd 3 | sc 6"},
      {"Rnds 6-10: sc around", "6-10 | Rnds 6-10 | sc around"},
      {"Rnd 6-10: sc around", "6-10 | Rnd 6-10 | sc around"},
      {"Rnds 6 – 10: sc around", "6-10 | Rnds 6 – 10 | sc around"},
      {"Rnds 6-10. sc around", "6-10 | Rnds 6-10 | sc around"},
      {"Rounds 6-10 sc around", "6-10 | Rounds 6-10 | sc around"},
      {"R6-10: sc around", "6-10 | R6-10 | sc around"},
      {"R12 – R15: 36 sc", "12-15 | R12 – R15 | 36 sc"},
      {"Rnd 12-Rnd 15: 36 sc", "12-15 | Rnd 12-Rnd 15 | 36 sc"},
      {"6-10. sc around", "6-10 | 6-10 | sc around"},
      {"6-10) sc around", "6-10 | 6-10 | sc around"},
      {"6-10: sc around", "6-10 | 6-10 | sc around"},
      {"6 to 10: sc around", "6-10 | 6 to 10 | sc around"},
      {"Rnds 6 to 10: sc around", "6-10 | Rnds 6 to 10 | sc around"},
      {"Rnds 6 to 10 sc around", "6-10 | Rnds 6 to 10 | sc around"},
      {"Rnds 6 thru 10: sc around", "6-10 | Rnds 6 thru 10 | sc around"},
      {"Rounds 6 through 10: sc around", "6-10 | Rounds 6 through 10 | sc around"},
      {"Rounds 6 & 7: sc around", "6-7 | Rounds 6 & 7 | sc around"},
      {"Rnds 6 and 7: sc around", "6-7 | Rnds 6 and 7 | sc around"},
      {"2nd Round - sc around", "2 | 2nd Round | sc around"},
      {"3rd rnd: sc around", "3 | 3rd rnd | sc around"},
      {"4th Row— dc around", "row 4 | 4th Row | dc around"},
      {"5th round sc around", "5 | 5th round | sc around"},
      {"12 row: sc around", "row 12 | 12 row | sc around"},
      {"5-8 rows: sc around", "row 5-8 | 5-8 rows | sc around"},
      {"Row 7: sc 6", "row 7 | Row 7 | sc 6"},
      {"Row 7 – dc 22", "row 7 | Row 7 | dc 22"},
      {"Row 7= dc 22", "row 7 | Row 7 | dc 22"},
      {"Next 3 rounds: sc around", "next 3 | Next 3 rounds | sc around"},
      {"Next rnd: sc around", "next 1 | Next rnd | sc around"},
      {"Last rnd: dec x 6", "next 1 | Last rnd | dec x 6"},
      {"41b. sc 6", "41 again 1 | 41b | sc 6"},
      {"Rnd 41b: sc 6", "41 again 1 | Rnd 41b | sc 6"},
      {"4. Round 3: (2 sc, inc) repeat", "3 | Round 3 | (2 sc, inc) repeat"},
      {"Round 5:", "5 | Round 5 | "},
      {"Rounds 5, 6 and 7: sc around", "5-7 | Rounds 5, 6 and 7 | sc around"},
      {"row 3, 4 & 5 sc across", "row 3-5 | row 3, 4 & 5 | sc across"},
      {"Rows 3, 4, 5 and 6 – sc", "row 3-6 | Rows 3, 4, 5 and 6 | sc"},
      {"Rnd 5 + 6: sc around", "5-6 | Rnd 5 + 6 | sc around"},
      {"Rnd 5 & Rnd 6. sc around", "5-6 | Rnd 5 & Rnd 6 | sc around"},
      {"R3 and R4 (18 sts): sc around", "3-4 | R3 and R4 | sc around"},
      {"rnd 5 thru 9- sc around", "5-9 | rnd 5 thru 9 | sc around"},
      {"RND 3 to RND 5", "3-5 | RND 3 to RND 5 | "},
      {"5>–8> sc around", "5-8 | 5>–8 | sc around"},
      {"4.-6. sc around", "4-6 | 4.-6 | sc around"},
      {"5- to 7- hdc x 10", "5-7 | 5- to 7 | hdc x 10"},
      {"5th to 8th Rounds - sc", "5-8 | 5th to 8th Rounds | sc"},
      {"4th and 5th Rounds", "4-5 | 4th and 5th Rounds | "},
      {"First round: 6 sc in MR", "1 | First round | 6 sc in MR"},
      {"Round one = 7 sc", "1 | Round one | 7 sc"},
      {"lst Round: Ch 2", "1 | lst Round | Ch 2"},
      {"Rnd l. 5 sc", "1 | Rnd l | 5 sc"},
      {"Rnd lO. sc around", "10 | Rnd lO | sc around"},
      {"9 a row: sc around", "row 9 | 9 a row | sc around"},
      {"3 - 6 a row: sc", "row 3-6 | 3 - 6 a row | sc"},
      {"13р: sc around", "13 | 13р | sc around"},
      {"4р - 5р: sc around", "4-5 | 4р - 5р | sc around"},
      {"Step 4 - Round 3: sc", "3 | Round 3 | sc"},
      {"Row 2 (WS): sc across", "row 2 | Row 2 | sc across"},
      {"Row 1 (right side)", "row 1 | Row 1 | "},
      {"Rnd 4 (brown): sc around", "4 | Rnd 4 | sc around"},
      {"Rnd 4 (BLO): sc around", "4 | Rnd 4 | BLO): sc around"},
      {"Rnd 3 (18): (sc, inc) x 6", "3 | Rnd 3 | (sc, inc) x 6"},
      {"R3 [18] (sc, inc) x 6", "3 | R3 | (sc, inc) x 6"},
      {"R1 (12 sts): ch 6", "1 | R1 | ch 6"},
      {"1 [5] 5 sc in MR", "1 | 1 | 5 sc in MR"},
      {"3 [15] *sc, inc* around", "3 | 3 | *sc, inc* around"},
      {"1) 6 sts - MR 6", "1 | 1 | MR 6"},
      {"R3: (sc, inc) x 6", "3 | R3 | (sc, inc) x 6"},
      {"R3: (12) x 2", "3 | R3 | (12) x 2"},
      {"Ｒｎｄ ３： sc 6", "3 | Ｒｎｄ ３ | sc 6"},
  };
  for (const Row& row : rows) {
    INFO(row.line);
    CHECK(likeliest(row.line) == row.expected);
  }
}

TEST_CASE("labels of other languages have their marks, endings, small words and orders of words") {
  struct Foreign {
    const char* language;
    Row row;
  };
  const Foreign rows[] = {
      {"ru", {"1-й ряд: 6 сбн", "1 | 1-й ряд | 6 сбн"}},
      {"ru", {"Круг 2-й. 12 сбн", "2 | Круг 2-й | 12 сбн"}},
      {"ru", {"Ряды с 6 по 8: сбн", "6-8 | Ряды с 6 по 8 | сбн"}},
      {"ru", {"С 5 по 9 ряд. 28 сбн", "5-9 | 5 по 9 ряд | 28 сбн"}},
      {"ru", {"С 5-го по 10-й круг 28 сбн", "5-10 | 5-го по 10-й круг | 28 сбн"}},
      {"ru", {"Ряды 6 по 10. По 30 сбн", "6-10 | Ряды 6 по 10 | По 30 сбн"}},
      {"ru", {"5-й, 6-й и 7-й круги — 12 сбн", "5-7 | 5-й, 6-й и 7-й круги | 12 сбн"}},
      {"ru", {"Ряд №3 – Ряд №6: 12 сбн", "3-6 | Ряд №3 – Ряд №6 | 12 сбн"}},
      {"ru", {"З р . – 12 сбн", "3 | З р | – 12 сбн"}},
      {"ru", {"р.2 – р.1О  12 сбн", "2-10 | р.2 – р.1О | 12 сбн"}},
      {"pl",
       {"Okrążenia od piątego do dziewiątego: 24 ps", "5-9 | Okrążenia od piątego do dziewiątego | 24 ps"}},
      {"tr", {"6.7.8.9.sira 30x", "6-9 | 6.7.8.9.sira | 30x"}},
      {"tr", {"6 7 8.siralar 30x", "6-8 | 6 7 8.siralar | 30x"}},
      {"tr", {"4. sıradan 8. sıraya kadar: 12x", "4-8 | 4. sıradan 8. sıraya kadar | 12x"}},
      {"tr", {"6 . - 9 . sıra : 24x", "6-9 | 6 . - 9 . sıra | 24x"}},
      {"fr", {"1/ 6 ms", "1 | 1 | 6 ms"}},
      {"ja", {"8段目から14段目まで 30目", "8-14 | 8段目から14段目まで | 30目"}},
      {"ja", {"5段目と6段目の間に目をつけます。", "none"}},
      {"ja", {"③増し目6回", "3 | ③ | 増し目6回"}},
      {"zh-Hans", {"第6圈至第8圈：30X", "6-8 | 第6圈至第8圈 | 30X"}},
      {"zh-Hans", {"R2-6V (12)", "2 | R2 | 6V (12)"}},
  };
  for (const auto& [language, row] : rows) {
    INFO(language << ": " << row.line);
    const auto labels = read_labels(row.line, 0, *words::find_vocabulary(language));
    CHECK((labels.empty() ? "none" : shown(labels.front(), row.line)) == row.expected);
  }
}

TEST_CASE("a range may be written with a slash, closed with one, or each of its numbers with marks") {
  CHECK(likeliest("R4/R7 12 sc") == "4-7 | R4/R7 | 12 sc");
  CHECK(likeliest("R4/R5 12 sc") == "4-5 | R4/R5 | 12 sc");
  CHECK(likeliest("5 to 9 / 24 sc") == "5-9 | 5 to 9 | 24 sc");
  CHECK(likeliest("7-) to 13-) 36 sc") == "7-13 | 7-) to 13 | 36 sc");
}

TEST_CASE("a number and the word for round with nothing behind are a label where rounds go on") {
  const std::string_view line = "12 row 24 sc";
  CHECK(likeliest(line) == "none");
  const auto labels = read_loose_labels(line, 0, *words::find_vocabulary("en-US"));
  REQUIRE(labels.size() == 1);
  CHECK(shown(labels.front(), line) == "row 12 | 12 row | 24 sc");
  CHECK(read_loose_labels("5 rows of sc", 0, *words::find_vocabulary("en-US")).empty());
}

TEST_CASE("a line that begins with a number or a letter is not always labelled") {
  for (const char* line :
       {"6 sc in MR", "6 sc, inc", "sc 6", "inc x 6", "(sc, inc) x 6", "A 4 mm hook", "rounds", "",
        "12 mm eyes", "Stuff the nut", "Make 2", "2 safety eyes", "18", "R", "3x: sc"}) {
    INFO(line);
    CHECK(likeliest(line) == "none");
  }
}

using Ways = std::vector<std::string>;

TEST_CASE("a dash and a number behind the label may begin the work or end a range") {
  CHECK(every_way("R3 - 9 sc") == Ways{"3 | R3 | 9 sc", "3-9 | R3 - 9 | sc"});
  CHECK(every_way("3 - 9 sc") == Ways{"3 | 3 | 9 sc", "3-9 | 3 - 9 | sc"});
  CHECK(every_way("Rnds 6-10 sc around") ==
        Ways{"6-10 | Rnds 6-10 | sc around", "6 | Rnds 6 | 10 sc around"});
}

TEST_CASE("a count before the work is no part of the work") {
  const std::string_view line = "Rnd 3 (18 sts): (sc, inc) x 6";
  const auto labels = read_labels(line, 0, *words::find_vocabulary("en-US"));
  REQUIRE(labels.size() == 1);
  CHECK(line.substr(labels.front().count.begin, labels.front().count.length()) == "(18 sts)");
}

TEST_CASE("a range does not run backwards") { CHECK(every_way("R9 - 3 sc") == Ways{"9 | R9 | 3 sc"}); }

TEST_CASE("a label that a mark closes after its second number is a range and nothing else") {
  CHECK(every_way("Rnds 6-10: sc around").size() == 1);
}

TEST_CASE("a number larger than any round has is no label") {
  CHECK(likeliest("Rnd 999999999: sc") == "none");
}

TEST_CASE("numbers that do not follow on are all the label's") {
  for (const char* line : {"Rnds 3, 5 and 7: inc x 6", "Rnds 3, 5, 7: inc x 6", "R3, R5 & R7 - inc x 6"}) {
    CAPTURE(line);
    const auto labels = read_labels(line, 0, *words::find_vocabulary("en-US"));
    REQUIRE(labels.size() == 1);
    CHECK(labels[0].spread == std::vector<int>{3, 5, 7});
  }
}

TEST_CASE("a word that both ends of a range belong to it is part of the label") {
  CHECK(likeliest("Rnds 4-7 inc. - sc around") == "4-7 | Rnds 4-7 inc. | sc around");
  CHECK(likeliest("Rnds 4-7 inc: sc around") == "4-7 | Rnds 4-7 inc | sc around");
  CHECK(likeliest("Rounds 6 to 8 inclusive: sc around") == "6-8 | Rounds 6 to 8 inclusive | sc around");
  CHECK(likeliest("Rnds 9-10 (incl.): sc around") == "9-10 | Rnds 9-10 (incl.) | sc around");
  CHECK(likeliest("4th to 7th rows inclusive. Sc across") ==
        "row 4-7 | 4th to 7th rows inclusive | Sc across");
}

TEST_CASE("an increase behind a number is no part of the label") {
  CHECK(likeliest("Rnds 4-7: inc, sc 5") == "4-7 | Rnds 4-7 | inc, sc 5");
  CHECK(likeliest("R2 - 6 inc - 12") == "2 | R2 | 6 inc - 12");
}

TEST_CASE("numbers without a word may be open at the end") {
  CHECK(likeliest("3-n) sc around") == "3 | 3-n | sc around");
  CHECK(likeliest("Rnd 9 to n: sc around") == "9 | Rnd 9 to n | sc around");
}

TEST_CASE("an abbreviation with full stops behind a dash is no scanned number") {
  CHECK(likeliest("Row 1.\xE2\x80\x94S.c. in 2nd ch") == "row 1 | Row 1 | S.c. in 2nd ch");
  CHECK(likeliest("Row 1\xE2\x80\x94S. c. in 2nd ch") == "row 1 | Row 1 | S. c. in 2nd ch");
}

TEST_CASE("a dash behind a range in words stands before the work") {
  CHECK(likeliest("Rnds 8 to 9 - 24 sc") == "8-9 | Rnds 8 to 9 | 24 sc");
  CHECK(likeliest("Rnds 5 and 6 - 24 sc") == "5-6 | Rnds 5 and 6 | 24 sc");
  CHECK(likeliest("Rnd 5 a 7 - 24 sc") == "5-7 | Rnd 5 a 7 | 24 sc");
}

TEST_CASE("an ordinal that looks like a word for round is one only where it stands alone") {
  CHECK(likeliest("3rd and 4th rows: sc across") == "row 3-4 | 3rd and 4th rows | sc across");
  CHECK(likeliest("3rd to 6th rounds: sc around") == "3-6 | 3rd to 6th rounds | sc around");
  CHECK(likeliest("3 rd: sc around") == "3 | 3 rd | sc around");
}

TEST_CASE("how many rounds there are in all may stand behind a number") {
  CHECK(likeliest("Rnd 1 of 4: 6 sc in MR") == "1 | Rnd 1 of 4 | 6 sc in MR");
  CHECK(likeliest("Rnd 2/8: inc x 6") == "2 | Rnd 2/8 | inc x 6");
}
