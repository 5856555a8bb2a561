#pragma once

#include "pattern/source.hpp"
#include "stitch/kind.hpp"

#include <cstddef>
#include <cstdint>
#include <string_view>
#include <vector>

namespace whorl::pattern {

/// A way of working that changes the moves of the hand, and neither counts nor symbols.
enum class How : std::uint8_t {
  yarn_under,   ///< the hook goes over the yarn where a loop is drawn up
  yarn_over,    ///< … under it, said because others do it the other way
  inside_out,   ///< the wrong side is outside
  over_wire,    ///< a wire or cord lies on the round before
  tightly,      ///< with a tight hand
  loosely,      ///< with a loose hand
  two_strands,  ///< of yarn held together
  between_legs, ///< the hook goes in between the legs of a stitch, not under its loops
};

/// Which stitches it is said of.
enum class Of : std::uint8_t { all, kind, increases, decreases };

inline constexpr std::uint32_t every_part = 0xFFFFFFFF;

/// A technique that the text tells, and of what it holds.
struct Technique {
  How how = How::yarn_under;
  Of of = Of::all;
  stitch::KindId kind = stitch::no_kind; ///< Of::kind
  std::uint32_t part = every_part;
  int from = 0, to = 0; ///< rounds; 0: from the first, to the last
  bool listed = false;  ///< in the list of abbreviations
  Span span;
  bool operator==(const Technique&) const = default;
};

/// A word for programs: "yarn-under".
std::string_view word_of(How how);

/// Whether it is told of one sort of stitch and holds for so many of a kind in one place; one that is told of
/// sc holds for sc worked together too.
bool concerns(const Technique& technique, stitch::KindId kind, int in_one,
              const std::vector<stitch::StitchKind>& kinds);

/// Whether nobody can work both ways at once.
bool are_opposed(How a, How b);

/// The techniques that hold for so many of a kind in one place, as numbers in `all`: where two are opposed,
/// the one that is told of fewer stitches.
std::vector<std::size_t> holding(const std::vector<Technique>& all, stitch::KindId kind, int in_one,
                                 const std::vector<stitch::StitchKind>& kinds);

/// Whether the yarn is caught in another way than is usual, so that it is a matter of single moves.
bool is_of_moves(How how);

} // namespace whorl::pattern
