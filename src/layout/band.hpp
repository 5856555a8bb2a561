#pragma once

#include "layout/label.hpp"
#include "layout/owner.hpp"
#include "layout/place.hpp"

#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <vector>

namespace whorl::layout {

/// Where beside a symbol the loop of one of its stitches is drawn; its origin is the symbol's foot.
struct LoopPlace {
  std::uint32_t which = 0; ///< of the symbol's stitches
  Point at;
  Sign sign = Sign::free_loop; ///< or what marks it as one that two parts share
};

/// An item of a group that stands as one: where it stands beside the group's foot, outward being up.
struct InGroup {
  Item item;
  const SymbolExtent* shape = nullptr;
  bool on_end = false; ///< a chain of several, one above the other
};

/// What a ring is made of, before it has a radius.
struct Band {
  std::vector<const SymbolExtent*> shapes; ///< the different ones
  std::vector<std::uint32_t> how_many;     ///< items of each
  std::vector<std::uint32_t> shape_of;     ///< for every item, which of `shapes`
  std::vector<double> slot;                ///< the slot of each of `shapes`
  std::vector<double> wants; ///< for every item, the slot it has instead of its shape's; or none
  double height = 0.8;       ///< from the feet's circle to the heads'
  double on_heads = 0;       ///< what stands on the heads reaches so far outside them
  double slots = 0;          ///< all slots added up
  bool loop_marks = false;
  bool break_outside = false; ///< a break line stands outside it
  double room_outside = 0;    ///< more room there, for what is placed between it and the next ring
  double gutter = 0;          ///< at least so wide, for the labels outside it
  double further = 0;      ///< it stands so much further out than it must: only there all are by their places
  double room_at_feet = 0; ///< what is placed on its feet's side reaches so far
  bool free_loops = false; ///< loops drawn outside its heads
  bool loops_below = false;                          ///< … on its other side instead
  bool against = false;                              ///< its stitches' own order runs the other way
  std::vector<std::vector<LoopPlace>> loops;         ///< for each of `shapes`
  std::vector<std::unique_ptr<SymbolExtent>> marked; ///< those of `shapes` that are more than their symbol
  std::vector<Item> column; ///< chains on end in the first item's place; that item stands for them
  double chain_height = 0;  ///< of one of them, across
  std::optional<InGroup> join; ///< the dot that joins the round, as it stands to the first item
  std::vector<std::vector<InGroup>> groups; ///< for each of `shapes` that is one, what stands in it
  Lettering label;
};

/// What stands in an item that is a group; none: it is none.
inline const std::vector<InGroup>* group_in(const Band& band, std::size_t shape) {
  return shape < band.groups.size() && !band.groups[shape].empty() ? &band.groups[shape] : nullptr;
}

/// The slot of an item.
inline double slot_of(const Band& band, std::size_t item) {
  return band.wants.empty() ? band.slot[band.shape_of[item]] : band.wants[item];
}

/// Collects the shapes of a ring's items. An echo, on one side of which nothing stands, needs room for its
/// tops only.
Band band_of(const std::vector<Item>& items, const Extents& extents, bool echo);

/// Gives the first item a shape of its own.
void shape_first(SymbolExtent shape, double slot, Band& band);

/// Which loops of a ring are drawn: those of `kept`, and before the first item the mark where yarn is joined;
/// `below`: on the other side than their heads, which a starting chain has.
struct Looping {
  const std::vector<Kept>& kept;
  Hand hand = Hand::right;
  bool attach = false;
  bool below = false;
};

/// Gives the loops of a ring's stitches their room: its symbols and what stands outside their heads become
/// one shape.
void draw_loops(const std::vector<Item>& items, const Looping& looping, Band& band);

/// The hand that works from right to left; the other.
constexpr Hand hand_of(bool leftward) { return leftward ? Hand::right : Hand::left; }

/// The loop that work meets first.
Point first_met(const std::vector<LoopPlace>& places, Hand hand);

/// Where the mark for joining yarn stands beside the first loop, its up direction away from it.
Point attach_place(Point loop, Hand hand);
Point attach_up(Hand hand);

} // namespace whorl::layout
