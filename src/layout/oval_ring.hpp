#pragma once

#include "layout/line.hpp"
#include "layout/own_place.hpp"
#include "layout/ring.hpp"
#include "layout/stadium.hpp"

#include <cstdint>
#include <optional>
#include <vector>

namespace whorl::layout {

/// A round on its way round an oval. What stands on it, in order of work: the chains that begin it as one
/// column, then every symbol; the dot of the slip stitch that joins it stands beside the first of them.
struct OvalRing {
  std::vector<Item> items;
  Band band;
  std::vector<Stand> stands;
  bool joined = false;                       ///< its last item is that dot
  std::vector<std::optional<double>> wanted; ///< where each stand would like to be, on the contour at 1
  std::vector<double> pull;
  double inner = 0; ///< its feet stand at least so far out
  bool cut = false; ///< the end of the yarn is marked outside its last stitch
  Size size;
  Strung strung;
  std::vector<double> at;   ///< of the stands
  std::vector<Foot> feet;   ///< of the stands, each from its ray
  bool held = true;         ///< all of them are by their own places …
  std::size_t not_held = 0; ///< … or so many are not
};

/// Contours at which seats are kept.
inline constexpr double seat_radius = 1;

/// What a ring has to keep clear of, besides its own stitches.
struct Around {
  double high = 0;              ///< ink of the ring inside it reaches so far
  std::vector<Convex> labels;   ///< of the rings inside
  std::vector<Convex> stitches; ///< of the ring inside
  const fabric::Fabric* fabric = nullptr;
  std::vector<Head> heads; ///< of the ring inside, on the contour at 1
};

/// Gathers the stands of a ring of these items, `chains` of them in front on end.
void set_oval_stands(const Extents& extents, std::uint32_t chains, bool counting, Hand hand, OvalRing& ring);

/// Where a ring's label begins, its middle line there, on a contour.
Point label_start(const OvalRing& ring, const Stadium& stadium, double middle);

/// Finds the least contour on which everything has room, and lays the ring there.
void lay_oval_ring(const Extents& extents, const Stadium& stadium, const Around& around, OvalRing& ring);

/// An item where it stands.
Item stood_on(const Extents& extents, const Stadium& stadium, const OvalRing& ring, std::uint32_t item);

/// What a label and its pointer cover.
std::vector<Convex> label_ink(const OvalRing& ring, const Stadium& stadium, double middle);

} // namespace whorl::layout
