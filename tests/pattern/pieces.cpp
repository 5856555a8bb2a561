#include "pattern/pieces.hpp"
#include "pattern/table.hpp"

#include "reader_of.hpp"

#include <catch2/catch.hpp>

using namespace whorl;
using namespace whorl::pattern;

namespace {

using Pieces = std::vector<std::string>;

Pieces pieces_in(std::string_view line) {
  const Source source{std::string(line)};
  Pieces pieces;
  for (const Span span : pieces_of(reader_of(source), {0, static_cast<std::uint32_t>(line.size())}))
    pieces.emplace_back(source.at(span));
  return pieces;
}

/// "3 | 18 | inc x 6": what a row of a table gives; "" if it is none.
std::string row_of(std::string_view line) {
  const Source source{std::string(line)};
  const Ways ways = table_row(reader_of(source), {0, static_cast<std::uint32_t>(line.size())});
  if (ways.empty()) return "";
  const Label& label = ways.front().label;
  std::string shown = std::to_string(label.from);
  if (label.to != label.from) shown += "-" + std::to_string(label.to);
  return shown + " | " + std::string(source.at(label.count)) + " | " +
         std::string(source.at(ways.front().work));
}

} // namespace

TEST_CASE("several rounds in one line are cut where each begins") {
  CHECK(pieces_in("Rnd 1: 6 sc in MR (6) Rnd 2: inc x 6 (12)") ==
        Pieces{"Rnd 1: 6 sc in MR (6)", "Rnd 2: inc x 6 (12)"});
  CHECK(pieces_in("R1: 6 sc in MR / R2: inc x 6 / R3: sc around") ==
        Pieces{"R1: 6 sc in MR", "R2: inc x 6", "R3: sc around"});
  CHECK(pieces_in("1. 6 sc in MR 2. inc x 6 3. sc around") ==
        Pieces{"1. 6 sc in MR", "2. inc x 6", "3. sc around"});
  CHECK(pieces_in("r1 5sc in mr. r2 sc around. r3 sc around") ==
        Pieces{"r1 5sc in mr.", "r2 sc around.", "r3 sc around"});
  CHECK(pieces_in("Rnd 1 — 6 sc in MR = 6; Rnd 2 — 6 inc = 12") ==
        Pieces{"Rnd 1 — 6 sc in MR = 6;", "Rnd 2 — 6 inc = 12"});
}

TEST_CASE("a round that is only spoken of does not cut the line") {
  for (const char* line : {"Rnd 5: repeat Rnd 4.", "Rnd 7: as Rnd 8 of the head", "6. sc in next 7. Stuff.",
                           "Place the eyes between Rnds 7 and 8.", "R3: sc in 4, dec, sc in 3, dec (10)",
                           "1. Ch 2. In second ch from hook work 5 sc."}) {
    INFO(line);
    CHECK(pieces_in(line).size() == 1);
  }
}

TEST_CASE("a name and the first round behind it are cut") {
  CHECK(pieces_in("TAIL: Ch 9, sc in 2nd ch from hook and in each ch across (8)").front() == "TAIL:");
  CHECK(pieces_in("FOX, SITTING. 1st Round: Ch 2, 6 sc in 2nd ch from hook.").front() == "FOX, SITTING.");
  CHECK(pieces_in("leaf bug, green. 5 sc in mr").front() == "leaf bug, green.");
}

TEST_CASE("a sentence about chains is cut nowhere") {
  CHECK(pieces_in("Note: the ch 2 at the start does not count as a stitch.").size() == 1);
  CHECK(pieces_in("Bobble: 4 dc in the same st, closed together.").size() == 1);
}

TEST_CASE("the row of a table is read whatever the order of its columns") {
  CHECK(row_of("2\tinc x 6\t12") == "2 | 12 | inc x 6");
  CHECK(row_of("2\t12\tinc x 6") == "2 | 12 | inc x 6");
  CHECK(row_of("| 2 | inc x 6 | 12 |") == "2 | 12 | inc x 6");
  CHECK(row_of("R2\t8 inc\t[16]") == "2 | [16] | 8 inc");
  CHECK(row_of("5-7\tsc around") == "5-7 |  | sc around");
  CHECK(row_of("4 to 6\t18\tsc around") == "4-6 | 18 | sc around");
  CHECK(row_of("1\tred\t6 sc in MR\t6") == "1 | 6 | 6 sc in MR");
  CHECK(row_of("3) | 3, inc | x 3 (15)") == "");
  CHECK(row_of("Rnd 2: inc x 6 (12)") == "");
}

TEST_CASE("an exported row needs no heading where quotes or its count tell") {
  CHECK(row_of("3,\"(sc, inc) x 6\",18") == "3 | 18 | (sc, inc) x 6");
  CHECK(row_of("2;inc x 6;12") == "2 | 12 | inc x 6");
  CHECK(row_of("3, 4, 5: sc around") == "");
}

TEST_CASE("the row that names a table's columns is known") {
  const auto names = [](std::string_view line) {
    const Source source{std::string(line)};
    return table_form(reader_of(source), {0, static_cast<std::uint32_t>(line.size())}).has_value();
  };
  CHECK(names("Rnd\tWhat to do\tSts"));
  CHECK(names("| Round | Stitches | Total |"));
  CHECK(names("Sts;Rnd;Instruction"));
  CHECK_FALSE(names("Round\t1"));
  CHECK_FALSE(names("Head"));
}

TEST_CASE("a first round behind the sentence that makes its ring is cut off") {
  CHECK(pieces_in("Cap. With brown, ch 4 and join with a sl st to form a ring. 1st round: 8 sc in ring. 2nd "
                  "round: 2 sc in each st.") ==
        Pieces{"Cap. With brown, ch 4 and join with a sl st to form a ring.", "1st round: 8 sc in ring.",
               "2nd round: 2 sc in each st."});
}

TEST_CASE("wide marks set rounds off where no blanks do") {
  const std::string_view line = "尾巴：第1圈环起5X（5）；第2圈5V（10）。第3圈10X";
  const Source source{std::string(line)};
  Reader reader = reader_of(source);
  const Reader chinese{source, *words::find_vocabulary("zh-Hans"), reader.kinds};
  Pieces pieces;
  for (const Span span : pieces_of(chinese, {0, static_cast<std::uint32_t>(line.size())}))
    pieces.emplace_back(source.at(span));
  CHECK(pieces == Pieces{"尾巴：", "第1圈环起5X（5）；", "第2圈5V（10）。", "第3圈10X"});
}
