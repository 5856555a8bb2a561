#pragma once

#include "drawing/legend.hpp"
#include "drawing/table_rows.hpp"

namespace whorl::drawing {

/// The table of a part's rounds before it is set: what it says, and how wide its columns are.
struct Table {
  std::string title;   ///< for those who cannot see it
  std::string heading; ///< above it; "": the sheet has one part
  std::vector<TableRow> rows;
  std::vector<std::string> heads; ///< of number, line, stitches, change, left; "": there is no such column
  std::vector<double> widths;     ///< in mm, as wide as what stands in them …
  double narrowest = 0;           ///< … and so narrow the lines may be set
};

Table table_of(const Copy& copy, std::uint32_t part, const std::vector<LeftFree>& left);

/// The least width in which a table can be set, and the width at which its lines take no further lines.
double least_width(const Table& table);
double full_width(const Table& table);

/// A table as it will stand: wrapped lines, broken into `blocks` side by side.
struct SetTable {
  std::vector<std::vector<std::string>> lines; ///< of each row
  double room = 0;                             ///< in which they are set
  std::vector<std::size_t> blocks;             ///< first row of each
  double line_width = 0;                       ///< of the lines' column
  double width = 0, height = 0;
};

/// Sets a table in so many blocks side by side within `width`; `before` is how it was set last.
SetTable set_table(const Table& table, double width, std::size_t blocks, const SetTable& before = {});

/// How many blocks of a table have room side by side.
std::size_t most_blocks(const Table& table, double width);

/// Draws it with its top left corner at `at`.
Drawn draw_table(const Table& table, const SetTable& set, Point at);

} // namespace whorl::drawing
