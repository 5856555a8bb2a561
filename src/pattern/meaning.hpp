#pragma once

#include "pattern/phrase.hpp"
#include "pattern/tree.hpp"

#include <optional>
#include <string_view>
#include <vector>

namespace whorl::pattern {

/// What a row does.
enum class Verb : std::uint8_t {
  pass, ///< nothing in the work
  stitch,
  skip,
  ring, ///< a magic ring
  join,
  turn,
  under_chain, ///< the first place is under the starting chain that counts
  travel,      ///< slip stitches at the head of a round, to the chain space where it begins
  start_here,
  every,          ///< plain stitches, and an increase in every nth place, to the end
  again,          ///< the stitch before, in more places: "and in each st around"
  starting_chain, ///< chains at the head of a round that stand for a stitch
  from_chain,     ///< the next stitches begin in the nth chain from the hook
  others,         ///< "sc in the others": what the piece before has between its increases
  picot,          ///< chains closed to a ring, of no account
  other_side,     ///< the other side of the chain, for what follows
  side_behind,    ///< the same, for the piece before
  part_here,      ///< what follows goes along another part
  part_behind,    ///< the piece before goes along another part
  foundation,     ///< chains and, into each of them, a stitch: a row begun without a chain of its own
  opening,        ///< opens places that the round before does not have
  repeat,         ///< a passage
  group,          ///< a passage into one place
  loops_rest,     ///< these loops from here on
  loops_head,     ///< the same, at the head of a line
  loops_next,     ///< these loops for the next piece
  loops_behind,   ///< these loops for the piece before
};

/// What a row does, and how: the words of its `means`.
struct Meaning {
  Verb verb = Verb::pass;
  Where where = Where::next;
  bool around = false;
  bool doubled = false;
  bool together = false;
  bool apart = false; ///< the number counts places, although the row calls it many
  bool more = false;
  bool here = false;     ///< "the same place" is the one at hand, not the one last worked into
  bool counts = false;   ///< the chains skipped at the hook stand for a stitch
  bool below = false;    ///< into a stitch some rounds below
  bool based = false;    ///< "the first st" is the one that a starting chain stands on
  bool onward = false;   ///< only the first goes into the chain that is named
  bool alone = false;    ///< a number by itself, in a list
  bool back = false;     ///< it goes back to the passage that ends with two stars
  bool part = false;     ///< the last pass of the repeat ends where two stars stand
  bool made = false;     ///< into the chain that was made first
  bool passed = false;   ///< every: the nth counts the stitches passed over ("every 3 stitches" is every 4th)
  bool first_of = false; ///< every: the nth is the first of those that are worked together
  bool skipping = false; ///< every: the stitches between are skipped
  bool gathered = false; ///< so many of a stitch in one place, closed as the other word says: "5-dc popcorn"
  bool plus = false;     ///< a second number adds to the first: "ch 6 + 1 to turn"
  bool of_loop = false;  ///< the number is that of a loop: "start in loop 5"
  Act opens = Act::stitch; ///< an edge of a flat piece; stitch: none
  bool leading = false;    ///< it stands at the head of a clause
  bool heading = false;    ///< nothing of the line stands before it
  bool led = false;        ///< it goes where a slip stitch led at the head of the round
  bool spaced = false; ///< the number is of those that go into each chain space: "working 2 sc in each sp"
  bool evenly = false; ///< … along which the work spreads evenly
};
Meaning meaning_of(std::string_view text);

/// The kinds a reading may use: the pattern's own and those made on the way.
struct Kinds {
  const std::vector<stitch::StitchKind>& known;
  std::vector<stitch::StitchKind> made;

  const stitch::StitchKind& at(stitch::KindId id) const {
    return id < known.size() ? known[id] : made[id - known.size()];
  }
  /// The kind of this name, or none.
  std::optional<stitch::KindId> find(std::string_view name) const;
  /// This kind, added if it is not there.
  stitch::KindId add(const stitch::StitchKind& kind);
  /// "n of `base` together", made if need be.
  std::optional<stitch::KindId> together(stitch::KindId base, std::uint32_t n);
};

/// What a match works: one piece of work, a passage or a change of loops.
struct Piece {
  Verb verb = Verb::pass;
  Work work;
  bool bare = false;            ///< an increase or decrease that names no stitch
  bool here = false;            ///< see Meaning::here
  bool based = false;           ///< see Meaning::based
  bool onward = false;          ///< see Meaning::onward
  bool alone = false;           ///< see Meaning::alone
  bool part = false;            ///< see Meaning::part
  bool made = false;            ///< see Meaning::made
  bool skipping = false;        ///< see Meaning::skipping
  std::uint16_t again_many = 0; ///< again: so many into each place; 0: as before
  std::uint32_t chains = 0;     ///< "in 2nd ch of ch-2": of the chain that it goes into
  stitch::KindId plain = 0;     ///< every: the stitch between its increases or decreases
  Act opened = Act::stitch;     ///< stitch: nothing; else what is opened for it
  std::uint8_t opened_loops = 0;
  bool leading = false;     ///< see Meaning::leading
  bool led = false;         ///< see Meaning::led
  bool heading = false;     ///< see Meaning::heading
  bool evenly = false;      ///< see Meaning::evenly
  std::uint32_t round = 0;  ///< whose, as typed; 0: not said
  int cost = 0;             ///< besides its row's, at the head of a round
  std::uint16_t habits = 0; ///< besides its row's
};

/// The piece that a match means; none if it makes no sense (one stitch together).
std::optional<Piece> piece_of(const Sentence& sentence, const Match& match, const Meaning& meaning,
                              Kinds& kinds);

/// What a piece does to the edge, `inner` being what its passage does once.
Effect effect_of(const Piece& piece, const Effect& inner, const Kinds& kinds);

} // namespace whorl::pattern
