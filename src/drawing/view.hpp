#pragma once

#include "drawing/scene.hpp"
#include "layout/direction.hpp"

namespace whorl::drawing {

/// Turns a figure so that one direction of it points up, about a point that moves to the middle of where it
/// is drawn.
struct View {
  Point about, up{0, 1}; ///< of the figure, in W
  Point middle;          ///< of the picture, in mm
  double scale = 1;      ///< mm per W

  Point turned(Point p) const { return {layout::cross(p, up), layout::dot(p, up)}; }
  Point on_sheet(Point p) const {
    const Point from = turned(p - about);
    return {middle.x + scale * from.x, middle.y - scale * from.y};
  }
  Point direction(Point d) const {
    const Point way = turned(d);
    return {way.x, -way.y};
  }
};

/// A figure as it stands in its frame.
inline View view_of(const Frame& frame) { return {{}, {0, 1}, frame.origin, frame.scale}; }

} // namespace whorl::drawing
