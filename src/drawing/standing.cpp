#include "drawing/standing.hpp"

#include <algorithm>
#include <optional>

namespace whorl::drawing {
namespace {

constexpr double most_more_beside = 16; ///< that a gap between neighbours may grow by
constexpr double most_more_above = 12;  ///< that a gap may grow by so that figures end on one line
constexpr double least_part = 0.6;      ///< of a column's width that a figure on its axis has

using Kind = Piece::Kind;
using Chain = std::vector<std::uint32_t>;

/// Where a piece is set down: its upper left corner, its width, and the line that figures at its foot end on.
struct Room {
  Point at;
  double width = 0;
  std::optional<double> foot;
};

/// Axes that the first figures of rows one above the other share: how far each column reaches to either side.
struct Columns {
  std::vector<double> sides;
  double gap = 0;
};

class SettingDown {
public:
  SettingDown(const Section& section, const std::vector<Block>& blocks, const SectionSlices& slices,
              Arrangement& whole)
      : section_(section), blocks_(blocks), slices_(slices), whole_(whole) {}

  void put(std::uint32_t piece, const Room& room) {
    put_chain(slices_.slicing.chain(piece, Kind::above), room);
  }

private:
  const Piece& piece(std::uint32_t number) const { return slices_.slicing[number]; }

  bool is_cell(std::uint32_t number) const {
    return piece(number).kind == Kind::thing && piece(number).first < section_.cells.size();
  }

  double side(std::uint32_t cell) const { return section_.cells[piece(cell).first].side; }

  Chain row_of(std::uint32_t number) const { return slices_.slicing.chain(number, Kind::beside); }

  /// The figures that a row begins with.
  std::size_t leading(const Chain& row) const {
    std::size_t many = 0;
    while (many < row.size() && is_cell(row[many])) ++many;
    return many;
  }

  double gap_that_fills(const Chain& row, double taken, double width) const {
    const double gap = slices_.slicing.gap_beside(), gaps = static_cast<double>(row.size()) - 1;
    if (gaps == 0) return gap + most_more_beside;
    return gap + std::min(most_more_beside, (width - taken - gaps * gap) / gaps);
  }

  /// What a row takes without its gaps when its first figures stand in columns.
  double taken(const Chain& row, const std::vector<double>& sides) const {
    double width = 0;
    for (std::size_t i = 0; i < row.size(); ++i)
      width += i < sides.size() && i < leading(row) ? 2 * sides[i] : piece(row[i]).width;
    return width;
  }

  /// Columns of so many figures for these rows; none where a figure would float in its column, or a row would
  /// be too wide.
  Columns columns(const std::vector<Chain>& rows, std::size_t most, double width) const {
    Columns made;
    for (const Chain& row : rows)
      for (std::size_t i = 0; i < std::min(most, leading(row)); ++i) {
        if (made.sides.size() <= i) made.sides.push_back(0);
        made.sides[i] = std::max(made.sides[i], side(row[i]));
      }
    made.gap = slices_.slicing.gap_beside() + most_more_beside;
    for (const Chain& row : rows) {
      for (std::size_t i = 0; i < std::min(made.sides.size(), leading(row)); ++i)
        if (side(row[i]) < least_part * made.sides[i]) return {};
      made.gap = std::min(made.gap, gap_that_fills(row, taken(row, made.sides), width));
    }
    return made.gap < slices_.slicing.gap_beside() - 1e-6 ? Columns{} : made;
  }

  /// Axes in common for all figures, else for the first of each row, else none.
  Columns best_columns(const std::vector<Chain>& rows, double width) const {
    for (const std::size_t most : {std::size_t{9}, std::size_t{1}}) {
      const Columns made = columns(rows, most, width);
      if (!made.sides.empty() && (most > 1 || rows.size() > 1)) return made;
    }
    return {};
  }

  void put_chain(const Chain& rows, const Room& room) {
    std::vector<Chain> all;
    for (const std::uint32_t row : rows) all.push_back(row_of(row));
    const Columns common = best_columns(all, room.width);
    double y = room.at.y;
    for (std::size_t i = 0; i < rows.size(); ++i) {
      const Piece& it = piece(rows[i]);
      const double foot = y + it.rise;
      const bool last = i + 1 == rows.size();
      if (last && it.rise > 0 && room.foot && may_sink(rows, *room.foot - foot)) y += *room.foot - foot;
      put_row(all[i], {{room.at.x, y}, room.width, {}}, common);
      y += it.height + slices_.slicing.gap_above();
    }
  }

  /// Whether what stands last may sink so far: below furniture always, below figures a little.
  bool may_sink(const Chain& rows, double by) const {
    if (by <= 0) return false;
    return rows.size() == 1 || by <= most_more_above || !has_cell(rows.front());
  }

  bool has_cell(std::uint32_t number) const {
    const Piece& it = piece(number);
    return it.kind == Kind::thing ? is_cell(number) : has_cell(it.first) || has_cell(it.second);
  }

  void put_row(const Chain& row, const Room& room, const Columns& common) {
    double rise = 0;
    for (const std::uint32_t part : row) rise = std::max(rise, piece(part).rise);
    const std::size_t led = std::min(common.sides.size(), leading(row));
    const double gap = led > 0 ? common.gap : gap_that_fills(row, taken(row, {}), room.width);
    double x = room.at.x;
    for (std::size_t i = 0; i < row.size(); ++i) {
      const double width = i < led ? 2 * common.sides[i] : piece(row[i]).width;
      const bool last = i + 1 == row.size();
      const Room own{{x, room.at.y}, last ? room.at.x + room.width - x : width, room.at.y + rise};
      if (i < led)
        put_cell(row[i], {x + common.sides[i], *own.foot});
      else
        put_part(row[i], own);
      x += width + gap;
    }
  }

  void put_cell(std::uint32_t number, Point at) {
    whole_.cells.push_back({section_.cells[piece(number).first], at});
  }

  void put_part(std::uint32_t number, const Room& room) {
    const Piece& it = piece(number);
    if (it.kind != Kind::thing) return put(number, room);
    if (is_cell(number)) return put_cell(number, {room.at.x + side(number), *room.foot});
    const std::size_t thing = it.first - section_.cells.size();
    const std::size_t block = section_.blocks[thing];
    whole_.blocks.push_back(
        {block, room.at, eased(blocks_[block], slices_.forms[thing][it.second], room.width)});
  }

  const Section& section_;
  const std::vector<Block>& blocks_;
  const SectionSlices& slices_;
  Arrangement& whole_;
};

} // namespace

void set_down(const Section& section, const std::vector<Block>& blocks, const SectionSlices& slices,
              std::uint32_t piece, Point at, double width, Arrangement& whole) {
  SettingDown(section, blocks, slices, whole).put(piece, {at, width, {}});
}

} // namespace whorl::drawing
