#pragma once
/// Whorl's painter: a chart in, PNG or PDF out. Needs Cairo and Pango; `whorl.hpp` does not.

#include "whorl.hpp"

#include <string>
#include <vector>

namespace whorl {

/// A painted sheet.
struct Painting {
  std::string bytes;                      ///< empty if it could not be made
  std::vector<std::string> missing_fonts; ///< what this machine lacks: "a font with Thai letters, for “…”"
  std::string problem;                    ///< why it could not be made, or ""
};

/// A sheet of the chart as a PNG with so many dots to the inch.
Painting png(const Chart& chart, double dots_per_inch = 200, std::size_t sheet = 0);

/// The chart as a PDF with real text and embedded fonts, a page a sheet, always on white.
Painting pdf(const Chart& chart);

/// The pictures of moves, likewise.
Painting png(const Moves& moves, double dots_per_inch = 200);
Painting pdf(const Moves& moves);

/// The sheet of symbols, likewise.
Painting png(const Symbols& symbols, double dots_per_inch = 200);
Painting pdf(const Symbols& symbols);

/// A step as a PNG, and all steps as a PDF, a page each.
Painting png(const Steps& steps, std::size_t step, double dots_per_inch = 254);
Painting pdf(const Steps& steps);

/// All steps side by side on one sheet.
Painting strip_png(const Steps& steps, double dots_per_inch = 254);
Painting strip_pdf(const Steps& steps);

} // namespace whorl
