#pragma once

#include "drawing/symbol.hpp"
#include "layout/direction.hpp"

#include <string_view>
#include <vector>

namespace whorl::drawing {

/// Where a mark is put into a symbol: its origin, and what its x and y directions become.
struct Standing {
  Point at;
  Point across{1, 0};
  Point along{0, 1};
};

/// A mark that stands at a point, its up direction `up`.
Standing upright(Point at, Point up, double scale = 1);

/// A symbol being composed: the marks that it is made of, and the ink so far.
struct Composing {
  const std::vector<Mark>& marks;
  Style style;
  Composed out;

  /// Adds a mark; pens keep their width.
  void put(std::string_view name, const Standing& standing);

  /// Draws a mark that is one W tall out from `foot` to `top`.
  void stretch(std::string_view name, Point foot, Point top, double across = 1);
};

/// n points side by side at a height, their middle at x = 0.
std::vector<Point> in_line(int n, double pitch, double y);

} // namespace whorl::drawing
