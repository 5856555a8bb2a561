#pragma once
/// Room `stitch`: how a stitch is made. A kind of stitch is one row of moves; what follows from the row
/// (loops on the hook, legs, what it takes and makes, height, slashes, bar) is worked out here and nowhere
/// else. Nothing here knows text, rounds or drawings.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace whorl::stitch {

/// Number of a kind in a table of kinds.
using KindId = std::uint16_t;
inline constexpr KindId no_kind = 0xFFFF;

/// What holds the head of a symbol together where it has several legs.
enum class Close : std::uint8_t { none, bar, oval };

/// The single loops of a stitch's top, and of a leg that goes into it; a set.
enum Loop : std::uint8_t { no_loop = 0, front = 1, back = 2, both = 3, third = 4 };

/// One row of the table of stitches. The designer's own stitches are rows like any other.
struct StitchKind {
  std::string name;  ///< US abbreviation, or the own stitch's name: "sc", "sc2tog", "invdec"
  std::string moves; ///< the moves, as moves.hpp reads them: "o i d p2 p2"
  int takes = 1;     ///< places of the edge it uses up
  int makes = 1;     ///< tops it adds to the edge
  Close close = Close::none;
  std::string title;  ///< in full words, US terms: "single crochet"
  bool counts = true; ///< counted as a stitch unless the text says otherwise (a chain or slip stitch is not)
  bool own = false;   ///< defined by the pattern

  bool operator==(const StitchKind&) const = default;
};

/// The standard kinds, US names: ch, sl st, sc, hdc, dc, tr, dtr, trtr, the extended esc, ehdc, edc, etr, the
/// 2tog and 3tog of all but the first two, invdec, bo (bobble), puff, pc (popcorn), cl (cluster), loop st.
const std::vector<StitchKind>& standard_kinds();

/// The standard single crochet.
const StitchKind& single_crochet();

/// Number of the kind of this name in `kinds`, or none.
std::optional<KindId> find_kind(const std::vector<StitchKind>& kinds, std::string_view name);

/// The kind "n of `base` together" ("sc3tog"), made from the base's moves: each but its last pull-through,
/// then one through all. None if the base is not closed by such a pull, or n is not 2 to 20.
std::optional<StitchKind> together(const StitchKind& base, int n);

/// n unfinished stitches in one place, closed together: a cluster, a bobble; of hdc, a puff. None as above.
std::optional<StitchKind> cluster(const StitchKind& base, int n);

/// n whole stitches in one place, joined by the top of the first.
StitchKind popcorn(const StitchKind& base, int n);

/// So many chains, closed by a slip stitch into the first of them: it stands on the stitch before it, uses
/// no place and makes none.
StitchKind picot(int chains);

/// A stitch and so many chains, closed back into it by a slip stitch: one stitch.
StitchKind with_chains(const StitchKind& base, int chains);

/// So many chains and, back along them, these stitches: an ear, a thumb, a spike that stands on its round. It
/// uses no place of the round and makes none.
StitchKind spur(int chains, const std::vector<StitchKind>& back);

/// Whether a kind stands on the stitches beside it, and takes no place: a picot, a spur.
bool is_picot(const StitchKind& kind);

/// The stitches back along a spur's chains, in the order they are made, each as the standard kind that is made
/// so or by its moves alone; empty: it is no spur.
std::vector<StitchKind> back_along(const StitchKind& kind);

/// What the chart symbol of a kind is composed of; all of it follows from the moves.
struct Shape {
  int legs = 0;             ///< insertions: feet of the symbol (0: a chain)
  bool feet_joined = false; ///< several legs in one place (cluster, bobble, puff)
  bool cross = false;       ///< an sc: no wrap; drawn as x or +
  bool bar = false;         ///< a wrap: a bar across the head
  std::vector<int> slashes; ///< per leg: wraps that come off before the last pull-through
  int height = 0;           ///< in chains: sl st 0, sc 1, hdc 2, dc 3, tr 4
  Close close = Close::none;
  bool front_loops_only = false; ///< loops are taken straight onto the hook (invisible decrease)
  bool long_loop = false;        ///< a loop of yarn is drawn out and stays (loop stitch)
  int picot = 0; ///< chains that are closed into the first of them, or into the stitch below them
  int stems = 0; ///< a short stem under the head for every pull-through of one (extended stitches)
  std::vector<Shape> back; ///< of a spur: what is worked back along its chains, from the hook on

  bool operator==(const Shape&) const = default;
};

/// The shape of a kind. Heights after the ladder of turning chains, 1918 *Handbook*, "A Lesson in Crochet".
Shape shape_of(const StitchKind& kind);

} // namespace whorl::stitch
