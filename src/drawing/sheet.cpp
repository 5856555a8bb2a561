#include "drawing/sheet.hpp"

#include "drawing/caption.hpp"
#include "drawing/figure.hpp"
#include "drawing/furniture.hpp"
#include "drawing/legend.hpp"
#include "drawing/lines.hpp"
#include "drawing/loop_picture.hpp"
#include "drawing/rows.hpp"

#include <algorithm>
#include <cmath>

namespace whorl::drawing {
namespace {

constexpr double after_title = 4.5, after_head = 3, after_row = 7, before_part = 3, before_legend = 4,
                 before_closing = 5, widest_column = 56;

/// The sheet while it is being composed, from the top down.
struct Composing {
  const Copy& copy;
  Scene scene;
  SymbolCase symbols;
  double width = 0; ///< between the margins
  double y = margin;
  enum class Loops { unmarked, wanted, drawn } loops = Loops::unmarked; ///< their picture
};

void lay(Composing& sheet, Drawn drawn) {
  sheet.y += drawn.height;
  sheet.scene.items.push_back(std::move(drawn.group));
}

bool marks_loops(const Composing& sheet, const Row& row) {
  return std::any_of(row.cells.begin(), row.cells.end(), [&sheet](const Cell& cell) {
    return has_loop_marks(sheet.copy.placement.figures[cell.figure]);
  });
}

/// The picture of the two loops goes beside the first figure that needs it, where that leaves a free column …
void lay_loops_beside(Composing& sheet, const Row& row) {
  constexpr double air = 9;
  if (!sheet.copy.options.legend || !marks_loops(sheet, row) || sheet.loops == Composing::Loops::drawn)
    return;
  sheet.loops = Composing::Loops::wanted;
  const double left = row.x.back() + row.cells.back().side + air, width = sheet.width - left;
  if (width < loop_picture_width || row.above < loop_picture_height) return;
  const Point at{margin + left, sheet.y + (row.above - loop_picture_height) / 2};
  sheet.scene.items.push_back(draw_loop_picture(sheet.copy, at, std::min(width, widest_column)).group);
  sheet.loops = Composing::Loops::drawn;
}

/// … and else in a row of its own.
void lay_loops_below(Composing& sheet) {
  if (sheet.loops != Composing::Loops::wanted) return;
  sheet.y += after_row;
  lay(sheet, draw_loop_picture(sheet.copy, {margin, sheet.y}, std::min(sheet.width, widest_column)));
}

void lay_row(Composing& sheet, const Row& row) {
  lay_loops_beside(sheet, row);
  const double bottom = sheet.y + row.above;
  for (std::size_t i = 0; i < row.cells.size(); ++i) {
    const Cell& cell = row.cells[i];
    const double axis = margin + row.x[i];
    const Frame frame{{axis - (cell.box.left + cell.box.right) / 2, bottom - cell.box.bottom},
                      sheet.copy.options.stitch};
    sheet.scene.figures[cell.figure] = frame;
    sheet.scene.items.push_back(draw_figure(sheet.copy, cell.figure, frame, sheet.symbols));
    sheet.scene.items.push_back(draw_caption(cell, axis, bottom + caption_gap));
  }
  sheet.y = bottom + row.below;
}

/// The heads of the parts that begin in a row, on one level.
void lay_heads(Composing& sheet, const Row& row) {
  double height = 0;
  for (const Head& head : row.heads) {
    if (!has_head(sheet.copy, head.part)) continue;
    Drawn drawn = draw_part_head(sheet.copy, head.part, {margin + head.x, sheet.y}, head.width);
    height = std::max(height, drawn.height + after_head);
    sheet.scene.items.push_back(std::move(drawn.group));
  }
  sheet.y += height;
}

void lay_figures(Composing& sheet, const std::vector<Cell>& cells) {
  bool first = true;
  for (const Row& row : rows_of(sheet.copy, cells, sheet.width)) {
    if (!first) sheet.y += after_row + (row.heads.empty() ? 0 : before_part);
    first = false;
    lay_heads(sheet, row);
    lay_row(sheet, row);
  }
}

void lay_legend(Composing& sheet) {
  if (!sheet.copy.options.legend || sheet.copy.placement.figures.empty()) return;
  sheet.y += after_row + before_legend;
  lay(sheet, draw_legend(sheet.copy, sheet.symbols, {margin, sheet.y}, sheet.width));
}

void lay_closing(Composing& sheet) {
  Drawn closing = draw_closing(sheet.copy, sheet.symbols, {margin, sheet.y + before_closing}, sheet.width);
  if (closing.height == 0) return;
  sheet.y += before_closing;
  lay(sheet, std::move(closing));
}

/// White paper under everything, for viewers that have none.
Fill paper(double width, double height) {
  return {closed_through({{0, 0}, {width, 0}, {width, height}, {0, height}}), ink::paper, {}};
}

void finish(Composing& sheet) {
  sheet.scene.height = std::ceil(sheet.y + margin);
  sheet.scene.items.front() = paper(sheet.scene.width, sheet.scene.height);
  sheet.scene.symbols = sheet.symbols.definitions();
  sheet.scene.language = sheet.copy.tree.language;
  sheet.scene.title =
      sheet.copy.text.title.empty() ? say(sheet.copy.wording, "untitled") : sheet.copy.text.title;
  sheet.scene.description = description(sheet.copy);
}

} // namespace

Scene sheet(const pattern::Tree& tree, const fabric::Fabric& fabric, const layout::Placement& placement,
            const std::vector<Mark>& marks, const SheetText& text, const Wording& wording,
            const SheetOptions& options) {
  const Copy copy{tree, fabric, placement, text, wording, options};
  std::vector<Cell> cells;
  for (std::size_t i = 0; i < placement.figures.size(); ++i) cells.push_back(cell_of(copy, i));
  Composing sheet{copy, {}, SymbolCase(fabric.kinds, marks, options.style, options.stitch)};
  sheet.scene.width = std::ceil(good_width(copy, cells, options.least_width - 2 * margin) + 2 * margin);
  sheet.width = sheet.scene.width - 2 * margin;
  sheet.scene.figures.resize(placement.figures.size());
  sheet.scene.items.push_back(Fill{});
  lay(sheet, draw_title(copy, {margin, margin}, sheet.width));
  sheet.y += after_title;
  lay_figures(sheet, cells);
  lay_loops_below(sheet);
  lay_legend(sheet);
  lay_closing(sheet);
  finish(sheet);
  return std::move(sheet.scene);
}

} // namespace whorl::drawing
