#pragma once

#include "drawing/marks.hpp"
#include "fabric/fabric.hpp"
#include "layout/place.hpp"

#include <vector>

namespace whorl::drawing {

/// How symbols are drawn.
struct Style {
  enum class Single { cross, plus } single = Single::cross; ///< sc as x or +
  bool stroked = false; ///< each leg of sc worked in or off one place carries a short stroke, as an sc does
};

/// A composed symbol: its pens in W, y upward, origin at its foot, and what layout must know of it.
struct Composed {
  std::vector<Pen> pens;
  layout::SymbolExtent extent;
};

/// Composes a stitch's symbol from marks by its shape; `height` overrides the stem (0: the kind's own).
Composed compose(const stitch::StitchKind& kind, const layout::SymbolKey& key, const std::vector<Mark>& marks,
                 const Style& style = {}, double height = 0);

/// A mark as it stands at a point, turned so that its up direction is `up` (a unit vector).
std::vector<Pen> put(const Mark& mark, Point at, Point up = {0, 1}, double scale = 1);

/// Pens of W, y upward, as a scene takes them: `millimetres` to the W, y downward.
std::vector<Pen> in_millimetres(std::vector<Pen> pens, double millimetres);

/// The extents of every symbol a fabric needs, and the widths of label texts.
layout::Extents extents_of(const fabric::Fabric& fabric, const std::vector<Mark>& marks,
                           const Style& style = {});

} // namespace whorl::drawing
