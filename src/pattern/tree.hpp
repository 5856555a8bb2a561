#pragma once

#include "pattern/finding.hpp"
#include "pattern/source.hpp"
#include "pattern/technique.hpp"
#include "stitch/kind.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace whorl::pattern {

using NodeId = std::uint32_t;
inline constexpr NodeId no_node = 0xFFFFFFFF;

/// What a piece of work does to the edge.
enum class Act : std::uint8_t {
  stitch,     ///< works `kind`
  skip,       ///< takes a place and leaves its loops free
  ring,       ///< makes a magic ring; the stitches after it go into it
  join,       ///< a slip stitch into the first stitch of the round
  turn,       ///< reads the edge backwards
  start_here, ///< the round begins here from now on
  other_side, ///< goes on along the other side of the starting chain; where `Node::round` is not 0, of the
              ///< chain of the part that the round before that index is of
  row_ends,   ///< opens the ends of the rows, on the side where the hook is, then on the other; `times` 0: as
              ///< many places as the work there needs, spread evenly, else one for each row
  top_edge,   ///< opens the stitches of the last row
  all_edges,  ///< opens the edges of a flat piece one after the other; `times` as for row_ends
  free_loops, ///< opens the loops (`Work::loops`) that round `Node::round` left free
  skipped,    ///< opens the stitches that round `Node::round` left unworked
  part_edge,  ///< opens the last round of another part (`Node::round`) in front of what is open: legs joined
  travel,     ///< slip stitches over `times` stitches and into a chain space, where the round begins
};

/// Where a piece of work goes.
enum class Where : std::uint8_t {
  next,      ///< the next place of the edge
  same,      ///< the place last worked into
  ring,      ///< the ring
  chain,     ///< the nth chain from the hook
  last,      ///< the last place of the edge
  space,     ///< the next chain space
  between,   ///< the next gap between two groups of stitches; where there is none, the next chain space
  any,       ///< the next place, be it a stitch or a chain space: "in each dc and in each ch-1 sp"
  any_chain, ///< the next place, be it a stitch or a chain between them: "in each sc and in each ch"
  centre,    ///< the middle of the next stitches that were worked into one place, three or more: a shell
  skipped,   ///< the first of the places skipped just before that nothing was worked into: crossed stitches
};

/// How a stitch goes into the place that its turn of the edge brings.
enum class Into : std::uint8_t {
  loops,       ///< under the loops of its top
  front_post,  ///< round its post, from the front
  back_post,   ///< round its post, from the back
  below,       ///< into the stitch `Work::down` rounds below it (a spike)
  both_layers, ///< through it and the place that lies on it, the edge being folded flat: takes two
  two_parts,   ///< through it and the edge of another part (`Node::round`) that is held against it: joined
               ///< without sewing
};

/// One piece of work: "6 inc" is sc, two in one place, six times. Repeats use `times`, `to_end` and `leave`.
struct Work {
  Act act = Act::stitch;
  Where where = Where::next;
  Into into = Into::loops;
  std::uint8_t down = 1;   ///< Into::below: how many rounds
  bool counts = false;     ///< a starting chain, or the chains skipped at the hook, that stand for a stitch:
                           ///< they take a place (the chain) and count as one
  bool as_high = false;    ///< chains as high as the stitch that follows them
  std::uint8_t loops = 0;  ///< set of stitch::Loop; 0: as what surrounds it says, else both
  std::uint8_t yarn = 0;   ///< number in Tree::yarns, from 1; 0: as what surrounds it says
  stitch::KindId kind = 0; ///< in Tree::kinds
  /// Where::next: the kind of the places that the text names, "in next sc"; often no more than another word
  /// for any stitch.
  stitch::KindId named = stitch::no_kind;
  std::uint16_t in_one = 1;    ///< how many are worked into each place
  std::uint16_t in_space = 0;  ///< Where::any: how many into each chain space; 0: as many as into a stitch
  std::uint16_t in_corner = 0; ///< … into each of more chains than others; 0: as many as into any space.
                               ///< Where::next: into the middle of each group
  std::uint16_t nth = 0;   ///< Where::chain: which chain from the hook; Act::free_loops: which loop is the
                           ///< first, 0: not said
  bool to_end = false;     ///< until the round's places are used up …
  std::uint32_t leave = 0; ///< … but for the last `leave`
  std::uint32_t times = 1; ///< how many places, or passes of a repeat, where not to_end; Act::free_loops: how
                           ///< many loops from the nth on, 1: all
  bool operator==(const Work&) const = default;
};

