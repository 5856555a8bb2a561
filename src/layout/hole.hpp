#pragma once

#include "layout/place.hpp"
#include "layout/stadium.hpp"

#include <cstdint>
#include <vector>

namespace whorl::layout {

/// A place beside a stitch or between two: where, and which way is up there.
struct Spot {
  Point at;
  Point up{0, 1};
};

bool is_disc(const Figure& figure);

/// Whether it is one or an oval: its rings go round its middle.
bool goes_round(const Figure& figure);

/// Whether loops for another part are drawn on a ring.
bool keeps_loops(const Figure& figure, std::uint32_t ring);

/// The contours of an oval, or of a disc, whose core is a point.
Stadium stadium_of(const Figure& figure);

/// The way round an oval along the middle of one of its rings.
Lap lap_of(const Ring& ring);

/// The heads of a ring's stitches that have a top, in the order of their round: the n-th is that of stitch n
/// + 1.
std::vector<Spot> heads_of(const fabric::Fabric& fabric, const Figure& figure, std::uint32_t ring);

/// The ring that shows a round, echoes apart; none where the figure has none.
std::uint32_t ring_of(const Figure& figure, std::uint32_t round);

/// Half-way from a head to the ring that is worked into it, or beyond all that stands outside it.
Spot beyond_head(const Figure& figure, std::uint32_t ring, const Spot& head);

/// The hole behind stitch `after` of a ring, half-way to the ring that is worked into it.
Spot hole_after(const fabric::Fabric& fabric, const Figure& figure, std::uint32_t ring, std::uint32_t after);

/// On which side of a ring the ring lies that is worked into it: 1 outward (upward), -1 inward.
int side_of_heads(const Figure& figure);

} // namespace whorl::layout
