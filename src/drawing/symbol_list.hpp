#pragma once

#include "drawing/legend.hpp"

#include <string>
#include <vector>

namespace whorl::drawing {

/// Symbols that belong together, as a legend explains them.
struct SymbolGroup {
  std::string id;      ///< "stitches", "increases", "marks" …
  std::string heading; ///< the same in words
  std::vector<Entry> entries;
};

/// What is on a sheet, and nothing else, in groups: stitches, increases, decreases, groups in one stitch,
/// loops, marks.
std::vector<SymbolGroup> symbol_list(const Copy& copy, SymbolCase& symbols);

/// A sheet that has every symbol the tool knows, made up; its figures are not for drawing.
struct Everything {
  pattern::Tree tree;
  fabric::Fabric fabric;
  layout::Placement placement;
};
Everything every_symbol(const std::string& language);

/// The symbols as a sheet of their own.
Scene symbols_sheet(const Copy& copy, const std::vector<Mark>& marks);

} // namespace whorl::drawing
