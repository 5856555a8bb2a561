#include "drawing/rows.hpp"

#include "drawing/caption.hpp"
#include "drawing/figure.hpp"
#include "drawing/lettering.hpp"

#include <algorithm>

namespace whorl::drawing {
namespace {

constexpr double least_gap = 9, widest_gap = 26;
constexpr double number_gap = 2, caption_leading = 4.3, narrowest_caption = 46;

// Captions.

double number_width(const Cell& cell) { return width_of(cell.number, lettering::figure_number) + number_gap; }

double line_width(const Cell& cell, std::size_t line) {
  return (line == 0 ? number_width(cell) : 0) + width_of(cell.caption[line], lettering::caption);
}

double caption_width(const Cell& cell) {
  double width = 0;
  for (std::size_t i = 0; i < cell.caption.size(); ++i) width = std::max(width, line_width(cell, i));
  return width;
}

/// The two halves at the comma that makes the longer of them shortest; nothing where none fits.
std::vector<std::string> halves(const std::string& text, double room, double indent) {
  std::vector<std::string> best;
  for (std::size_t at = text.find(", "); at != std::string::npos; at = text.find(", ", at + 1)) {
    const std::string first = text.substr(0, at + 1), second = text.substr(at + 2);
    const double wide =
        std::max(indent + width_of(first, lettering::caption), width_of(second, lettering::caption));
    if (wide > room) continue;
    room = wide;
    best = {first, second};
  }
  return best;
}

/// A sentence in lines: in one, else in two that part at a comma, else as it comes.
void append_lines(std::vector<std::string>& lines, const std::string& text, double room, double indent) {
  std::vector<std::string> set = halves(text, room, indent);
  if (indent + width_of(text, lettering::caption) <= room) set = {text};
  if (set.empty()) set = wrap(text, lettering::caption, room, indent, 5);
  lines.insert(lines.end(), set.begin(), set.end());
}

// Rows.

/// The cells of one part, as far as they stand in one row.
using Cells = std::vector<Cell>;

double width_of(const Cells& cells) {
  double width = 0;
  for (std::size_t i = 0; i < cells.size(); ++i) width += 2 * cells[i].side + (i > 0 ? least_gap : 0);
  return width;
}

/// Breaks one part into rows of as many cells as fit.
std::vector<Row> broken(const Cells& part, double width) {
  std::vector<Row> rows;
  for (const Cell& cell : part) {
    if (!rows.empty()) {
      rows.back().cells.push_back(cell);
      if (width_of(rows.back().cells) <= width) continue;
      rows.back().cells.pop_back();
    }
    rows.emplace_back();
    rows.back().cells.push_back(cell);
  }
  return rows;
}

/// Columns of several rows: how far the cells of each reach to either side.
std::vector<double> columns_of(const std::vector<Row>& rows) {
  std::vector<double> sides;
  for (const Row& row : rows)
    for (std::size_t i = 0; i < row.cells.size(); ++i) {
      if (sides.size() <= i) sides.push_back(0);
      sides[i] = std::max(sides[i], row.cells[i].side);
    }
  return sides;
}

double least_width(const std::vector<double>& sides) {
  double width = sides.empty() ? 0 : least_gap * static_cast<double>(sides.size() - 1);
  for (const double side : sides) width += 2 * side;
  return width;
}

/// Axes of columns; what is free goes between them, up to a measure.
std::vector<double> axes(const std::vector<double>& sides, double width) {
  const double free = width - least_width(sides), gaps = static_cast<double>(sides.size()) - 1;
  const double gap = gaps > 0 ? std::min(widest_gap, least_gap + free / gaps) : 0;
  std::vector<double> x;
  double edge = 0;
  for (const double side : sides) {
    x.push_back(edge + side);
    edge += 2 * side + gap;
  }
  return x;
}

/// Whether a small figure would float in the middle of a column that a wide strip makes.
bool floats(const std::vector<Row>& rows, const std::vector<double>& sides) {
  for (const Row& row : rows)
    for (std::size_t i = 0; i < row.cells.size(); ++i)
      if (row.cells[i].side < 0.6 * sides[i]) return true;
  return false;
}

void set_axes(std::vector<Row>& rows, double width) {
  const std::vector<double> common = columns_of(rows);
  const bool aligned = least_width(common) <= width && !floats(rows, common);
  for (Row& row : rows) row.x = axes(aligned ? common : columns_of({row}), width);
}

void set_heights(Row& row) {
  for (const Cell& cell : row.cells) {
    row.above = std::max(row.above, cell.box.height());
    if (cell.number.empty()) continue;
    const double lines = static_cast<double>(std::max<std::size_t>(1, cell.caption.size()));
    row.below = std::max(row.below, caption_gap + caption_leading * (lines - 1) + 1);
  }
}

} // namespace

Cell cell_of(const Copy& copy, std::size_t figure) {
  Cell cell;
  cell.figure = figure;
  cell.part = copy.placement.figures[figure].part;
  cell.box = figure_box(copy, figure);
  cell.side = cell.box.width() / 2;
  if (copy.options.figures_only) return cell;
  cell.number = figure_number(copy, figure);
  const double room = std::max(cell.box.width() * 1.1, narrowest_caption);
  for (const std::string& sentence : caption(copy, figure))
    append_lines(cell.caption, sentence, room, cell.caption.empty() ? number_width(cell) : 0);
  cell.side = std::max(cell.side, caption_width(cell) / 2);
  return cell;
}

std::vector<Row> rows_of(const Cells& cells, double width) {
  std::vector<Row> rows = broken(cells, width);
  for (Row& row : rows) set_heights(row);
  set_axes(rows, width);
  if (!rows.empty()) rows.front().heads.push_back({cells.front().part, 0, width});
  return rows;
}

Group draw_caption(const Cell& cell, double x, double y) {
  Group group{"", "caption", "", {}};
  for (std::size_t i = 0; i < cell.caption.size(); ++i) {
    double left = x - line_width(cell, i) / 2;
    if (i == 0) {
      group.items.push_back(written(cell.number, lettering::figure_number, {left, y}));
      left += number_width(cell);
    }
    group.items.push_back(written(cell.caption[i], lettering::caption, {left, y}));
    y += caption_leading;
  }
  return group;
}

} // namespace whorl::drawing
