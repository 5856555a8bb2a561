#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace whorl::stitch {

/// What the hand does. `take_loop` lifts the next place's own loop onto the hook.
enum class Act : std::uint8_t { yarn_over, insert, draw_up, take_loop, pull_through, drop, pick_up, chain };

struct Move {
  Act act = Act::yarn_over;
  int loops = 0;          ///< pull_through: how many loops; 0 means all
  bool into_made = false; ///< insert: into a stitch just made (popcorn, picot)
  bool operator==(const Move&) const = default;
};

/// Reads a row: `o` yarn over, `i` insert, `i*` into a stitch just made, `d` draw up, `l` take a loop, `pN` /
/// `p*` pull through, `x` drop, `e` pick up, `c` chain; `( … )N` repeats. None if the row is not well formed.
std::optional<std::vector<Move>> parse_moves(std::string_view row);

/// The same row written out move by move, `parse_moves` of which is `moves` again.
std::string show(const std::vector<Move>& moves);

/// A row's moves are no more than this, repeats written out.
inline constexpr std::size_t most_moves = 400;

/// Loops on the hook after every draw, take, pull and chain, one loop being on it at the start.
/// None if a move needs more loops than there are.
std::optional<std::vector<int>> loops_on_hook(const std::vector<Move>& moves);

/// Loops left on the hook when the row is done: one for a stitch that is whole. None as above.
std::optional<int> loops_at_end(const std::vector<Move>& moves);

} // namespace whorl::stitch
