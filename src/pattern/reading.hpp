#pragma once

#include "pattern/tree.hpp"
#include "words/lattice.hpp"
#include "words/vocabulary.hpp"

#include <cstdint>
#include <vector>

namespace whorl::pattern {

/// Habits of writers that are soft: lines that counts have settled vote on them. A set.
enum Habit : std::uint16_t {
  glued_number_increases = 1, ///< `2sc` = two in one place (else: two stitches)
  glued_number_repeats = 2,   ///< `2sc` = two stitches
  star_times_in_all = 4,      ///< `rep from * n times` = n in all
  star_times_more = 8,        ///< `rep from * n times` = n more
  bracket_repeats = 16,       ///< `[ … ]` is a repeat
  bracket_one_place = 32,     ///< `[ … ]` goes into one place
  starting_chain_counts = 64,
  starting_chain_does_not = 128,
};

/// Where reading got stuck, for the finding: the furthest word that no row could take, and the rows that had
/// matched furthest before it, in the language's written form.
struct Stuck {
  Span span;                             ///< empty: nowhere
  std::string after;                     ///< what stood before it, as typed: "sc in"
  std::vector<std::string> could_follow; ///< at most three: "next st"
  bool too_deep = false; ///< brackets in brackets in brackets, more than reading_limits.nesting
};

/// One way to understand the work of a line. Its nodes are its own, the body being node `body`; the tree
/// takes them over when the reading is chosen.
struct Reading {
  std::vector<Node> nodes;
  NodeId body = no_node;
  std::vector<stitch::StitchKind>
      new_kinds; ///< kinds made on the way; node kinds >= `first_new_kind` are these
  stitch::KindId first_new_kind = 0;
  Effect effect;
  std::vector<std::string>
      yarns;                ///< named in the line; `Work::yarn` of its nodes is a number in these, from 1
  std::vector<NodeId> bare; ///< increases and decreases in a line that names no stitch at all
  Span mixed;               ///< one that stands among several stitches and is taken for single crochet
  std::uint32_t turning_chains = 0; ///< chains before a turn at its end, which may count for the next row
  std::vector<Stated> stated;
  bool loops_as_stitches = false; ///< a word that is also one for a chain's loop names what it goes into
  bool bare_count = false;        ///< … by the number that the line ends with, which no mark sets off
  std::vector<Placing> placings;  ///< what the line places besides (text and span set; part and round not)
  std::vector<Span> passed_over;  ///< stitches or numbers that were not understood: each a finding
  int cost = 0;
  std::uint16_t habits = 0;
};

/// How an edge with `open` places comes out of an effect.
struct Outcome {
  std::int64_t makes = 0;     ///< places the next round has
  std::int64_t left_over = 0; ///< places never reached
  std::int64_t past_end = 0;  ///< places worked beyond the end
  std::int64_t remainder = 0; ///< places that a repeat to the end does not divide into
  std::int64_t spaces = 0;    ///< chain spaces the next round has
  std::int64_t chains = 0;    ///< chains in them
  std::int64_t apart = 0;     ///< stitches back along chains, which some count too
  bool carries = false;       ///< a turning chain waits to be the next row's first stitch
};

/// What is open to a round.
struct Open {
  std::int64_t stitches = 0;
  std::int64_t spaces = -1; ///< chain spaces; -1: not known
  bool carried = false;     ///< the row before ended with a turning chain that counts as its first stitch
  std::int64_t chains = 0;  ///< chains in the spaces
};
Outcome outcome(const Effect& effect, const Open& open);
Outcome outcome(const Effect& effect, std::int64_t open);

enum class Effort : std::uint8_t { cheapest, all };

/// The readings of a line's work (label taken off), cheapest first, at most a dozen, two of the same effect
/// and stated count being one. None: the line is not read, and `stuck` says where. `span` is the file's span
/// of the work.
std::vector<Reading> read_work(std::string_view text, Span span, const words::Vocabulary& vocabulary,
                               const std::vector<stitch::StitchKind>& kinds, Effort effort, Stuck& stuck);

/// What a line between the rounds places or does (eyes, marker, stuffing, cutting, sewing), clause by clause;
/// a line that places nothing is one note. Text and span set; part and rounds before it not.
std::vector<Placing> read_placings(std::string_view text, Span span, const words::Vocabulary& vocabulary);

} // namespace whorl::pattern
