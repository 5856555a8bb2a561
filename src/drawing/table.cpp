#include "drawing/table.hpp"

#include "drawing/furniture.hpp"
#include "drawing/lettering.hpp"
#include "drawing/lines.hpp"

#include <algorithm>

namespace whorl::drawing {
namespace {

enum Column : std::size_t { number, line, stitches, change, left, columns };

constexpr Lettering head{2.5, Typeface::sans, false, true, ink::grey};
constexpr Lettering figures{3, Typeface::sans, false, false, ink::black};
constexpr Lettering numbers{3, Typeface::sans, true, false, ink::black};
constexpr Lettering words{2.8, Typeface::sans, false, false, ink::black};

constexpr double column_gap = 3.2, block_gap = 8;
constexpr double row_height = 4.35, further_line = 3.55, heads_height = 5.6, heading_height = 6.4;
constexpr double narrow_line = 30, wide_line = 64, widest_line = 150;
constexpr double rounding = 0.002;     ///< that a line may be wider than its room
constexpr std::size_t most_lines = 40; ///< of one row: none that a person wrote is so long
constexpr double wished_lines = 12;    ///< … the column is wider for one that takes more

const std::string& text_in(const TableRow& row, std::size_t column) {
  switch (column) {
  case number:
    return row.number;
  case line:
    return row.line;
  case stitches:
    return row.stitches;
  case change:
    return row.change;
  default:
    return row.left;
  }
}

const Lettering& lettering_of(std::size_t column) {
  if (column == number) return numbers;
  return column == line || column == left ? words : figures;
}

bool has_column(const Table& table, std::size_t column) { return !table.heads[column].empty(); }

void measure(Table& table, std::size_t column) {
  double width = 0;
  for (const TableRow& row : table.rows)
    width = std::max(width, width_of(text_in(row, column), lettering_of(column)));
  if (width == 0) table.heads[column].clear();
  table.widths[column] = width == 0 ? 0 : std::max(width, width_of(table.heads[column], head));
}

/// Width of everything but the lines, gaps included.
double width_besides(const Table& table) {
  double width = 0;
  for (std::size_t column = 0; column < columns; ++column) {
    if (!has_column(table, column)) continue;
    width += (width > 0 ? column_gap : 0) + (column == line ? 0 : table.widths[column]);
  }
  return width;
}

double row_height_of(const SetTable& set, std::size_t row) {
  const std::size_t lines = std::max<std::size_t>(1, set.wrapped->lines[row].size());
  return row_height + further_line * static_cast<double>(lines - 1);
}

/// First row of each block where none is higher than `most`.
std::vector<std::size_t> broken(const SetTable& set, double most) {
  std::vector<std::size_t> blocks;
  double high = 0;
  for (std::size_t row = 0; row < set.wrapped->lines.size(); ++row) {
    const double height = row_height_of(set, row);
    if (blocks.empty() || high + height > most) {
      blocks.push_back(row);
      high = 0;
    }
    high += height;
  }
  return blocks;
}

/// Height of the rows when broken into so many blocks: the least there is.
double rows_height(const SetTable& set, std::size_t blocks) {
  double all = 0, highest = 0;
  for (std::size_t row = 0; row < set.wrapped->lines.size(); ++row) {
    all += row_height_of(set, row);
    highest = std::max(highest, row_height_of(set, row));
  }
  constexpr double step = further_line / 4;
  double most = std::max(highest, all / static_cast<double>(blocks));
  while (most < all && broken(set, most + 1e-6).size() > blocks) most += step;
  return most + 1e-6;
}

double top_height(const Table& table) { return heads_height + (table.heading.empty() ? 0 : heading_height); }

double block_width(const Table& table, const SetTable& set) {
  return width_besides(table) + set.wrapped->width;
}

// Drawing.

/// Where a column's text stands: lines and what is left free begin at its left edge, figures end at its right
/// one.
struct Edge {
  double x = 0;
  Anchor anchor = Anchor::end;
};

std::vector<Edge> edges_of(const Table& table, const SetTable& set, double x) {
  std::vector<Edge> edges(columns);
  const double start = x;
  for (std::size_t column = 0; column < columns; ++column) {
    if (!has_column(table, column)) continue;
    if (x > start) x += column_gap;
    const double width = column == line ? set.wrapped->width : table.widths[column];
    const bool begins = column == line || column == left;
    edges[column] = {begins ? x : x + width, begins ? Anchor::start : Anchor::end};
    x += width;
  }
  return edges;
}

void draw_heads(Group& group, const Table& table, const std::vector<Edge>& edges, double y) {
  for (std::size_t column = 0; column < columns; ++column)
    if (has_column(table, column))
      group.items.push_back(written(table.heads[column], head, {edges[column].x, y}, edges[column].anchor));
}

Lettering in_ink(const TableRow& row, std::size_t column) {
  Lettering set = lettering_of(column);
  if (column == number && row.ink != 0) set.color = ink::second;
  if (column == change && row.even) set.color = ink::grey;
  return set;
}

void draw_row(Group& group, const TableRow& row, const std::vector<std::string>& lines,
              const std::vector<Edge>& edges, double y) {
  for (std::size_t column = 0; column < columns; ++column) {
    if (column == line || text_in(row, column).empty()) continue;
    group.items.push_back(
        written(text_in(row, column), in_ink(row, column), {edges[column].x, y}, edges[column].anchor));
  }
  for (std::size_t i = 0; i < lines.size(); ++i)
    group.items.push_back(
        written(lines[i], words, {edges[line].x, y + further_line * static_cast<double>(i)}));
}

void draw_block(Group& group, const Table& table, const SetTable& set, std::size_t block, Point at) {
  const std::vector<Edge> edges = edges_of(table, set, at.x);
  draw_heads(group, table, edges, at.y + 2.2);
  const double rule = at.y + 3.7;
  group.items.push_back(
      Stroke{line_through({{at.x, rule}, {at.x + block_width(table, set), rule}}), 0.2, ink::black, 0, {}});
  const std::size_t end = block + 1 < set.blocks.size() ? set.blocks[block + 1] : table.rows.size();
  double y = at.y + heads_height;
  for (std::size_t row = set.blocks[block]; row < end; ++row) {
    draw_row(group, table.rows[row], set.wrapped->lines[row], edges, y + 2.6);
    y += row_height_of(set, row);
  }
}

std::string heading_of(const Copy& copy, std::uint32_t part) {
  if (copy.fabric.parts.size() < 2) return "";
  const std::string& name = copy.fabric.parts[part].name;
  return name.empty() ? part_letter(part) : name;
}

} // namespace

Table table_of(const Copy& copy, std::uint32_t part, const std::vector<LeftFree>& free) {
  Table table;
  table.rows = table_rows(copy, part, free);
  for (TableRow& row : table.rows) row.words = words_of(row.line, words);
  table.heading = heading_of(copy, part);
  table.title = table.heading.empty() ? say(copy.wording, "table-titles")
                                      : say(copy.wording, "table-title", {table.heading});
  const std::uint32_t first = copy.fabric.parts[part].first_round;
  const bool in_rows =
      first < copy.fabric.rounds.size() && copy.fabric.rounds[first].kind == pattern::RoundKind::row;
  for (const char* id :
       {in_rows ? "table-row" : "table-round", "table-line", "table-stitches", "table-change", "table-left"})
    table.heads.push_back(say(copy.wording, id));
  table.widths.resize(columns);
  for (std::size_t column = 0; column < columns; ++column) measure(table, column);
  const double wished = std::clamp(table.widths[line] / wished_lines, wide_line, widest_line);
  table.widths[line] = std::min(table.widths[line], wished);
  return table;
}

namespace {

/// The least room for the lines; a column that is wide for very long ones stays so.
double narrow_room(const Table& table) {
  const double width = table.widths[line];
  return width > wide_line ? width : std::min(width, narrow_line);
}

} // namespace

double least_width(const Table& table) { return width_besides(table) + narrow_room(table); }

std::size_t most_blocks(const Table& table, double width) {
  const auto blocks = static_cast<std::size_t>((width + block_gap) / (least_width(table) + block_gap));
  return std::max<std::size_t>(1, std::min(blocks, std::max<std::size_t>(1, table.rows.size() / 4)));
}

namespace {

/// A line of the author within `room`; where it is shortened, its ellipsis has room too.
std::vector<std::string> wrapped(const std::vector<Word>& text, double room) {
  std::vector<std::string> lines = wrap(text, words, room, 0, most_lines);
  if (lines.empty() || width_of(lines.back(), words) <= room) return lines;
  return wrap(text, words, room - width_of("…", words), 0, most_lines);
}

SetLines set_lines(const Table& table, double room) {
  SetLines set;
  set.width = table.heads[line].empty() ? 0 : width_of(table.heads[line], head);
  for (const TableRow& row : table.rows) {
    set.lines.push_back(room > 0 ? wrapped(row.words, room + rounding) : std::vector<std::string>());
    for (const std::string& text : set.lines.back()) set.width = std::max(set.width, width_of(text, words));
  }
  return set;
}

/// Many widths are tried for a sheet: lines are wrapped once for each room.
std::shared_ptr<const SetLines> lines_in(const Table& table, double room) {
  std::shared_ptr<const SetLines>& lines = (*table.rooms)[room];
  if (!lines) lines = std::make_shared<const SetLines>(set_lines(table, room));
  return lines;
}

} // namespace

std::vector<double> good_rooms(const Table& table) {
  constexpr double step = 2, worth = 8, long_line = 38;
  const double full = table.widths[line];
  const auto many = [&table](double room) {
    std::size_t all = 0;
    for (const std::vector<std::string>& lines : lines_in(table, room)->lines) all += lines.size();
    return all;
  };
  std::vector<double> rooms{full};
  std::size_t most = many(full);
  for (double room = full - step; room >= narrow_room(table); room -= step) {
    if (many(room) <= most)
      rooms.back() = room;
    else if (full > long_line && rooms.size() == 1 && many(room) <= most + table.rows.size() / 8 &&
             room < rooms.back() - worth)
      rooms.push_back(room);
  }
  return rooms;
}

double width_in(const Table& table, double room, std::size_t blocks) {
  const double many = static_cast<double>(blocks);
  return (width_besides(table) + room) * many + block_gap * (many - 1);
}

Table rows_of(const Table& table, std::size_t first, std::size_t end) {
  Table some = table;
  some.rows.assign(table.rows.begin() + static_cast<std::ptrdiff_t>(first),
                   table.rows.begin() + static_cast<std::ptrdiff_t>(end));
  some.rooms = std::make_shared<Table::Rooms>();
  return some;
}

SetTable set_table(const Table& table, double width, std::size_t blocks) {
  SetTable set;
  const double share = (width - block_gap * static_cast<double>(blocks - 1)) / static_cast<double>(blocks);
  set.wrapped = lines_in(table, std::min(table.widths[line], share - width_besides(table)));
  const double rows = rows_height(set, blocks);
  set.blocks = broken(set, rows);
  const double many = static_cast<double>(std::max<std::size_t>(1, set.blocks.size()));
  set.width = block_width(table, set) * many + block_gap * (many - 1);
  set.height = top_height(table) + rows - (row_height - 3);
  return set;
}

Drawn draw_table(const Table& table, const SetTable& set, Point at) {
  Drawn drawn{{"", "table", table.title, {}}, set.height};
  if (!table.heading.empty()) {
    drawn.group.items.push_back(written(table.heading, lettering::heading, at + Point{0, 3}));
    at.y += heading_height;
  }
  for (std::size_t block = 0; block < set.blocks.size(); ++block) {
    draw_block(drawn.group, table, set, block, at);
    at.x += block_width(table, set) + block_gap;
  }
  return drawn;
}

} // namespace whorl::drawing
