#pragma once
/// Room `paint`: the scene comes in; PNG and PDF go out. Cairo and Pango are named here and nowhere else.

#include "drawing/scene.hpp"

#include <string>
#include <vector>

namespace whorl::paint {

struct Painted {
  std::string bytes;                      ///< empty: could not be made
  std::vector<std::string> missing_fonts; ///< "the font DejaVu Sans", "a font with Thai letters, for “…”"
  std::string problem;                    ///< why bytes are empty, in plain words
};

/// A PNG holds at most so many dots in a row or column, and in all (four bytes each while it is drawn).
inline constexpr int most_dots_a_side = 32'000;
inline constexpr double most_dots = 100e6;

/// A page of a PDF is at most 14 400 points wide or high.
inline constexpr int most_mm_a_page = 5'080;

/// A PNG, 8 bit, at so many dots per inch; clear where a scene without paper has no ink.
Painted png(const drawing::Scene& scene, double dots_per_inch = 200);

/// A PDF with real text, embedded fonts, title, language and a fixed date, a page a sheet, on white paper.
Painted pdf(const std::vector<const drawing::Scene*>& sheets);
Painted pdf(const drawing::Scene& scene);

} // namespace whorl::paint
