#pragma once

#include "drawing/legend.hpp"
#include "drawing/table_rows.hpp"

#include <map>
#include <memory>

namespace whorl::drawing {

/// The lines of all rows, wrapped.
struct SetLines {
  std::vector<std::vector<std::string>> lines;
  double width = 0; ///< of their column
};

/// The table of a part's rounds before it is set: what it says, and how wide its columns are.
struct Table {
  std::string title;   ///< for those who cannot see it
  std::string heading; ///< above it; "": the sheet has one part
  std::vector<TableRow> rows;
  std::vector<std::string> heads; ///< of number, line, stitches, change, left; "": there is no such column
  std::vector<double> widths;     ///< in mm, as wide as what stands in them
  /// The lines as they have been set in rooms of some widths, while the sheet is composed.
  using Rooms = std::map<double, std::shared_ptr<const SetLines>>;
  std::shared_ptr<Rooms> rooms = std::make_shared<Rooms>();
};

Table table_of(const Copy& copy, std::uint32_t part, const std::vector<LeftFree>& left);

/// The least width in which a table can be set.
double least_width(const Table& table);

/// Widths of the lines' column in which they are well set: as few further lines as can be in no more room
/// than that takes; or a few more where they save room.
std::vector<double> good_rooms(const Table& table);

/// How wide a table is in so many blocks with such a column of lines.
double width_in(const Table& table, double room, std::size_t blocks);

/// A table as it will stand: wrapped lines, broken into `blocks` side by side.
struct SetTable {
  std::shared_ptr<const SetLines> wrapped;
  std::vector<std::size_t> blocks; ///< first row of each
  double width = 0, height = 0;
};

/// Sets a table in so many blocks side by side within `width`.
SetTable set_table(const Table& table, double width, std::size_t blocks);

/// Some of its rows as a table of their own.
Table rows_of(const Table& table, std::size_t first, std::size_t end);

/// How many blocks of a table have room side by side.
std::size_t most_blocks(const Table& table, double width);

/// Draws it with its top left corner at `at`.
Drawn draw_table(const Table& table, const SetTable& set, Point at);

} // namespace whorl::drawing
