#pragma once

#include "pattern/limits.hpp"
#include "pattern/tree.hpp"

#include <cstdint>
#include <vector>

namespace whorl::fabric {

/// Why a piece of work cannot be followed: words that were not understood, a round that does not stand before
/// it, or brackets nested too deep.
enum class Hurdle : std::uint8_t { nothing, unread, no_round, too_deep };

/// What a piece of work needs, found before a stitch of it is worked, so that a slip of the pen ("x
/// 999999999") costs nothing. Figures stop growing at `beyond`.
struct Need {
  std::uint64_t uses = 0;     ///< places of the edge; what runs to the end of the round apart
  std::uint64_t stitches = 0; ///< stitches it works, likewise
  std::uint64_t makes = 0;    ///< places it leaves for the next round, likewise
  std::uint64_t spaces = 0;   ///< chain spaces, likewise
  std::uint64_t gaps = 0;     ///< gaps between groups, likewise
  std::uint64_t centres = 0;  ///< middles of groups, likewise
  std::uint64_t slips =
      0;               ///< of `uses`: slip stitches at the very end, which may run on into the round itself
  bool to_end = false; ///< something in it runs to the end of the round
  bool starts = false; ///< it opens an edge of its own (a ring, a chain)
  bool joins = false;  ///< it is the slip stitch that joins: behind nothing but chains it opens a ring
  bool chains = false; ///< chains of the round before are places like its stitches
  bool places_something = false;   ///< a place was taken, so that `same` has a meaning
  Hurdle hurdle = Hurdle::nothing; ///< why it cannot be worked at all

  /// Places that it uses without the slip stitches at its end.
  std::uint64_t surely() const { return uses - slips; }
};

inline constexpr std::uint64_t beyond = std::uint64_t{1} << 50;

/// The deepest nesting of brackets, references and loops that is followed.
inline constexpr int deepest = pattern::limit::tree_nesting;

/// The need of a round's body. `earlier` are the needs of the rounds of the text before it, which it may
/// refer to.
Need need_of(const pattern::Tree& tree, pattern::NodeId body, const std::vector<Need>& earlier);

/// The need of a node's children, as one pass of a repeat.
Need need_of_pass(const pattern::Tree& tree, const pattern::Node& repeat, const std::vector<Need>& earlier);

/// The needs of all rounds of the text, in order.
std::vector<Need> needs_of(const pattern::Tree& tree);

/// Whether the kind is the slip stitch.
bool is_slip(const stitch::StitchKind& kind);

} // namespace whorl::fabric
