#pragma once
/// Pictures as dots, for tests: a PNG or an SVG comes in, colours of dots and how far two pictures differ go
/// out.

#include <cstdint>
#include <string>
#include <vector>

namespace whorl::pictures {

/// Dots row by row from the top, each 0xRRGGBB.
struct Raster {
  int width = 0;
  int height = 0;
  double dots_per_mm = 0; ///< 0: the picture does not say
  std::vector<std::uint32_t> dots;

  std::uint32_t at(int x, int y) const { return dots[static_cast<std::size_t>(y) * width + x]; }
};

/// The dots of a PNG; none if it is not one.
Raster decode(const std::string& png);

/// An SVG drawn by librsvg on white paper, as large as `like` and in its scale; none if it cannot be read.
Raster render_svg(const std::string& svg, const Raster& like);

/// The first page of a PDF drawn by Poppler in the same manner.
Raster render_pdf(const std::string& pdf, const Raster& like);

/// How far two colours are apart: the largest of their three differences, 0 to 255.
int apart(std::uint32_t one, std::uint32_t other);

/// How far two pictures differ.
struct Difference {
  double strongly = 1; ///< share of dots that are more than a quarter of the range apart
  double mean = 1;     ///< mean of the dots' differences, as a share of the range
};

/// Pictures of different size, or without dots, differ wholly.
Difference difference(const Raster& one, const Raster& other);

/// The PNG against the SVG, drawn at the PNG's size and scale.
Difference difference(const std::string& svg, const std::string& png);

} // namespace whorl::pictures