enum class NodeKind : std::uint8_t {
  sequence,  ///< its children in order
  work,      ///< one Work
  repeat,    ///< its children, work.times times or to the end
  loops,     ///< its children, worked in work.loops
  yarn,      ///< its children, in work.yarn
  group,     ///< its children all into one place (work.where), counted one by one
  reference, ///< as round `round` of the same part was worked
  unread,    ///< words that were not understood; the stated count stands for them
};

/// Of `Node::round`: none has the number that is named.
inline constexpr std::uint32_t no_round = 0xFFFFFFFF;

/// A node of what the designer wrote, as she built it. Children are a chain: `child`, then each one's `next`.
struct Node {
  NodeKind kind = NodeKind::sequence;
  Work work;
  NodeId child = no_node;
  NodeId next = no_node;
  std::uint32_t round = 0; ///< reference, free_loops, skipped, part_edge, two_parts: index into Tree::rounds
  std::uint16_t number =
      0; ///< … the number of the round that is meant, where the entry gives several; else 0
  std::uint16_t name = 0; ///< number in Tree::group_names, from 1, of a group that is counted as one thing
  Span span;
};

enum class Unit : std::uint8_t {
  any,
  stitches,
  kind,
  spaces,
  chains,
  group, ///< `Stated::kind` is a number in Tree::group_names
};

/// A count that the text states, and of what.
struct Stated {
  std::uint32_t count = 0;
  Unit unit = Unit::any;
  stitch::KindId kind = stitch::no_kind;
  Span span;
};

/// What a reading uses and makes of the edge. A repeat to the end has its passes' figures beside it.
struct Effect {
  std::uint32_t uses = 0; ///< places that are used whatever the edge has
  std::uint32_t makes = 0;
  std::uint32_t pass_uses = 0; ///< of each pass that runs to the end; 0: none does
  std::uint32_t pass_makes = 0;
  std::uint32_t leave = 0;    ///< places that the repeat leaves for what follows it (part of `uses`)
  bool starts = false;        ///< opens a new edge (a ring, a chain)
  bool passes_any = false;    ///< … each pass goes into the next place, stitch or chain space (`pass_uses`)
  bool passes_chains = false; ///< goes into the chains of spaces too, each being a place
  std::int64_t pass_more_in_space = 0;  ///< with passes_any: what one into a space makes more
  std::int64_t pass_more_in_corner = 0; ///< … and into a corner space more than into another
  bool folded = false;           ///< goes through both layers: one stitch alone in the middle is no fault
  bool carries = false;          ///< ends with a turning chain that counts as the next row's first stitch
  std::uint32_t spaces = 0;      ///< chain spaces that it goes into
  std::uint32_t pass_spaces = 0; ///< … of each pass that runs to the end
  bool in_gaps = false;    ///< goes between groups of stitches, or into the middle of one; how many there are
                           ///< nothing here knows
  bool in_centres = false; ///< … into the middle of one
  /// Chain spaces and chains in them that it makes; those at a round's start or turn are none. Of passes to
  /// the end: what each makes, the first figure then being what their sum differs by.
  std::int64_t makes_spaces = 0, pass_makes_spaces = 0;
  std::int64_t makes_chains = 0, pass_makes_chains = 0;
  std::uint32_t apart = 0, pass_apart = 0; ///< stitches back along chains (spurs), which some count too
  bool operator==(const Effect&) const = default;
};

enum class RoundKind : std::uint8_t { round, row, chain };

/// One line of instruction, which may stand for several rounds alike.
struct RoundText {
  std::uint32_t part = 0;
  int from = 0;  ///< number of the first round it gives
  int to = 0;    ///< and of the last
  int again = 0; ///< how many rounds of this number stood in the part before (41b: 1)
  RoundKind kind = RoundKind::round;
  std::string label; ///< as typed: "Rnd 3", "R6-10"
  Span label_span;
  Span span;                  ///< label and work
  NodeId body = no_node;      ///< no_node: not read
  std::vector<Stated> stated; ///< usually none or one
  Effect effect;              ///< what the chosen reading says; the fabric's tally proves it
  int readings = 1;           ///< how many readings agreed with the counts
  bool read = true;           ///< false: goes on with its stated count
  std::string mend;           ///< the line with the one smallest change that makes its counts agree, or ""
};

