#include "drawing/sheet.hpp"

#include "drawing/arrange.hpp"
#include "drawing/caption.hpp"
#include "drawing/figure.hpp"
#include "drawing/furniture.hpp"
#include "drawing/legend.hpp"
#include "drawing/lines.hpp"

#include <algorithm>
#include <cmath>

namespace whorl::drawing {
namespace {

constexpr double after_title = 4.5, before_legend = 11, before_closing = 5;

/// The sheet while it is being composed, from the top down.
struct Composing {
  const Copy& copy;
  Scene scene;
  SymbolCase symbols;
  double width = 0; ///< between the margins
  double y = margin;
};

void lay(Composing& sheet, Drawn drawn) {
  sheet.y += drawn.height;
  sheet.scene.items.push_back(std::move(drawn.group));
}

void lay_row(Composing& sheet, const Row& row, double top) {
  const double bottom = top + row.above;
  for (std::size_t i = 0; i < row.cells.size(); ++i) {
    const Cell& cell = row.cells[i];
    const double axis = margin + row.x[i];
    const Frame frame{{axis - (cell.box.left + cell.box.right) / 2, bottom - cell.box.bottom},
                      sheet.copy.options.stitch};
    sheet.scene.figures[cell.figure] = frame;
    sheet.scene.items.push_back(draw_figure(sheet.copy, cell.figure, frame, sheet.symbols));
    sheet.scene.items.push_back(draw_caption(cell, axis, bottom + caption_gap));
  }
}

/// The heads of the parts that begin in a row, on one level.
void lay_heads(Composing& sheet, const Row& row, double top) {
  for (const Head& head : row.heads)
    if (has_head(sheet.copy, head.part))
      sheet.scene.items.push_back(
          draw_part_head(sheet.copy, head.part, {margin + head.x, top}, head.width).group);
}

void lay_arranged(Composing& sheet, const Arrangement& arranged, const std::vector<Block>& blocks) {
  for (std::size_t i = 0; i < arranged.rows.size(); ++i) {
    lay_heads(sheet, arranged.rows[i], sheet.y + arranged.heads[i]);
    lay_row(sheet, arranged.rows[i], sheet.y + arranged.tops[i]);
  }
  for (const StandingBlock& block : arranged.blocks)
    sheet.scene.items.push_back(
        draw_block(sheet.copy, blocks[block.block], block.setting, Point{margin, sheet.y} + block.at).group);
  sheet.y += arranged.height;
}

void lay_legend(Composing& sheet) {
  if (!sheet.copy.options.legend || sheet.copy.placement.figures.empty()) return;
  sheet.y += before_legend;
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
  const std::vector<Block> blocks = blocks_of(copy);
  const Arrangement arranged = best_arrangement(copy, cells, blocks, options.least_width - 2 * margin);
  sheet.scene.width = std::ceil(arranged.width + 2 * margin);
  sheet.width = sheet.scene.width - 2 * margin;
  sheet.scene.figures.resize(placement.figures.size());
  sheet.scene.items.push_back(Fill{});
  lay(sheet, draw_title(copy, {margin, margin}, sheet.width));
  sheet.y += after_title;
  lay_arranged(sheet, arranged, blocks);
  lay_legend(sheet);
  lay_closing(sheet);
  finish(sheet);
  return std::move(sheet.scene);
}

} // namespace whorl::drawing
