#pragma once

#include "pattern/tree.hpp"

#include <vector>

namespace whorl::pattern {

/// What a body does to the edge; `kinds` holds every kind that its nodes name.
Effect effect_of(const std::vector<Node>& nodes, NodeId body, const std::vector<stitch::StitchKind>& kinds);

/// Whether an act opens places that the round before does not have.
bool opens_edge(Act act);

/// What one piece of work does; `placed`: a place was taken before it, so that `same` uses none.
Effect effect_of_work(const Work& work, const stitch::StitchKind& kind, bool placed = true);

/// Whether anything in it runs to the end of the round.
bool runs_to_end(const Effect& effect);

/// Whether work finds its place by itself, whatever stitches stand before it: a chain space, between two
/// groups, the middle of one.
constexpr bool goes_between(Where where) {
  return where == Where::space || where == Where::between || where == Where::centre;
}

/// A kind that is only a chain: its runs make chain spaces.
bool is_chain(const stitch::StitchKind& kind);

/// A chain that counts as a stitch, after which the work is turned and ends: it is the next row's first
/// stitch; `no_node` if there is none.
NodeId carried_chain(const std::vector<Node>& nodes, NodeId body,
                     const std::vector<stitch::StitchKind>& kinds);

/// The chains after which the work is turned and ends, whether they count or not; `no_node` if there are
/// none.
NodeId turning_chain(const std::vector<Node>& nodes, NodeId body,
                     const std::vector<stitch::StitchKind>& kinds);

/// Slip stitches: behind what runs to the end of a round they go into the round just made, and use nothing.
bool slips(const Work& work, const stitch::StitchKind& kind);

/// One effect after another. Sums stop at the largest number.
Effect then(const Effect& a, const Effect& b);

/// `inner` so many times.
Effect times(const Effect& inner, std::uint32_t n);

/// `inner` again and again to the end of the round but for the last `leave` places.
Effect to_end(const Effect& inner, std::uint32_t leave);

/// All that `inner` makes goes into one place, as often as `work` says.
Effect into_one_place(const Work& work, const Effect& inner);

} // namespace whorl::pattern
