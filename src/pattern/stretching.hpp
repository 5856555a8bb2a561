#pragma once

#include "pattern/passage.hpp"

#include <cstdint>
#include <vector>

namespace whorl::pattern {

/// A stretch being read: the best paths that end at each of its places.
struct Stretching {
  WorkReader& reader;
  std::uint32_t begin, end;
  Extent extent;
  Stretch rows;
  std::vector<std::int32_t> best; ///< per place: first path, cheapest first
  std::vector<Match> found;
  bool plain_list = false; ///< what stands before "around" are single stitches, not all alike

  std::int32_t& at(std::uint32_t place) { return best[place - begin]; }
};

/// Puts a path among those that end where it ends. Of two that do the same, the cheaper stays.
void offer(Stretching& s, Path path);

/// A step behind a path, which does nothing yet.
Path after(const Path& before, std::int32_t index, Taken taken, std::uint32_t begin, std::uint32_t end);

/// One row behind a path, with what it works.
void offer_row(Stretching& s, std::int32_t index, std::int32_t match, std::int32_t inner,
               const Effect& worked);

/// The piece that stands last before the end of a path; nullptr if none does.
const Piece* piece_before(const WorkReader& reader, std::int32_t index);

/// Whether a path uses or makes anything.
bool has_worked(const Path& path);

/// Whether a piece works stitches, and not to the end.
bool is_stitch_piece(const Piece* piece);

/// Whether a piece may stand behind what a path has read; it ends at `end`.
bool fits_behind(const Stretching& s, std::int32_t index, const Path& before, const Piece& piece,
                 std::uint32_t end);

/// A word at `place` passed over.
void offer_passing(Stretching& s, std::uint32_t place);

/// Every other way to go on at `place` that is no row: things placed or opened, asides, yarns.
void offer_others(Stretching& s, std::uint32_t place);

} // namespace whorl::pattern
