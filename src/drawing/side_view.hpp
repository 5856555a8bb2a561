#pragma once

#include "drawing/legend.hpp"

#include <vector>

namespace whorl::drawing {

/// A part seen from the side: its outline, and which stretch of it each figure shows. A picture, no measure.
struct SideView {
  std::string title;              ///< for those who cannot see it
  std::vector<Point> outline;     ///< of its right half, from the start down, in mm; x from the axis
  std::vector<std::size_t> ends;  ///< where in the outline each figure ends
  std::vector<std::string> names; ///< "fig. 1"
  double axis_top = 0;            ///< where the outline begins; names may reach higher
  double half = 0, height = 0;    ///< greatest distance from the axis; length
  double width = 0;               ///< of it all
};

/// The side view of a part in rounds that is drawn in two figures or more; one without outline for any other.
SideView side_view_of(const Copy& copy, std::uint32_t part);

Drawn draw_side_view(const SideView& view, Point at);

} // namespace whorl::drawing
