#include "drawing/section.hpp"

#include "drawing/furniture.hpp"

#include <algorithm>

namespace whorl::drawing {
namespace {

constexpr double after_head = 3, after_row = 7, before_part = 3;
constexpr double most_aside = 24; ///< that furniture stands from its figures, beyond the gap
constexpr double column_gap = 9, block_gap = 7, between_blocks = 10;

/// Blocks that wait for a place, in order.
using Waiting = std::vector<std::size_t>;

/// A block that stands above a low figure of a row and moves with it.
struct Pocketed {
  std::size_t block = 0, row = 0; ///< in the arrangement
};

/// What an arrangement is made from, and it itself.
struct Arranging {
  const Copy& copy;
  const std::vector<Block>& blocks;
  Arrangement made;
  Waiting waiting;
  std::vector<Pocketed> pocketed;
};

double heads_height(const Copy& copy, const Row& row) {
  double height = 0;
  for (const Head& head : row.heads)
    if (has_head(copy, head.part))
      height = std::max(height, draw_part_head(copy, head.part, {}, head.width).height + after_head);
  return height;
}

double row_height(const Row& row) { return row.above + row.below; }

/// Where what stands in a row ends on the right.
double right_of(const Row& row) { return row.x.back() + row.cells.back().side; }

double gap_before(const Row& row) { return after_row + (row.heads.empty() ? 0 : before_part); }

/// Stacks the rows from one on, its heads at `from`.
void stack_rows(Arranging& it, double from, std::size_t first) {
  Arrangement& made = it.made;
  double y = from;
  for (std::size_t i = first; i < made.rows.size(); ++i) {
    if (i > first) y += gap_before(made.rows[i]);
    made.heads[i] = y;
    const double top = y + heads_height(it.copy, made.rows[i]);
    for (const Pocketed& one : it.pocketed)
      if (one.row == i) made.blocks[one.block].at.y += top - made.tops[i];
    made.tops[i] = top;
    y = made.tops[i] + row_height(made.rows[i]);
  }
  made.height = y;
}

/// A free column beside some rows.
struct Column {
  std::size_t first = 0, last = 0; ///< rows
  double left = 0, right = 0, top = 0, bottom = 0;
  double width() const { return right - left; }
};

/// How far to the right the rows of a column reach; a head below the column's top counts too.
double right_of(const Arranging& it, std::size_t first, std::size_t last) {
  double right = 0;
  for (std::size_t i = first; i <= last; ++i) {
    const Row& row = it.made.rows[i];
    right = std::max(right, right_of(row));
    if (i > first && !row.heads.empty())
      right = std::max(right, row.heads.back().x + head_width(it.copy, row.heads.back().part));
  }
  return right;
}

Column column_of(const Arranging& it, std::size_t first, std::size_t last) {
  return {first,
          last,
          right_of(it, first, last) + column_gap,
          it.made.width,
          it.made.tops[first],
          it.made.tops[last] + row_height(it.made.rows[last])};
}

/// The least width that all of the waiting blocks can stand in.
double least_waiting(const Arranging& it) {
  double least = 0;
  for (const std::size_t block : it.waiting) least = std::max(least, least_width(it.blocks[block]));
  return least;
}

/// Blocks beside one another in a column or under the figures.
struct Shelf {
  std::vector<StandingBlock> blocks;
  double width = 0, height = 0;
};

double settled_height(const Shelf& shelf) {
  double height = 0;
  for (const StandingBlock& block : shelf.blocks) height = std::max(height, block.setting.height);
  return height;
}

/// Gives what is free on a shelf to its highest blocks, so that it becomes lower.
void widen(const std::vector<Block>& blocks, Shelf& shelf, double free) {
  constexpr double least_step = 6;
  constexpr int most_steps = 16;
  const double step = std::max(least_step, free / most_steps);
  std::vector<double> widths;
  for (StandingBlock& block : shelf.blocks) widths.push_back(least_width(blocks[block.block]));
  const auto set = [&](std::size_t i) {
    shelf.blocks[i].setting = set_block(blocks[shelf.blocks[i].block], widths[i]);
  };
  for (std::size_t i = 0; i < widths.size(); ++i) set(i);
  while (free > 0) {
    std::size_t highest = 0;
    for (std::size_t i = 1; i < widths.size(); ++i)
      if (shelf.blocks[i].setting.height > shelf.blocks[highest].setting.height) highest = i;
    const double more = std::min(step, free);
    widths[highest] += more;
    free -= more;
    set(highest);
  }
}

/// The longest run of waiting blocks, from `from` on, that has room side by side.
Shelf next_shelf(const Arranging& it, const Waiting& waiting, std::size_t from, double width) {
  Shelf shelf;
  double used = 0;
  for (std::size_t i = from; i < waiting.size(); ++i) {
    const double more = least_width(it.blocks[waiting[i]]) + (shelf.blocks.empty() ? 0 : between_blocks);
    if (!shelf.blocks.empty() && used + more > width) break;
    used += more;
    shelf.blocks.push_back({waiting[i], {}, {}});
  }
  widen(it.blocks, shelf, width - used);
  for (const StandingBlock& block : shelf.blocks)
    shelf.width += block.setting.width + (shelf.width > 0 ? between_blocks : 0);
  shelf.height = settled_height(shelf);
  return shelf;
}

/// Sets a shelf down, its blocks from `left` on.
void set_down(Arranging& it, Shelf shelf, double left, double top) {
  for (StandingBlock& block : shelf.blocks) {
    block.at = {left, top};
    left += block.setting.width + between_blocks;
    it.waiting.erase(std::find(it.waiting.begin(), it.waiting.end(), block.block));
    it.made.blocks.push_back(std::move(block));
  }
}

/// Height that a block takes under the figures, where it has the whole width.
double height_below(const Arranging& it, std::size_t block) {
  return set_block(it.blocks[block], it.made.width).height + block_gap;
}

Waiting fitting(const Arranging& it, double width) {
  Waiting fitting;
  for (const std::size_t block : it.waiting)
    if (least_width(it.blocks[block]) <= width) fitting.push_back(block);
  return fitting;
}

/// Shelves, one under the other, as they stand in a column.
struct Stack {
  std::vector<Shelf> shelves;
  double width = 0, height = 0;
};

void put_on(Stack& stack, Shelf shelf) {
  stack.height += shelf.height + (stack.shelves.empty() ? 0 : block_gap);
  stack.width = std::max(stack.width, shelf.width);
  stack.shelves.push_back(std::move(shelf));
}

/// Whether a shelf may go on a stack: it has room, or what it hangs over costs less than a place below.
bool is_welcome(const Arranging& it, const Column& column, const Stack& stack, const Shelf& shelf) {
  double below = 0;
  for (const StandingBlock& block : shelf.blocks) below = std::max(below, height_below(it, block.block));
  const double gap = stack.shelves.empty() ? 0 : block_gap;
  const double over = column.top + stack.height + gap + shelf.height - column.bottom;
  return over <= below / 2;
}

Stack stack_in(const Arranging& it, const Column& column) {
  Stack stack;
  const Waiting narrow = fitting(it, column.width());
  for (std::size_t i = 0; i < narrow.size();) {
    Shelf shelf = next_shelf(it, narrow, i, column.width());
    if (!is_welcome(it, column, stack, shelf)) shelf = next_shelf(it, {narrow[i]}, 0, column.width());
    const std::size_t many = shelf.blocks.size();
    if (is_welcome(it, column, stack, shelf)) put_on(stack, std::move(shelf));
    i += many;
  }
  return stack;
}

/// Whether everything stands in a column that may stand beside its first row.
bool holds_all(const Arranging& it, const Column& column) {
  std::size_t stacked = 0;
  for (const Shelf& shelf : stack_in(it, column).shelves) stacked += shelf.blocks.size();
  return stacked >= it.waiting.size();
}

/// The column beside a row and, while it holds not all, the rows below that leave room for what waits.
Column widest_column(const Arranging& it, std::size_t first) {
  Column column = column_of(it, first, first);
  const double needed = least_waiting(it);
  for (std::size_t last = first + 1; last < it.made.rows.size() && !holds_all(it, column); ++last) {
    const Column longer = column_of(it, first, last);
    if (longer.width() < std::min(needed, column.width())) break;
    column = longer;
  }
  return column;
}

/// Heads within a column's height end before it.
void shorten_heads(Arranging& it, const Column& column) {
  for (std::size_t i = column.first + 1; i <= column.last; ++i)
    for (Head& head : it.made.rows[i].heads)
      head.width = std::min(head.width, column.left - column_gap - head.x);
}

/// Fills the column beside a row; the first row below it.
std::size_t fill_column(Arranging& it, std::size_t first) {
  const Column column = widest_column(it, first);
  Stack stack = stack_in(it, column);
  if (stack.shelves.empty()) return first + 1;
  shorten_heads(it, column);
  stack_rows(it, it.made.heads[first], first);
  const double left = std::max(column.left, std::min(column.right - stack.width, column.left + most_aside));
  double top = column.top;
  for (Shelf& shelf : stack.shelves) {
    const double height = shelf.height;
    set_down(it, std::move(shelf), left + (stack.width - shelf.width) / 2, top);
    top += height + block_gap;
  }
  const double bottom =
      std::max(top - block_gap, it.made.tops[column.last] + row_height(it.made.rows[column.last]));
  if (column.last + 1 < it.made.rows.size())
    stack_rows(it, bottom + gap_before(it.made.rows[column.last + 1]), column.last + 1);
  else
    it.made.height = std::max(it.made.height, bottom);
  return column.last + 1;
}

/// What is free above low figures of a row, whose bottoms are level with those of high ones.
struct Pocket {
  double left = 0, right = 0, height = 0;
  double width() const { return right - left; }
};

std::vector<Pocket> pockets_of(const Row& row, double width) {
  constexpr double least_height = 14;
  const auto free_above = [&row](std::size_t i) { return row.above - row.cells[i].box.height() - block_gap; };
  std::vector<Pocket> pockets;
  for (std::size_t i = 0, end = 0; i < row.cells.size(); i = end) {
    Pocket pocket{i == 0 ? 0 : row.x[i - 1] + row.cells[i - 1].side + column_gap, 0, free_above(i)};
    for (end = i + 1; end < row.cells.size() && free_above(end) >= least_height; ++end)
      pocket.height = std::min(pocket.height, free_above(end));
    pocket.right = end == row.cells.size() ? width : row.x[end] - row.cells[end].side - column_gap;
    if (pocket.height >= least_height) pockets.push_back(pocket);
  }
  return pockets;
}

/// Sets down what waits above low figures, as far as it has room there.
void fill_pockets(Arranging& it, std::size_t row) {
  const double top = it.made.tops[row];
  for (const Pocket& pocket : pockets_of(it.made.rows[row], it.made.width)) {
    const Waiting waiting = it.waiting;
    double left = pocket.left;
    for (const std::size_t block : waiting) {
      const double free = pocket.right - left;
      if (least_width(it.blocks[block]) > free) continue;
      Shelf shelf = next_shelf(it, {block}, 0, free);
      if (shelf.height > pocket.height) continue;
      const double width = shelf.width;
      set_down(it, std::move(shelf), left, top);
      it.pocketed.push_back({it.made.blocks.size() - 1, row});
      left += width + between_blocks;
    }
  }
}

void fill_below(Arranging& it) {
  while (!it.waiting.empty()) {
    Shelf shelf = next_shelf(it, it.waiting, 0, it.made.width);
    it.made.height += after_row + 2;
    const double height = shelf.height;
    set_down(it, std::move(shelf), 0, it.made.height);
    it.made.height += height;
  }
}

/// How far to the right anything of an arrangement reaches.
double used_width(const Copy& copy, const Arrangement& made) {
  double right = 0;
  for (const Row& row : made.rows) {
    right = std::max(right, right_of(row));
    for (const Head& head : row.heads) right = std::max(right, head.x + head_width(copy, head.part));
  }
  for (const StandingBlock& block : made.blocks) right = std::max(right, block.at.x + block.setting.width);
  return right;
}

} // namespace

Arrangement set_section(const Copy& copy, const Section& section, const std::vector<Block>& blocks,
                        double figures, double width) {
  Arranging it{copy, blocks, {}, section.blocks, {}};
  it.made.width = width;
  it.made.rows = rows_of(section.cells, figures);
  it.made.heads.resize(it.made.rows.size());
  it.made.tops.resize(it.made.rows.size());
  for (Row& row : it.made.rows)
    if (!row.heads.empty()) row.heads.back().width += width - figures;
  stack_rows(it, 0, 0);
  for (std::size_t row = 0; row < it.made.rows.size(); ++row) fill_pockets(it, row);
  for (std::size_t row = 0; row < it.made.rows.size();) row = fill_column(it, row);
  fill_below(it);
  it.made.width = used_width(copy, it.made);
  return std::move(it.made);
}

} // namespace whorl::drawing
