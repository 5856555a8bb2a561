#include "drawing/arrange.hpp"

#include "drawing/furniture.hpp"

#include <algorithm>

namespace whorl::drawing {
namespace {

constexpr double after_head = 3, after_row = 7, before_part = 3;
constexpr double column_gap = 9, block_gap = 7, between_blocks = 10;

/// Blocks that wait for a place, in order.
using Waiting = std::vector<std::size_t>;

/// What an arrangement is made from, and it itself.
struct Arranging {
  const Copy& copy;
  const std::vector<Block>& blocks;
  Arrangement made;
  Waiting waiting;
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
    made.tops[i] = y + heads_height(it.copy, made.rows[i]);
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

/// Whether a part's first figure stands in a row or above it.
bool has_begun(const Arranging& it, std::uint32_t part, std::size_t row) {
  for (std::size_t i = 0; i <= row; ++i)
    for (const Cell& cell : it.made.rows[i].cells)
      if (cell.part == part) return true;
  return false;
}

/// The least width that one of the waiting blocks takes that may stand in a row; 0: none may.
double least_waiting(const Arranging& it, std::size_t row) {
  double least = 0;
  for (const std::size_t block : it.waiting)
    if (has_begun(it, it.blocks[block].part, row)) least = std::max(least, least_width(it.blocks[block]));
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
  constexpr double step = 6;
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

Waiting begun(const Arranging& it, std::size_t row, double width) {
  Waiting begun;
  for (const std::size_t block : it.waiting)
    if (has_begun(it, it.blocks[block].part, row) && least_width(it.blocks[block]) <= width)
      begun.push_back(block);
  return begun;
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
  const Waiting fitting = begun(it, column.last, column.width());
  for (std::size_t i = 0; i < fitting.size();) {
    Shelf shelf = next_shelf(it, fitting, i, column.width());
    if (!is_welcome(it, column, stack, shelf)) shelf = next_shelf(it, {fitting[i]}, 0, column.width());
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
  return stacked >= begun(it, column.first, it.made.width).size();
}

/// The column beside a row and, while it holds not all, the rows below that leave room for what waits.
Column widest_column(const Arranging& it, std::size_t first) {
  Column column = column_of(it, first, first);
  const double needed = least_waiting(it, first);
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
  const double left = std::max(column.left, column.right - stack.width);
  double top = column.top;
  for (Shelf& shelf : stack.shelves) {
    const double height = shelf.height;
    set_down(it, std::move(shelf), left + (column.right - left - shelf.width) / 2, top);
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

void fill_below(Arranging& it) {
  while (!it.waiting.empty()) {
    Shelf shelf = next_shelf(it, it.waiting, 0, it.made.width);
    it.made.height += after_row + 2;
    const double height = shelf.height;
    set_down(it, std::move(shelf), 0, it.made.height);
    it.made.height += height;
  }
}

/// Paper that a sheet of an arrangement takes; one that is higher than a page is long counts as more.
double paper_of(const Arrangement& made) {
  constexpr double besides = 80, slender = 1.42; // about as high as title and legend are together
  const double width = made.width + 2 * margin, height = made.height + besides;
  return width * height * (1 + 1.2 * std::max(0.0, height / width - slender));
}

} // namespace

Arrangement arrange(const Copy& copy, const std::vector<Cell>& cells, const std::vector<Block>& blocks,
                    double figures, double width) {
  Arranging it{copy, blocks, {}, {}};
  it.made.width = width;
  it.made.rows = rows_of(copy, cells, figures);
  it.made.heads.resize(it.made.rows.size());
  it.made.tops.resize(it.made.rows.size());
  for (std::size_t block = 0; block < blocks.size(); ++block) it.waiting.push_back(block);
  for (Row& row : it.made.rows)
    if (!row.heads.empty()) row.heads.back().width += width - figures;
  stack_rows(it, 0, 0);
  for (std::size_t row = 0; row < it.made.rows.size();) row = fill_column(it, row);
  fill_below(it);
  return std::move(it.made);
}

Arrangement lowest_arrangement(const Copy& copy, const std::vector<Cell>& cells,
                               const std::vector<Block>& blocks, double width) {
  Arrangement lowest = arrange(copy, cells, blocks, width, width);
  for (const double column : {45.0, 65.0, 85.0}) {
    const double figures = width - column;
    if (std::any_of(cells.begin(), cells.end(), [&](const Cell& c) { return 2 * c.side > figures; })) break;
    Arrangement made = arrange(copy, cells, blocks, figures, width);
    if (made.height < lowest.height) lowest = std::move(made);
  }
  return lowest;
}

Arrangement best_arrangement(const Copy& copy, const std::vector<Cell>& cells,
                             const std::vector<Block>& blocks, double least) {
  constexpr double step = 10, most = 1.6;
  for (const Cell& cell : cells) least = std::max(least, 2 * cell.side);
  for (const Block& block : blocks) least = std::max(least, least_width(block));
  Arrangement best;
  double least_paper = 0;
  for (double width = least; width <= least * most; width += step)
    for (const double column : {0.0, 45.0, 65.0, 85.0}) {
      const double figures = width - column;
      if (std::any_of(cells.begin(), cells.end(), [&](const Cell& c) { return 2 * c.side > figures; })) break;
      Arrangement made = arrange(copy, cells, blocks, figures, width);
      const double paper = paper_of(made);
      if (least_paper > 0 && paper >= least_paper) continue;
      least_paper = paper;
      best = std::move(made);
    }
  return best;
}

} // namespace whorl::drawing