enum class What : std::uint8_t { eye, marker, join, cut, change, stuff, sew, bead, embroider, note };

/// Whether something is put into holes between stitches: eyes, beads, markers, embroidery.
constexpr bool is_post(What what) {
  return what == What::eye || what == What::bead || what == What::marker || what == What::embroider;
}

/// Something that is placed or done between the rounds: eyes, a marker, stuffing, cutting the yarn; or a
/// note.
struct Placing {
  What what = What::note;
  std::uint32_t part = 0;
  int from = 0, to = 0;             ///< rounds that the text names (eyes between 11 and 12); 0: none named
  std::uint32_t after_round = 0;    ///< how many entries of Tree::rounds stand before it
  std::uint32_t apart = 0;          ///< whole stitches between two posts; 0: not said
  std::vector<std::uint16_t> after; ///< stitches of the round, from 1, behind which the text puts it
  bool centred = false;             ///< bead: one, in the middle of the front: "between the eyes"
  bool spread = false;              ///< sew: on opposite sides, or evenly spread over the round
  std::uint16_t copies = 0;         ///< sew: so many of the part; 0: not said
  bool across = false;              ///< embroider: over so many stitches, from hole to hole
  bool between = false;             ///< the rounds that are named lie outside it: "between rounds 9 and 13"
  bool behind = false;              ///< sew: on the back of the piece, where rounds begin
  std::uint32_t sewn = no_node;     ///< sew: the part that is sewn on; no_node: it is not named
  bool gather = false;              ///< cut: the last stitches are gathered and closed
  std::uint8_t loops = 0;           ///< … through these loops of theirs; 0: not said
  bool attaches = false;            ///< join: it is the yarn that is joined, to the first stitch that follows
  std::uint8_t yarn = 0;            ///< change, join: to this yarn, a number in Tree::yarns; 0: not said
  Span span;
  std::string text; ///< as typed
};

/// How the owner of the loops that a part is worked in is held, as the text says.
enum class Hold : std::uint8_t { unsaid, start_down, start_up };

/// A part: how many to make, and the first of its rounds.
struct Part {
  std::string name; ///< "" where the text has no parts
  std::string note; ///< what the heading or the sentence below it says: "from the crown down"
  std::uint32_t make = 1;
  std::uint32_t first_round = 0; ///< index into Tree::rounds; they end where the next part's begin
  Span span;
  Hold hold = Hold::unsaid;
  std::uint8_t yarn =
      0; ///< that its heading or the sentences below it name, a number in Tree::yarns; 0: none
};

/// A yarn that the materials list.
struct ListedYarn {
  std::string name;   ///< "charcoal", in small letters
  std::string letter; ///< "A", "MC"; "" if it has none
};

/// A header line `Name: value`.
struct Header {
  std::string name;
  std::string value;
  Span span;
};

/// An abbreviation of the pattern's own, where the language has the word: "V" that its list calls an
/// increase.
struct OwnName {
  std::string name;         ///< as typed
  std::string means;        ///< the concept's name, or the kind of stitch
  std::uint16_t in_one = 1; ///< so many of it in one place
};

/// The pattern as its author built it. Every value points back into the text.
struct Tree {
  std::string title;
  std::string subtitle; ///< a line of introduction directly below the title, or ""
  Span title_span;
  std::string language = "en-US"; ///< BCP 47
  std::vector<Header> headers;
  std::vector<stitch::StitchKind> kinds; ///< the standard kinds, then those made on the way and her own
  std::vector<std::string> yarns;        ///< names of the yarns as she calls them; the first is number 1
  std::vector<ListedYarn> listed_yarns;  ///< by the materials
  std::vector<OwnName> own_names;        ///< in the order of her list
  std::vector<std::string> group_names;  ///< "shell", "V-stitch"; the first is number 1
  std::vector<Part> parts;
  std::vector<RoundText> rounds;
  std::vector<Placing> placings;
  std::vector<Technique> techniques; ///< in the order of the text
  std::vector<Node> nodes;
};

/// Index one past the last round of a part.
std::uint32_t end_round(const Tree& tree, std::uint32_t part);

/// The tree as indented text, one node a line, for goldens.
std::string show(const Tree& tree);

/// What reading gives.
struct Read {
  Tree tree;
  std::vector<Finding> findings;
};

} // namespace whorl::pattern
