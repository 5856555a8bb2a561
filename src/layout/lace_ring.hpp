#pragma once

#include "layout/bunch.hpp"
#include "layout/heads.hpp"
#include "layout/label.hpp"
#include "layout/obstacles.hpp"
#include "layout/relax.hpp"

#include <functional>
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

  double start = 0;        ///< place of the first bunch where none has a seat
  double part = 1;         ///< of the contour that it takes, about 12 o'clock; 1: it goes all round
  double least_pushed = 0; ///< it stands at least so much further out
  bool valleys = false;    ///< its fans are round: low stitches stay by their places between them

  // What laying it finds.
  double r = 0;               ///< of the contour along which places count
  double pushed = 0;          ///< how far it had to move out
  std::vector<double> at;     ///< places of the bunches
  std::vector<double> stands; ///< r of their feet
  bool whole = false;         ///< its groups stand further out as a whole, their stems no longer
  std::vector<double> leans;  ///< how far ahead of its head a tall one's foot stands, as a place
  std::vector<double> longer; ///< how much further in a stem's foot stands than it is high
  Point label_start;          ///< of the label's base line
  Point pointer_tip, pointer_direction;
  Strung strung;
};

/// Whether items that stand so have their feet in their own places.
using InPlace = std::function<bool(const std::vector<Item>&)>;

/// Lays a ring so that it keeps clear of what is inside it, and grows until all stand in their places. Where
/// a place beside its first stitch is free the label stands there, else in a place of its own before it.
void lay_lace_ring(const Extents& extents, const Rounded& contour, const Obstacles& inside,
                   const InPlace& in_place, LaceRing& ring);

/// Leans tall stitches that stand aside of where they are wanted, in W along the ring, and lets the stems of
/// those that had to move out reach down.
void lean_to_places(const Rounded& contour, const std::vector<std::optional<double>>& wanted, double pushed,
                    LaceRing& ring);

/// The items of a bunch where they stand.
std::vector<Item> standing_items(const Rounded& contour, const LaceRing& ring, std::size_t bunch);

inline constexpr double label_air = 0.16; ///< round a label

/// Where the base line of a label begins whose middle is there.
Point label_start_at(const Lettering& label, Point middle);

/// The free place for a ring's label that is nearest to its first stitch, if there is one; `ink` is that of
/// its bunches.
std::optional<Point> free_label_start(const Rounded& contour, const LaceRing& ring, const Obstacles& inside,
                                      const std::vector<std::vector<Convex>>& ink);

/// Stands the label of a ring that does not go all round beside the edge where it begins, its pointer before
/// it, `r` from the middle.
void label_row(const Rounded& contour, const Obstacles& inside, const std::vector<std::vector<Convex>>& ink,
               double r, LaceRing& ring);

/// The ink of a label whose base line begins there.
std::vector<Convex> ink_of_label(const Lettering& label, Point start);

Convex ink_of_pointer(Point tip, Point direction);

/// All ink of a laid ring, its label's box and pointer with it.
std::vector<Convex> ink_of_ring(const Extents& extents, const Rounded& contour, const LaceRing& ring);

} // namespace whorl::layout
