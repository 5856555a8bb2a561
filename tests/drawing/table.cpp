#include "drawing/table.hpp"

#include "drawing/lettering.hpp"
#include "drawing/sheets.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <string>

using namespace whorl;
using namespace whorl::drawing;
using sheets::Made;
using sheets::made;

namespace {

std::vector<TableRow> rows(const Made& it, std::uint32_t part = 0) {
  return table_rows(it.copy(), part, left_free(it.fabric));
}

std::string column(const Made& it, const std::string TableRow::*of) {
  std::string all;
  for (const TableRow& row : rows(it)) all += row.*of + " | ";
  return all.substr(0, all.size() - 3);
}

/// Six rounds, the fifth in back loops; then as many as the hedgehog's ears are worked into.
pattern::Tree cap() {
  sample::Maker m;
  m.tree.title = "Cap";
  m.part("Cap");
  sample::add_rounds(m, {6, 12, 18});
  m.round({m.blo({m.sc_around()})}, 18);
  m.round({m.sc_around()}, 18);
  m.place(pattern::What::cut);
  return m.tree;
}

SheetText text_with_lines(std::size_t rounds, const std::string& line) {
  SheetText text;
  text.round_lines.assign(rounds, line);
  return text;
}

double text_bottom(const Drawn& drawn) {
  double bottom = 0;
  for (const Item& item : drawn.group.items) bottom = std::max(bottom, bounds(item, {}).bottom);
  return bottom;
}

} // namespace

TEST_CASE("The table has every round of a part once, alike rounds as one row") {
  CHECK(column(made(sheets::gnome()), &TableRow::number) ==
        "1 | 2 | 3 | 4 | 5 | 6 | 7–11 | 12 | 13 | 14 | 15 | 16 | 17–22 | 23 | 24 | 25 | 26");
}

TEST_CASE("The table's stitches are those that the fabric counts") {
  std::vector<pattern::Tree> trees{sheets::gnome(), sheets::beetle(), sample::acorn()};
  for (std::uint32_t seed = 1; seed <= 30; ++seed) trees.push_back(sample::random_ball(seed));
  for (std::uint32_t seed = 1; seed <= 30; ++seed) trees.push_back(sample::random_cone(seed));
  for (const pattern::Tree& tree : trees) {
    const Made it = made(tree);
    for (std::uint32_t part = 0; part < it.fabric.parts.size(); ++part) {
      std::uint32_t next = it.fabric.parts[part].first_round;
      for (const TableRow& row : rows(it, part)) {
        CHECK(row.round == next);
        for (std::uint32_t round = row.round; round <= row.last_round; ++round)
          CHECK(row.stitches.substr(0, row.stitches.find(' ')) ==
                std::to_string(it.fabric.rounds[round].counted));
        next = row.last_round + 1;
      }
      CHECK(next == it.fabric.parts[part].first_round + it.fabric.parts[part].rounds);
    }
  }
}

TEST_CASE("The table says by how much each round grows or shrinks") {
  CHECK(column(made(sheets::gnome()), &TableRow::change) ==
        "start | +6 | +6 | +6 | +6 | +6 | even | −6 | −6 | −6 | +6 | +6 | even | −6 | −6 | −6 | −6");
}

TEST_CASE("The table says which loops a round is worked in, and of which round they are left free") {
  const Made it = made(cap());
  CHECK(rows(it)[3].change == "even BLO");
  CHECK(column(it, &TableRow::left) == " |  | 18 front |  | ");
}

TEST_CASE("Loops behind invisible decreases are not left free") {
  sample::Maker m;
  m.part("Ball");
  sample::add_rounds(m, {6, 12});
  m.round({m.work("invdec", 6)}, 6);
  CHECK(left_free(made(m.tree).fabric)[1].back == 0);
}

TEST_CASE("Rows take the ink of their ring") {
  const Made it = made(sheets::gnome());
  for (const TableRow& row : rows(it))
    for (const layout::Figure& figure : it.placement.figures)
      for (const layout::Ring& ring : figure.rings)
        if (!ring.echo && ring.round == row.round) CHECK(ring.ink == row.ink);
}

TEST_CASE("A count that the text states otherwise is marked in the table") {
  sample::Maker m;
  m.part("Leaf");
  sample::add_rounds(m, {6});
  m.round({m.inc(6)}, 13);
  CHECK(rows(made(m.tree))[1].stitches == "12 (!)");
}

