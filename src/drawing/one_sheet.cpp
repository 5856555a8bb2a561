#include "drawing/one_sheet.hpp"

#include "drawing/caption.hpp"
#include "drawing/figure.hpp"
#include "drawing/furniture.hpp"
#include "drawing/legend.hpp"
#include "drawing/lines.hpp"

#include <algorithm>
#include <cmath>

namespace whorl::drawing {
namespace {

constexpr double after_title = 4.5, before_legend = 11, before_closing = 5, closing_below_parts = 9;
constexpr double rounding = 1e-6;
constexpr double close_margin = 2; ///< round figures that are to be placed on a page

/// The sheet while it is being composed, from the top down.
struct OneSheet {
  const Copy& copy;
  Scene scene;
  SymbolCase symbols;
  double edge = margin; ///< white round everything
  double width = 0;     ///< between the margins
  double y = margin;
};

void lay(OneSheet& sheet, Drawn drawn) {
  sheet.y += drawn.height;
  sheet.scene.items.push_back(std::move(drawn.group));
}

void lay_title(OneSheet& sheet) {
  if (sheet.copy.options.figures_only) return;
  lay(sheet, draw_title(sheet.copy, {sheet.edge, sheet.edge}, sheet.width));
  sheet.y += after_title;
}

void lay_cell(OneSheet& sheet, const StandingCell& standing) {
  const Cell& cell = standing.cell;
  const Point at = Point{sheet.edge, sheet.y} + standing.at;
  const Frame frame{{at.x - (cell.box.left + cell.box.right) / 2, at.y - cell.box.bottom},
                    sheet.copy.options.stitch};
  sheet.scene.figures[cell.figure] = frame;
  sheet.scene.items.push_back(draw_figure(sheet.copy, cell.figure, frame, sheet.symbols));
  if (!cell.number.empty()) sheet.scene.items.push_back(draw_caption(cell, at.x, at.y + caption_gap));
}

void lay_arranged(OneSheet& sheet, const Arrangement& arranged, const std::vector<Block>& blocks) {
  const Point corner{sheet.edge, sheet.y};
  std::size_t cell = 0;
  for (const StandingHead& head : arranged.heads) {
    sheet.scene.items.push_back(draw_part_head(sheet.copy, head.part, corner + head.at, head.width).group);
    for (; cell < arranged.cells.size() && arranged.cells[cell].cell.part == head.part; ++cell)
      lay_cell(sheet, arranged.cells[cell]);
  }
  for (; cell < arranged.cells.size(); ++cell) lay_cell(sheet, arranged.cells[cell]);
  for (const StandingBlock& block : arranged.blocks)
    sheet.scene.items.push_back(
        draw_block(sheet.copy, blocks[block.block], block.setting, corner + block.at).group);
}

Copy whole(const Copy& copy) {
  return {copy.tree, copy.fabric, copy.placement, copy.text, copy.wording, copy.options};
}

bool has_figures(const Copy& copy) {
  return copy.first_figure < std::min(copy.end_figure, copy.placement.figures.size());
}

/// The legend under everything.
void lay_legend(OneSheet& sheet, Explains explains) {
  const Copy copy = explains == Explains::everything ? whole(sheet.copy) : sheet.copy;
  if (!sheet.copy.options.legend || explains == Explains::nothing || !has_figures(copy)) return;
  sheet.y += before_legend;
  lay(sheet, draw_legend(copy, sheet.symbols, {sheet.edge, sheet.y}, sheet.width));
}

/// The legend among the parts.
void lay_legend_aside(OneSheet& sheet, const Arrangement& arranged) {
  const Point at = Point{sheet.edge, sheet.y} + arranged.legend;
  sheet.scene.items.push_back(draw_legend(sheet.copy, sheet.symbols, at, arranged.legend_width).group);
}

void lay_closing(OneSheet& sheet, double gap) {
  Drawn closing = draw_closing(sheet.copy, sheet.symbols, {sheet.edge, sheet.y + gap}, sheet.width);
  if (closing.height == 0) return;
  sheet.y += gap;
  lay(sheet, std::move(closing));
}

/// White paper under everything, for viewers that have none.
Fill paper(double width, double height) {
  return {closed_through({{0, 0}, {width, 0}, {width, height}, {0, height}}), ink::paper, {}};
}

OneSheet begun(const Copy& copy, const std::vector<Mark>& marks, const Carried& carried,
               const Arrangement& arranged) {
  const SheetOptions& options = copy.options;
  OneSheet sheet{copy, {}, SymbolCase(copy.fabric.kinds, marks, options.style, options.stitch)};
  if (options.figures_only && carried.paper.width == 0) sheet.edge = close_margin;
  sheet.y = sheet.edge;
  const double needed = arranged.width + 2 * sheet.edge;
  sheet.scene.width = needed <= carried.paper.width + rounding ? carried.paper.width : std::ceil(needed);
  sheet.width = sheet.scene.width - 2 * sheet.edge;
  sheet.scene.figures.resize(copy.placement.figures.size(), Frame{{}, 0});
  sheet.scene.paper = options.paper;
  if (options.paper) sheet.scene.items.push_back(Fill{});
  return sheet;
}

/// Everything below the figures.
void lay_foot(OneSheet& sheet, const Carried& carried, const Arrangement& arranged) {
  if (sheet.copy.options.figures_only) return;
  if (arranged.legend_width == 0) lay_legend(sheet, carried.legend);
  if (carried.closing) lay_closing(sheet, arranged.legend_width == 0 ? before_closing : closing_below_parts);
}

/// Closing lines may stand half-way into the lower margin of a size of paper.
double height_on(const OneSheet& sheet, const Paper& size) {
  if (sheet.y + sheet.edge / 2 <= size.height) return size.height;
  return std::ceil(sheet.y + sheet.edge);
}

void finish(OneSheet& sheet, const Paper& size) {
  sheet.scene.height = height_on(sheet, size);
  if (sheet.scene.paper) sheet.scene.items.front() = paper(sheet.scene.width, sheet.scene.height);
  sheet.scene.symbols = sheet.symbols.definitions();
  sheet.scene.language = sheet.copy.text.language;
  sheet.scene.title =
      sheet.copy.text.title.empty() ? say(sheet.copy.wording, "untitled") : sheet.copy.text.title;
  sheet.scene.description = description(sheet.copy);
}

} // namespace

LegendHeight legend_height(const Copy& copy, const std::vector<Mark>& marks) {
  const SheetOptions& options = copy.options;
  if (!options.legend || options.figures_only || !has_figures(copy)) return {};
  SymbolCase symbols(copy.fabric.kinds, marks, options.style, options.stitch);
  return [entries = legend_entries(copy, symbols)](double width) { return legend_height(entries, width); };
}

std::vector<Cell> cells_of(const Copy& copy) {
  std::vector<Cell> cells;
  for (std::size_t i = 0; i < copy.placement.figures.size(); ++i)
    if (is_on_sheet(copy, i)) cells.push_back(cell_of(copy, i));
  return cells;
}

double height_of(const Copy& copy, const std::vector<Mark>& marks, const Carried& carried,
                 const Arrangement& arranged) {
  OneSheet sheet = begun(copy, marks, carried, arranged);
  lay_title(sheet);
  sheet.y += arranged.height;
  lay_foot(sheet, carried, arranged);
  return std::ceil(sheet.y + sheet.edge);
}

Scene compose(const Copy& copy, const std::vector<Mark>& marks, const Carried& carried,
              const Arrangement& arranged) {
  OneSheet sheet = begun(copy, marks, carried, arranged);
  lay_title(sheet);
  lay_arranged(sheet, arranged, carried.blocks);
  if (arranged.legend_width > 0) lay_legend_aside(sheet, arranged);
  sheet.y += arranged.height;
  lay_foot(sheet, carried, arranged);
  finish(sheet, carried.paper);
  return std::move(sheet.scene);
}

} // namespace whorl::drawing
