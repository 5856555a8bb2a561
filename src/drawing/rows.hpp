#pragma once

#include "drawing/box.hpp"
#include "drawing/copy.hpp"

#include <string>
#include <vector>

namespace whorl::drawing {

/// A figure with its caption, both centred on one upright axis.
struct Cell {
  std::size_t figure = 0;
  std::uint32_t part = 0;
  Box box;                          ///< of the figure about its origin
  std::string number;               ///< "Fig. 2"; "": it has no caption
  std::vector<std::string> caption; ///< behind the number, line by line
  double side = 0;                  ///< how far it all reaches to either side of the axis
};

/// The head of a part above its first figure.
struct Head {
  std::uint32_t part = 0;
  double x = 0, width = 0;
};

/// Cells side by side, bottoms level; `x`: where the axis of each stands.
struct Row {
  std::vector<Cell> cells;
  std::vector<double> x;
  std::vector<Head> heads;
  double above = 0, below = 0; ///< the highest figure; its caption and the air before it
};

/// The cell of a figure; its caption is broken into lines where it is wider than the figure.
Cell cell_of(const Copy& copy, std::size_t figure);

/// Groups the cells of a part into rows no wider than `width`, its head above the first; axes stand in columns
/// where the figures' sizes allow it.
std::vector<Row> rows_of(const std::vector<Cell>& cells, double width);

/// The caption under a figure, whose axis and base line are given.
Group draw_caption(const Cell& cell, double x, double y);

/// Air between a figure and the base line of its caption.
inline constexpr double caption_gap = 6.5;

} // namespace whorl::drawing