TEST_CASE("A table shows the author's line as typed where it has room") {
  const Made it = made(cap(), text_with_lines(5, "(2 sc, inc) x 6 (24)"));
  CHECK(sheets::words_of(it.scene, "table").find("(2 sc, inc) x 6 (24)") != std::string::npos);
}

TEST_CASE("Nothing of a long line of the author is lost in the table") {
  std::string line;
  for (int i = 1; i <= 100; ++i)
    line += (i > 1 ? " " : "") + std::string("sc in the next two, inc") + std::to_string(i) + ",";
  const Made it = made(cap(), text_with_lines(5, line));
  const Table table = table_of(it.copy(), 0, left_free(it.fabric));
  for (const double more : {0.0, 20.0, 200.0}) {
    const SetTable set = set_table(table, least_width(table) + more, 1);
    std::string all;
    for (const std::string& one : set.wrapped->lines.front()) all += (all.empty() ? "" : " ") + one;
    CHECK(all == line);
  }
}

TEST_CASE("The column of a very long line is so wide that its row does not fill a page") {
  std::string line;
  for (int i = 0; i < 150; ++i) line += "sc in the next two, inc, ";
  const Made it = made(cap(), text_with_lines(5, line));
  const Table table = table_of(it.copy(), 0, left_free(it.fabric));
  CHECK(set_table(table, least_width(table), 1).wrapped->lines.front().size() <= 40);
}

TEST_CASE("A table without lines of the author has no column for them") {
  const Made it = made(cap());
  CHECK(sheets::words_of(it.scene, "table").find("as written") == std::string::npos);
}

TEST_CASE("A table in several columns has every row once and is lower") {
  const Made it = made(sheets::gnome(), text_with_lines(26, "(2 sc, inc) x 6"));
  const Table table = table_of(it.copy(), 0, left_free(it.fabric));
  const SetTable one = set_table(table, 180, 1), two = set_table(table, 180, 2);
  CHECK(two.blocks.size() == 2);
  CHECK(two.height < 0.65 * one.height);
  CHECK(two.width <= 180);
}

TEST_CASE("A table stays within the height and the width that it is said to have") {
  const Made it =
      made(sheets::gnome(), text_with_lines(26, "sc in the next two stitches, inc, repeat around"));
  const Table table = table_of(it.copy(), 0, left_free(it.fabric));
  for (const double width : {80.0, 120.0, 180.0})
    for (std::size_t blocks = 1; blocks <= most_blocks(table, width); ++blocks) {
      const SetTable set = set_table(table, width, blocks);
      const Drawn drawn = draw_table(table, set, {});
      const Box box = bounds(drawn.group, {});
      CHECK(box.right <= set.width + 0.4);
      CHECK(set.width <= width + 4);
      CHECK(text_bottom(drawn) <= set.height + 1);
    }
}

TEST_CASE("Without tables and side views a sheet has none") {
  SheetOptions options;
  options.table = options.side_view = false;
  const Made it = made(sheets::gnome(), {}, options);
  CHECK(sheets::groups_of(it.scene, "table").empty());
  CHECK(sheets::groups_of(it.scene, "side-view").empty());
}

TEST_CASE("Short lines of the author are not broken") {
  const Made it = made(sheets::gnome(), text_with_lines(26, "(2 sc, inc) x 6 (24)"));
  const Table table = table_of(it.copy(), 0, left_free(it.fabric));
  for (const double room : good_rooms(table))
    for (const auto& lines : set_table(table, width_in(table, room, 2), 2).wrapped->lines)
      CHECK(lines.size() == 1);
}

TEST_CASE("One long line is broken where that makes a table much narrower") {
  SheetText text = text_with_lines(26, "(2 sc, inc) x 6 (24)");
  text.round_lines[5] = "2 sc, inc, (4 sc, inc) x 5, then 2 sc to the end (36)";
  const Made it = made(sheets::gnome(), text);
  const Table table = table_of(it.copy(), 0, left_free(it.fabric));
  const std::vector<double> rooms = good_rooms(table);
  REQUIRE(rooms.size() == 2);
  CHECK(rooms[1] < rooms[0] - 8);
}
