#pragma once

#include "drawing/sheet.hpp"

#include <cstddef>

namespace whorl::drawing {

/// What a sheet is composed from: the pattern, its fabric, where everything stands, and the words.
struct Copy {
  const pattern::Tree& tree;
  const fabric::Fabric& fabric;
  const layout::Placement& placement;
  const SheetText& text;
  const Wording& wording;
  const SheetOptions& options;
  std::size_t first_figure = 0, end_figure = std::size_t(-1); ///< of the placement: those on this sheet
};

/// Whether a figure of the placement stands on the sheet.
inline bool is_on_sheet(const Copy& copy, std::size_t figure) {
  return copy.first_figure <= figure && figure < copy.end_figure;
}

} // namespace whorl::drawing
