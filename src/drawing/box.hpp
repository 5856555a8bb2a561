#pragma once

#include "drawing/scene.hpp"

namespace whorl::drawing {

/// An upright rectangle in mm, y downward; empty until something is put into it.
struct Box {
  double left = 1e9, top = 1e9, right = -1e9, bottom = -1e9;
  bool empty() const { return right < left || bottom < top; }
  double width() const { return empty() ? 0 : right - left; }
  double height() const { return empty() ? 0 : bottom - top; }
};

/// Makes `box` hold the point with `air` around it.
void cover(Box& box, Point point, double air = 0);

/// Makes `box` hold another.
void join(Box& box, const Box& other);

/// The box moved by `by`.
Box moved(Box box, Point by);

/// The box of a path with `air` (half a pen) around it; curves are taken at their control points.
Box bounds(const Path& path, double air = 0);

/// The box of a symbol's definition, origin at its foot.
Box bounds(const SymbolDefinition& symbol);

/// The box of what an item inks: pens with their width, all corners of a turned symbol, the letters of a
/// text.
Box bounds(const Item& item, const std::vector<SymbolDefinition>& symbols);

} // namespace whorl::drawing
