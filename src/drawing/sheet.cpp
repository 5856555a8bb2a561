#include "drawing/sheet.hpp"

#include "drawing/furniture.hpp"
#include "drawing/one_sheet.hpp"

#include <algorithm>

namespace whorl::drawing {
namespace {

/// Figures alone need no more paper than they are wide.
void shrink(Arrangement& arranged) {
  arranged.width = 0;
  for (const StandingCell& cell : arranged.cells)
    arranged.width = std::max(arranged.width, cell.at.x + cell.cell.side);
}

} // namespace

Scene sheet(const pattern::Tree& tree, const fabric::Fabric& fabric, const layout::Placement& placement,
            const std::vector<Mark>& marks, const SheetText& text, const Wording& wording,
            const SheetOptions& options) {
  const Copy copy{tree, fabric, placement, text, wording, options};
  const Carried carried{blocks_of(copy), Explains::its_own, true, {}};
  Arrangement arranged = best_arrangement(copy, cells_of(copy), carried.blocks,
                                          options.least_width - 2 * margin, legend_height(copy, marks));
  if (options.figures_only) shrink(arranged);
  return compose(copy, marks, carried, arranged);
}

} // namespace whorl::drawing
