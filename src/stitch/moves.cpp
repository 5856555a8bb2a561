#include "stitch/moves.hpp"

#include "stitch/hook.hpp"

#include <cassert>

namespace whorl::stitch {
namespace {

using Moves = std::vector<Move>;

struct Row {
  std::string_view text;
  std::size_t at = 0;

  bool done() const { return at >= text.size(); }
  char look() const { return done() ? '\0' : text[at]; }
  bool take(char c) {
    if (look() != c) return false;
    ++at;
    return true;
  }
  void pass_blanks() {
    while (take(' ')) {
    }
  }
};

bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// A number of at most three digits, not 0.
std::optional<int> take_number(Row& row) {
  int number = 0;
  for (int digits = 0; digits < 3 && is_digit(row.look()); ++digits)
    number = number * 10 + (row.text[row.at++] - '0');
  if (number == 0 || is_digit(row.look())) return std::nullopt;
  return number;
}

std::optional<Move> take_move(Row& row) {
  if (row.take('o')) return Move{Act::yarn_over};
  if (row.take('i')) return Move{Act::insert, 0, row.take('*')};
  if (row.take('d')) return Move{Act::draw_up};
  if (row.take('l')) return Move{Act::take_loop};
  if (row.take('x')) return Move{Act::drop};
  if (row.take('e')) return Move{Act::pick_up};
  if (row.take('c')) return Move{Act::chain};
  if (!row.take('p')) return std::nullopt;
  if (row.take('*')) return Move{Act::pull_through};
  const auto loops = take_number(row);
  if (!loops) return std::nullopt;
  return Move{Act::pull_through, *loops};
}

bool repeat_from(Moves& moves, std::size_t from, int times) {
  const Moves pass(moves.begin() + static_cast<std::ptrdiff_t>(from), moves.end());
  if (pass.empty() || pass.size() * static_cast<std::size_t>(times) > most_moves) return false;
  for (int i = 1; i < times; ++i) moves.insert(moves.end(), pass.begin(), pass.end());
  return moves.size() <= most_moves;
}

/// Closes the innermost bracket and repeats what stands in it.
bool close_bracket(Row& row, Moves& moves, std::vector<std::size_t>& open) {
  if (open.empty()) return false;
  const auto times = take_number(row);
  if (!times || !repeat_from(moves, open.back(), *times)) return false;
  open.pop_back();
  return true;
}

bool is_stage(Act act) {
  return act == Act::draw_up || act == Act::take_loop || act == Act::pull_through || act == Act::chain;
}

} // namespace

std::optional<std::vector<Move>> parse_moves(std::string_view text) {
  Row row{text};
  Moves moves;
  std::vector<std::size_t> open;
  for (row.pass_blanks(); !row.done(); row.pass_blanks()) {
    if (row.take('(')) {
      open.push_back(moves.size());
    } else if (row.take(')')) {
      if (!close_bracket(row, moves, open)) return std::nullopt;
    } else {
      const auto move = take_move(row);
      if (!move || moves.size() == most_moves) return std::nullopt;
      moves.push_back(*move);
    }
  }
  if (moves.empty() || !open.empty()) return std::nullopt;
  return moves;
}

std::string show(const std::vector<Move>& moves) {
  static constexpr char letters[] = "oidlpxec";
  std::string row;
  for (const Move& move : moves) {
    if (!row.empty()) row += ' ';
    row += letters[static_cast<int>(move.act)];
    if (move.into_made) row += '*';
    if (move.act == Act::pull_through) row += move.loops == 0 ? std::string("*") : std::to_string(move.loops);
  }
  return row;
}

std::optional<std::vector<int>> loops_on_hook(const std::vector<Move>& moves) {
  Hook hook;
  std::vector<int> stages;
  for (const Move& move : moves) {
    if (!make(move, hook)) return std::nullopt;
    if (is_stage(move.act)) stages.push_back(hook.count());
  }
  return stages;
}

std::optional<int> loops_at_end(const std::vector<Move>& moves) {
  Hook hook;
  for (const Move& move : moves)
    if (!make(move, hook)) return std::nullopt;
  return hook.count();
}

} // namespace whorl::stitch
