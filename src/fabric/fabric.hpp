#pragma once
/// Room `fabric`: the tree comes in; the fabric, a graph of stitches with every leg in its place, goes out,
/// with what it says about counts. The fabric's tally is *the* count. Nothing here reads text or knows a
/// page.
///
/// A starting chain of a part is a round of its own, number 0 and kind chain, that stands before the part's
/// first round (`Part::foundation`). Its chains are stitches with no leg that do not count. Chains are
/// numbered from the hook where something is worked into them, as the trade does: `cap-0-ch-2` is the second
/// chain from the hook.

#include "pattern/tree.hpp"
#include "stitch/kind.hpp"

#include <cstdint>
#include <string>
#include <vector>

namespace whorl::fabric {

using StitchId = std::uint32_t;
inline constexpr std::uint32_t none = 0xFFFFFFFF;

enum StitchFlag : std::uint8_t {
  counts = 1,       ///< counted in its round
  joins = 2,        ///< a slip stitch that joins a round, or leads to where it begins: no stitch of the round
  starts_chain = 4, ///< of a starting or turning chain
  holds_part = 8,   ///< goes through the edge of another part too: its legs there stand behind its own
  two_layers = 16,  ///< goes through the edge of its own part twice, laid flat: the second half of its legs
  holds_unseen = 32, ///< goes through another part that no stitch stands for here
};

/// 16 bytes. Its legs end where the next stitch's begin.
struct Stitch {
  stitch::KindId kind = 0;
  std::uint8_t yarn = 1;
  std::uint8_t flags = counts;
  std::uint32_t round = 0;
  std::uint32_t first_leg = 0;
  pattern::NodeId origin = pattern::no_node; ///< shared by all passes of a repeat
};

enum class On : std::uint8_t { top, post, space, between, ring, chain_side, row_end };

/// Something that a hook can go into. Between two stitches of a round it is named by the later one, between
/// its last and its first by the first. A post's loops say from where: front or back. A chain's own side is
/// `both`, the side opposite (the loop that the first side leaves) `third`. A row's end is that where it was
/// begun (`front`) or ended (`back`).
struct Place {
  std::uint32_t of = none; ///< a stitch; an arch; a ring (number of its part); a row end (its round)
  On what = On::top;
  std::uint8_t loops = stitch::both;
  bool operator==(const Place&) const = default;
};

struct Leg {
  Place into;
};

/// Chains worked in a row: what `ch-2 sp` names.
struct Arch {
  StitchId first_chain = none;
  std::uint32_t count = 0;
};

/// Stitches counted and named as one thing (shell, V-stitch).
struct Group {
  StitchId first = none;
  std::uint32_t count = 0;
  std::string name;
};

enum class Side : std::uint8_t { right, wrong };

/// How many stitches of a kind a round has. An increase is two of its kind, a decrease one of its own.
struct Tally {
  stitch::KindId kind = 0;
  std::uint32_t count = 0;
};

/// One round as worked. Its stitches end where the next round's begin.
struct Round {
  std::uint32_t part = 0;
  int number = 0;
  int again = 0; ///< 1: the second round of this number in its part (41b)
  StitchId first_stitch = 0;
  std::uint32_t count = 0;   ///< everything worked, chains and joins too
  std::uint32_t uses = 0;    ///< places it used up of the edge that was open before it (a ring: none)
  std::uint32_t counted = 0; ///< the tally its stated count speaks of, else all stitches that count
  std::uint32_t makes = 0;   ///< tops it left on the edge
  std::int64_t stated = -1;  ///< -1: the text states none
  pattern::RoundKind kind = pattern::RoundKind::round;
  bool turned = false; ///< the work is turned in it or at its end
  bool joined = false;
  bool attached = false;     ///< yarn is joined to work it, in the middle of its part
  Side side = Side::right;   ///< the side that faces while it is worked
  std::uint32_t text = none; ///< index into Tree::rounds
  bool worked = true; ///< false: only counted, it has no stitches here; it stands after its part's rounds
  std::uint32_t left_over = 0;   ///< places that nothing is worked into and no word skipped
  std::uint32_t first_tally = 0; ///< its kinds, in Fabric::tallies; joins and starting chains apart
  std::uint32_t tallies = 0;
  std::uint32_t spaces = 0; ///< chain spaces it made
  /// The chain that counts as its first stitch: the last of its starting chain, or of the chains skipped at
  /// the hook, which lie in the starting chain of the part.
  StitchId counting_chain = none;
  std::uint32_t joined_open = 0; ///< where edges of parts were joined: all stitches then open
  bool both_sides = false;       ///< worked along both sides of a chain
  bool told = false;             ///< working it told of trouble, which also explains a count that is not met
};

/// A place that a round left unworked.
struct Unworked {
  Place place;
  std::uint32_t round = none;
  bool on_purpose = false; ///< a word skipped it or stopped before it
};

/// How a part begins: what the first round is worked into.
enum class Start : std::uint8_t { nothing, magic_ring, second_chain, chain_ring, chain, free_loops };
/// How a part ends.
enum class End : std::uint8_t { open, cut, gathered };

struct Part {
  std::string name;
  std::string key; ///< ASCII slug, unique: "cap"
  std::uint32_t make = 1;
  std::uint32_t first_round = 0;
  std::uint32_t rounds = 0;
  Start start = Start::nothing;
  End end = End::open;
  std::uint32_t text = 0;          ///< index into Tree::parts
  std::uint32_t foundation = none; ///< the round of its starting chain, which stands before `first_round`
  std::uint32_t counted_only = 0;  ///< rounds after its `rounds` that are counted and not worked
  bool whole = true;               ///< false: a round could not be worked; the rounds before it stand
};

struct Change {
  StitchId stitch = none; ///< the first in the new yarn
  std::uint8_t yarn = 1;
};

/// An eye, marker … in holes between stitches.
struct Placing {
  pattern::What what = pattern::What::note;
  std::uint32_t part = 0;
  std::uint32_t round = none;       ///< index into Fabric::rounds; none: no round is named
  std::vector<std::uint32_t> after; ///< stitches of that round (from 1) behind which the posts sit
  std::uint32_t text = 0;           ///< index into Tree::placings
};

/// From the hole behind one stitch of a round to that behind another, both from 1.
struct Covering {
  std::uint32_t first = 0, last = 0;
};

/// What a part that is sewn on covers of its owner, one stretch for each copy of it.
struct Footprint {
  std::uint32_t part = 0;                        ///< the part that is sewn on
  std::uint32_t first_round = 0, last_round = 0; ///< of the owner, as indices into Fabric::rounds
  std::uint32_t on_round = 0;                    ///< of these, the one whose stitches are counted
  std::vector<Covering> stitches;
};

/// All parts of one variant. Flat vectors, everything referred to by number, nothing changed after working.
struct Fabric {
  std::vector<stitch::StitchKind> kinds;
  std::vector<std::string> group_names; ///< as in the tree: the first is number 1
  std::vector<Stitch> stitches;
  std::vector<Leg> legs;
  std::vector<Arch> arches;
  std::vector<Group> groups;
  std::vector<Round> rounds;
  std::vector<Tally> tallies;
  std::vector<Part> parts;
  std::vector<Change> changes;
  std::vector<Placing> placings;
  std::vector<Footprint> footprints;
  std::vector<Unworked> unworked;  ///< round by round, in the order of the edge
  std::vector<std::uint8_t> taken; ///< per stitch: loops of its top that something is worked into
};

/// A run of legs.
struct Legs {
  const Leg* first = nullptr;
  const Leg* last = nullptr;
  const Leg* begin() const { return first; }
  const Leg* end() const { return last; }
  std::size_t size() const { return static_cast<std::size_t>(last - first); }
};

Legs legs_of(const Fabric& fabric, StitchId stitch);

/// The stitch before a gap (`On::between`); the one behind it is `gap.of`.
StitchId before_gap(const Fabric& fabric, const Place& gap);

/// The same without those that go through the edge of a part held against it, and these alone.
Legs own_legs_of(const Fabric& fabric, StitchId stitch);
Legs held_legs_of(const Fabric& fabric, StitchId stitch);

/// Loops (front, back) of a stitch's top that nothing is worked into and that a hook can reach.
std::uint8_t free_loops(const Fabric& fabric, StitchId stitch);

/// Position of a stitch in its round, from 1; chains and joins count.
std::uint32_t index_in_round(const Fabric& fabric, StitchId stitch);

/// "round 4", "row 4", "round 41b".
std::string name_of(const Round& round);

/// "cap-3-1": part, round, position in the round. `prefix` goes before it.
std::string id_of(const Fabric& fabric, StitchId stitch, std::string_view prefix = {});

/// "cap-2-1", "cap-ring", "cap-0-ch-2": the id of a place.
std::string id_of(const Fabric& fabric, const Place& place, std::string_view prefix = {});

/// The same, written behind what is there.
void append_id(std::string& out, const Fabric& fabric, StitchId stitch, std::string_view prefix = {});
void append_id(std::string& out, const Fabric& fabric, const Place& place, std::string_view prefix = {});

/// Who works into whom: for every stitch the stitches with a leg in it, in order.
struct Workers {
  std::vector<std::uint32_t> first; ///< one more than there are stitches
  std::vector<StitchId> stitch;
};
/// A counting sort over the legs.
Workers workers_of(const Fabric& fabric);

/// The fabric as text, one stitch a line, for goldens.
std::string show(const Fabric& fabric);

} // namespace whorl::fabric
