#pragma once

#include "drawing/box.hpp"
#include "drawing/copy.hpp"
#include "drawing/symbol_case.hpp"

#include <string>
#include <vector>

namespace whorl::drawing {

/// One line of the legend: a sample as large as on the chart, its name, what it means.
struct Entry {
  std::string key;          ///< "sc_2", "back", "pointer": what is explained
  std::vector<Item> sample; ///< about (0, 0)
  Box box;                  ///< of the sample
  std::string name;         ///< may be ""
  std::string words;
};

/// An entry for everything that is on the sheet, and for nothing else.
std::vector<Entry> legend_entries(const Copy& copy, SymbolCase& symbols);

/// A drawn piece of furniture and how high it is.
struct Drawn {
  Group group;
  double height = 0;
};

/// How high the legend of these entries is within a width.
double legend_height(const std::vector<Entry>& entries, double width);

/// The legend with its heading, its top left corner at `at`, in columns within `width`.
Drawn draw_legend(const Copy& copy, SymbolCase& symbols, Point at, double width);

} // namespace whorl::drawing
