#pragma once

#include "fabric/fabric.hpp"
#include "layout/extents.hpp"
#include "layout/wanted.hpp"

#include <cstdint>
#include <string>
#include <vector>

namespace whorl::layout {

/// What a figure is.
enum class Form : std::uint8_t { disc, disc_inward, strip, oval, motif, rows, sector };
const char* name(Form form); ///< "disc", "disc-inward", "strip" …

enum class Hand : std::uint8_t { right, left };

/// How much of a straight figure stands on a leaf of paper, in stitches; 0: on whatever it needs. One whose
/// lines are longer than an upright leaf is wide goes on a turned one.
struct Leaf {
  std::uint32_t wide = 0;  ///< stitches of a line, upright
  std::uint32_t lines = 0; ///< upright
  std::uint32_t lines_turned = 0;
};

/// Lines that a figure has at the most, its longest having so many stitches; 0: as many as there are.
std::uint32_t most_lines(const Leaf& leaf, std::uint32_t longest);

/// What is asked of the layout. Words reach it as plain strings; `{}` stands for a number.
struct Page {
  Hand hand = Hand::right;
  bool fold = true;   ///< three or more alike rounds are drawn once
  bool strips = true; ///< false: rounds are never drawn as lines
  Wanted wanted;
  Leaf leaf;
  std::string rounds = "{} rounds"; ///< second line of a folded ring's label
  std::string rows = "{} rows";
  std::uint8_t main_yarn = 0;     ///< that which has no ground; 0: the one that most stitches are in
  std::string back_loops = "BLO"; ///< second line of a ring worked in back loops
  std::string front_loops = "FLO";
  std::string both_layers = "both layers"; ///< second line of a ring that closes an edge laid flat
  std::string neck = "neck";
  std::string neck_open = "open";
  std::string neck_from = "from figure {}"; ///< {}: number of the figure before
  std::string owner_round = "round {}"; ///< in the middle of a part that is worked in the loops of another
  std::string joined_edges =
      "joined edges"; ///< in the middle of a part that goes on along the edges of others
  std::string front = "front";
};

/// A run of text of one face and size.
struct Run {
  std::string text;
  Face face = Face::regular;
  double size = 0.62; ///< W
  double x = 0;       ///< from the label's start, W
  double width = 0;
};

enum class Tone : std::uint8_t { ink, grey };

/// A label: base line begins at `at`; runs stand side by side.
struct Label {
  Point at;
  std::vector<Run> runs;
  std::uint32_t ring = 0; ///< in Figure::rings
  Tone tone = Tone::ink;  ///< ink: that of its ring
  Convex box;
};

/// A filled triangle that points along the ring to its first stitch.
struct Pointer {
  Point tip;
  Point direction; ///< unit vector
  double length = 0.30;
  std::uint32_t ring = 0;
  Tone tone = Tone::ink;
};

/// One symbol, standing for `count` stitches of one place (an increase) or for one.
struct Item {
  SymbolKey key;
  fabric::StitchId first = 0;
  std::uint32_t count = 1;
  std::uint8_t stem = 0; ///< a stem leads down from it past so many rings, to what it is worked into
  Point foot;            ///< where the symbol's origin stands
  Point up;              ///< unit vector, foot to head
  double height = 0.8;   ///< foot to head as drawn
  double at = 0; ///< arc length of its middle along its ring, from the gutter's middle: what the solver found
  std::uint32_t first_foot =
      0; ///< into Figure::feet: the feet of its stitches' legs, in order of stitch and leg
  std::uint32_t feet = 0;
  std::uint32_t first_tip = 0; ///< into Figure::tips: the top of each stitch
};

/// One ring (or line of a strip, row of a flat piece): a round, or several alike.
struct Ring {
  std::uint32_t round = 0;        ///< index into Fabric::rounds: the first it stands for
  std::uint32_t last_round = 0;   ///< and the last
  bool echo = false;              ///< the faint round that the figure repeats
  std::uint8_t ink = 0;           ///< 0 the first ink, 1 the second; alternates along the part
  bool last_before_break = false; ///< a break line stands outside it
  bool owner = false;             ///< an echo of the round in whose free loops the part is worked
  bool against = false;           ///< … whose own order runs the other way
  bool leftward = true;           ///< of a line: it is worked from right to left
  bool chain = false;             ///< the starting chain of a flat piece
  bool edging = false; ///< along the edge of a flat piece: inner, outer, middle count from its outline
  double inner = 0, outer = 0; ///< radii of feet and heads (a strip: heights)
  double middle = 0;           ///< radius of all angles
  double turned = 0; ///< of a disc: angle from 12 o'clock, the way work runs, at which its gutter stands
  double lead = 0;   ///< of an oval: it begins so far before the first side, along its middle
  std::uint32_t first_item = 0;
  std::uint32_t items = 0;
};

/// What stands in the middle of a disc.
enum class Centre : std::uint8_t { nothing, magic_ring, second_chain, gathered, open, chain_ring };

/// A line drawn round or beside the stitches: break lines, the arrow of direction, the dashed circle, the
/// line that leads from the end of one line of a strip to the start of the next, the stem of a spike, what a
/// part that is sewn on covers, a bracket inside stitches along the edge of another part.
enum class Line : std::uint8_t { fold_break, direction, gathering, join, stem, footprint, edge };
struct Stroke {
  Line line = Line::fold_break;
  std::vector<Point> points; ///< of a polyline, or of cubic curves where `curved` (1 + 3n points)
  bool curved = false;
  std::uint32_t ring = 0; ///< of a stem, whose ink it has
};

/// What stands beside the stitches and is none of them. `front`: the side of the piece that looks at you.
/// `sewn`: the name of a part that is sewn on, or whose edge is worked along. `thread`: a hole that embroidery goes through. `joined`: the
/// stitch is worked through two parts, or is worked through so; `joined_first`: as the first of them.
enum class Sign : std::uint8_t {
  eye,
  marker,
  tick,
  flag,
  attach,
  free_loop,
  front,
  bead,
  joined,
  joined_first,
  sewn,
  thread
};

/// Whether it is a letter over a stitch that two parts share.
constexpr bool is_joined(Sign sign) { return sign == Sign::joined || sign == Sign::joined_first; }

/// One of them: its point, its up direction, and what it carries (the letter of a part, the number of a yarn
/// or of a stitch, "front"), its middle on `text_at`. A tick runs from its point along its up direction;
/// without one it is a number alone.
struct Placed {
  Sign sign = Sign::eye;
  Point at;
  Point up{0, 1};
  Run text; ///< may be empty
  Point text_at;
  std::uint32_t ring = 0;
};

/// The pale ground under stitches of a yarn that is not the part's first.
struct Ground {
  std::vector<Point> outline; ///< cubic curves, 1 + 3n points, closed
  std::uint8_t yarn = 2;
  std::uint32_t ring = 0;
};

/// The mark of the end of the yarn: its point and the way from the work. No `up`: there is none.
struct Cut {
  Point tip;
  Point up;
  bool operator==(const Cut&) const = default;
};

/// A figure: rings from the centre outward, or lines from the bottom up.
struct Figure {
  Form form = Form::disc;
  std::uint32_t part = 0;
  std::uint32_t first_round = 0, last_round = 0; ///< without the echo; indices into Fabric::rounds
  bool clockwise = false;
  Centre centre = Centre::nothing;
  double centre_radius = 0;     ///< of the open middle
  double half_core = 0;         ///< of an oval: half the length of what its rings go round, on the x axis
  int corners = 0;              ///< of a motif
  bool bent = false;            ///< of rows: they go up and down, by more than their rings say
  std::vector<Run> centre_text; ///< neck and its note, centred, first line first
  std::vector<Ring> rings;
  std::vector<Item> items;
  std::vector<Point> feet;
  std::vector<Point> tips;
  std::vector<Label> labels;
  std::vector<Pointer> pointers;
  std::vector<Stroke> strokes;
  std::vector<Placed> placed;
  std::vector<Ground> grounds; ///< beneath everything else
  Cut cut;
  Point low, high; ///< corners of everything in it
};

/// All figures, in the order in which they are worked.
struct Placement {
  std::vector<Figure> figures;
  Wanted wanted; ///< what was asked for
};

/// Which symbols a fabric needs.
std::vector<SymbolKey> symbols_of(const fabric::Fabric& fabric);

/// Divides the parts into figures and places every stitch of them. Decisions of form are made on whole
/// numbers.
Placement place(const fabric::Fabric& fabric, const Extents& extents, const Page& page);

/// The placement as text, one line a stitch (figure, id, foot, top, angle in hundredths), for goldens.
std::string show(const fabric::Fabric& fabric, const Placement& placement);

} // namespace whorl::layout
