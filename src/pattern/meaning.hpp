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
  start_here,
  every,        ///< plain stitches, and an increase in every nth place, to the end
  repeat,       ///< a passage
  group,        ///< a passage into one place
  loops_rest,   ///< these loops from here on
  loops_head,   ///< the same, at the head of a line
  loops_next,   ///< these loops for the next piece
  loops_behind, ///< these loops for the piece before
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
  /// "n of `base` together", made if need be.
  std::optional<stitch::KindId> together(stitch::KindId base, std::uint32_t n);
};

/// What a match works: one piece of work, a passage or a change of loops.
struct Piece {
  Verb verb = Verb::pass;
  Work work;
  bool bare = false; ///< an increase or decrease that names no stitch
};

/// The piece that a match means; none if it makes no sense (one stitch together).
std::optional<Piece> piece_of(const Sentence& sentence, const Match& match, const Meaning& meaning,
                              Kinds& kinds);

/// What a piece does to the edge, `inner` being what its passage does once.
Effect effect_of(const Piece& piece, const Effect& inner, const Kinds& kinds);

} // namespace whorl::pattern
