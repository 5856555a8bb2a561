#pragma once

#include "layout/figure.hpp"

#include <vector>

namespace whorl::layout {

/// The loops that are drawn: those that a figure's own rounds keep, and of its owner those that it uses.
struct Keeping {
  const std::vector<Kept>& own;
  const std::vector<Kept>* owners = nullptr;
};

inline Keeping keeping_of(const Plan& plan) { return {plan.kept, plan.owner ? &plan.owner->kept : nullptr}; }

/// Draws the loops that a ring keeps for later parts, with their letters, and the mark for joining yarn at
/// the first one of an owner.
void add_loops(const Keeping& keeping, const std::vector<Band>& bands, const Extents& extents, Hand hand,
               Figure& figure);

/// Numbers the stitches of the owner in its own order, on the side of their feet; they reach so far from
/// these.
void add_owner_numbers(const fabric::Fabric& fabric, const Extents& extents, Figure& figure);
inline constexpr double owner_numbers_reach = 1.25;

/// Puts eyes, markers and beads into their holes, each in the roomiest place near it. Returns the rings
/// outside which one found no room (in discs inward -1 for the middle); there the figure must be laid again
/// with more.
std::vector<int> add_posts(const fabric::Fabric& fabric, const Extents& extents, Figure& figure,
                           int again = 0);

/// Numbers every tenth stitch where posts must be found by counting: with ticks beyond `edge` (a radius, the
/// height of a line) where the outermost ring has the same stitches, else beside the ring. Returns as
/// `add_posts` does.
std::vector<int> add_ticks(const fabric::Fabric& fabric, const Extents& extents, double edge, Figure& figure,
                           int again = 0);

/// Says where the front is, at the bottom of a figure in which something is placed that no pair of eyes
/// shows.
void add_front(const fabric::Fabric& fabric, const Extents& extents, const Page& page, double edge,
               Figure& figure);

} // namespace whorl::layout
