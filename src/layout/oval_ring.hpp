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
  std::vector<std::optional<double>> wanted; ///< where each stand would like to be, on `seats_lap`
  std::vector<double> pull;
  double inner = 0; ///< its feet stand at least so far out
  bool cut = false; ///< the end of the yarn is marked outside its last stitch
  Size size;
  Lap lap;                  ///< along its middle
  double label_further = 0; ///< from its pointer, where it would touch the label inside
  Strung strung;
  std::vector<double> at;   ///< of the stands
  std::vector<Foot> feet;   ///< of the stands, each from its ray
  bool held = true;         ///< all of them are by their own places …
  std::size_t not_held = 0; ///< … or so many are not
};

/// Where seats are kept.
inline constexpr Lap seats_lap{1, 0};

/// What a ring has to keep clear of, besides its own stitches.
struct Around {
  double high = 0;              ///< ink of the ring inside it reaches so far
  std::vector<Convex> labels;   ///< of the rings inside
  std::vector<Convex> stitches; ///< of the ring inside
  const fabric::Fabric* fabric = nullptr;
  std::vector<Head> heads; ///< of the ring inside, on `seats_lap`
  Lap begins;              ///< the way along the ring inside; for the first ring: about where it begins
};

/// Gathers the stands of a ring of these items, `chains` of them in front on end.
void set_oval_stands(const Extents& extents, std::uint32_t chains, bool counting, Hand hand, OvalRing& ring);

/// Finds the least lap on which everything has room, and lays the ring there. It begins square to where the
/// ring inside does, turned on by what its stitches ask for.
void lay_oval_ring(const Extents& extents, const Stadium& stadium, const Around& around, OvalRing& ring);

/// An item where it stands.
Item stood_on(const Extents& extents, const Stadium& stadium, const OvalRing& ring, std::uint32_t item);

} // namespace whorl::layout
