#pragma once

#include "pattern/label.hpp"
#include "pattern/reading.hpp"
#include "pattern/reference.hpp"

#include <array>
#include <functional>
#include <optional>
#include <utility>
#include <vector>

namespace whorl::pattern {

/// The round before that a line repeats: an entry of a part, and its number where the entry gives several.
struct Target {
  std::size_t part = 0;
  std::size_t entry = 0;
  int number = 0;
  std::uint8_t loops = 0; ///< in these loops, a set of stitch::Loop
};

/// One way to understand a line: its label, and the readings of the work behind it.
struct Way {
  Label label;
  Span work;
  Span above;  ///< a line directly above that makes the ring or chain it is worked into; empty: none
  Span opened; ///< … of which only these words are read, which open loops; empty: all
  std::vector<Reading> readings; ///< cheapest first; none: not read
  Effort effort = Effort::all;   ///< with which they were made
  Stuck stuck;
  std::optional<Reference> reference;  ///< its work is told by naming rounds before
  std::optional<Target> target;        ///< … of which this is one
  std::optional<std::uint32_t> stated; ///< the count at the line's end, for a line that is not read
};
using Ways = std::vector<Way>;

/// Makes the other readings of a way.
using ReadAll = std::function<void(Way&)>;

inline constexpr std::int64_t unknown = -1;
inline constexpr std::size_t not_read = static_cast<std::size_t>(-1);

/// What was settled about a line.
struct Settled {
  std::size_t way = 0;
  std::size_t reading = not_read;
  int from = 0;
  int to = 0;
  std::int64_t opened = unknown;        ///< stitches open before it
  std::int64_t opened_spaces = unknown; ///< … and chain spaces
  std::int64_t open = unknown;          ///< and after it
  bool uses_all = true;                 ///< it uses what was open, no more and no less
  bool states = false;                  ///< it states a count that can be compared
  bool meets = true;                    ///< and meets it
  bool in_step = true;                  ///< its number follows on
  bool doubtful = false;                ///< it takes loops for stitches, and there are loops of chains
  int agreeing = 1;                     ///< readings that agree with the counts on both sides
  std::optional<std::pair<std::size_t, std::size_t>>
      other; ///< way and reading that would have been the next best

  bool agrees() const { return reading != not_read && uses_all && meets && in_step; }
};

/// The cheapest path over the lines of a part. `open` is what the part starts on (`unknown`: nothing is
/// compared on the first line); `last` the number of the round before. Readings are made only where a count
/// disagrees.
std::vector<Settled> choose(std::vector<Ways>& lines, std::int64_t open, int last,
                            const std::vector<stitch::StitchKind>& kinds, const ReadAll& read_all);

/// Votes for each habit, by its bit; the two habits of a pair stand side by side.
using Votes = std::array<int, 8>;

/// Lines whose counts settled one reading vote for its habits.
void count_votes(const std::vector<Ways>& lines, const std::vector<Settled>& settled, Votes& votes);

/// Of each pair of habits the one with more votes.
std::uint16_t winners(const Votes& votes);

/// Moves the costs of the lines that no count settles towards `habits`; whether there was any.
bool lean_unsettled(std::vector<Ways>& lines, const std::vector<Settled>& settled, std::uint16_t habits,
                    const ReadAll& read_all);

} // namespace whorl::pattern
