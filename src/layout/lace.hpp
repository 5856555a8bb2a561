#pragma once

#include "layout/figure.hpp"
#include "layout/lace_ring.hpp"

#include <vector>

namespace whorl::layout {

/// Whether a round is worked into chain spaces.
bool works_in_spaces(const fabric::Fabric& fabric, std::uint32_t round);

/// Whether it works into many spaces, each of two chains or fewer, one stitch each; or into none.
bool is_net(const fabric::Fabric& fabric, std::uint32_t round);

/// Whether a disc is drawn as lace: outward, worked into spaces, and with nothing that asks for a gutter.
bool is_lace(const fabric::Fabric& fabric, const Plan& plan);

/// Of what form a motif is, and where its first round begins.
struct Outline {
  int corners = 0;      ///< 0: round
  double corner = 0.25; ///< radius of a corner, of the distance of a side from the middle
  double start = 0;
  std::vector<std::uint32_t> spaces; ///< those that groups of corners go into
};

/// A figure of lace and what the tests look at: its rings.
struct Lace {
  Figure figure;
  Rounded contour;
  std::vector<LaceRing> rings;
};

/// The contours of one of its rings, in its own direction.
Rounded contour_of(const Lace& lace, const Ring& ring);

/// The groups of a ring that may be corners: those with chains in them, or of three stitches and more.
std::vector<std::size_t> groups_of(const LaceRing& ring, bool with_chains);

/// Three to six groups with chains in them, in every round of spaces from the first that has any, are the
/// corners of a motif. It is turned until those of the first lie in its corners.
Outline outline_of(const fabric::Fabric& fabric, const Lace& lace);

/// Stands groups that are near a corner in it, drawn there by `pull`; as many in one stitch each as there are
/// corners one after another.
void draw_to_corners(int corners, double pull, LaceRing& ring);

/// The same for the one group that is near 12 o'clock.
void draw_to_spine(double pull, LaceRing& ring);

/// Hangs the chains of spaces that groups of corners go into in the corner that is nearest to them.
void hang_in_corners(const fabric::Fabric& fabric, const Outline& outline, double pull, LaceRing& ring);

/// Lets the stitches of a first ring share it evenly, its spaces in the corners, if it has one for each.
void share_out(int corners, double pull, LaceRing& ring);

Lace draw_lace(const fabric::Fabric& fabric, const Plan& plan, const Extents& extents, const Page& page);

} // namespace whorl::layout
