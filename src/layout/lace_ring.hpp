#pragma once

#include "layout/bunch.hpp"
#include "layout/heads.hpp"
#include "layout/label.hpp"
#include "layout/obstacles.hpp"
#include "layout/relax.hpp"

#include <optional>
#include <vector>

namespace whorl::layout {

/// A ring of lace: its bunches, each on its own base.
struct LaceRing {
  std::vector<Bunch> bunches;
  std::vector<std::optional<Spotted>> seats; ///< where each bunch wants to stand
  std::vector<double> pull;
  std::vector<double> feet; ///< r of its feet, at least; 0: it hangs beside heads
  double feet_if_none = 1;  ///< where feet would be if all of it hangs
  Lettering label;
  bool pointed = false; ///< a pointer stands between label and first stitch

  double start = 0; ///< place of the first bunch where none has a seat

  // What laying it finds.
  double r = 0;               ///< of the contour along which places count
  std::vector<double> at;     ///< places of the bunches
  std::vector<double> stands; ///< r of their feet
  Point label_start;          ///< of the label's base line
  Point pointer_tip, pointer_direction;
  Strung strung;
};

/// Lays a ring so that it keeps clear of what is inside it. Where a place beside its first stitch is free the
/// label stands there, else in a place of its own before it.
void lay_lace_ring(const Extents& extents, const Rounded& contour, const Obstacles& inside, LaceRing& ring);

/// The items of a bunch where they stand.
std::vector<Item> standing_items(const Rounded& contour, const LaceRing& ring, std::size_t bunch);

/// The ink of a label whose base line begins there.
std::vector<Convex> ink_of_label(const Lettering& label, Point start);

Convex ink_of_pointer(Point tip, Point direction);

/// All ink of a laid ring, its label's box and pointer with it.
std::vector<Convex> ink_of_ring(const Extents& extents, const Rounded& contour, const LaceRing& ring);

} // namespace whorl::layout
