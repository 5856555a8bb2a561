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

/// The cell of a figure; its caption is broken into lines where it is wider than the figure.
Cell cell_of(const Copy& copy, std::size_t figure);

/// How far its caption reaches below a figure's lower edge.
double below(const Cell& cell);

/// The caption under a figure, whose axis and base line are given.
Group draw_caption(const Cell& cell, double x, double y);

/// Air between a figure and the base line of its caption.
inline constexpr double caption_gap = 6.5;

} // namespace whorl::drawing
