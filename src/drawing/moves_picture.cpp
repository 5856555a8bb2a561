#include "drawing/moves_picture.hpp"

#include "drawing/flow.hpp"
#include "drawing/furniture.hpp"
#include "drawing/lettering.hpp"
#include "drawing/lines.hpp"

#include <algorithm>
#include <cmath>

namespace whorl::drawing {
namespace {

constexpr std::size_t columns = 5;
constexpr double sheet_width = 210, cell_width = (sheet_width - 2 * margin) / columns;
constexpr double between_blocks = 5;
constexpr double words_width = cell_width - 3.6, number_indent = 4.6, leading = 4;
constexpr double after_title = 5, after_heading = 2.6, after_row = 4, after_strip = 5, before_note = 2;
constexpr double to_caption = hook_picture_height + 3.6;

struct Sheet {
  Scene scene;
  double y = margin;
};

double inner_width() { return sheet_width - 2 * margin; }

void lay_title(Sheet& sheet, const MovesText& text) {
  Flow flow(margin, sheet_width - margin, margin - 1);
  flow.put(text.title, lettering::title, 0);
  flow.put(text.subtitle, lettering::subtitle, 4.5);
  flow.put_right(text.terms, lettering::terms, 8);
  sheet.y = flow.base() + 3.95;
  Group title{"", "title", "", flow.take()};
  title.items.push_back(
      Stroke{line_through({{margin, sheet.y}, {sheet_width - margin, sheet.y}}), 0.25, ink::black, 0, {}});
  sheet.scene.items.push_back(std::move(title));
  sheet.y += after_title;
}

/// Lines of a text below one another; gives the height.
double lay_lines(Group& group, std::string_view text, const Lettering& set, Point at, double width) {
  double y = at.y;
  for (std::string& line : wrap(text, set, width)) {
    group.items.push_back(written(std::move(line), set, {at.x, y}));
    y += leading;
  }
  return y - at.y;
}

/// What stands under a picture: its number, its words, the loops; gives the height.
double lay_caption(Group& group, const MovePicture& move, Point at) {
  group.items.push_back(written(move.number, lettering::figure_number, at));
  const double x = at.x + number_indent, width = words_width - number_indent;
  const double words = lay_lines(group, move.words, lettering::legend_words, {x, at.y}, width);
  return words + lay_lines(group, move.loops, lettering::caption, {x, at.y + words}, width);
}

std::string spoken(const MovePicture& move) {
  return move.number + ". " + move.words + (move.loops.empty() ? "" : ": " + move.loops);
}

double lay_cell(Group& group, const MovePicture& move, Point at) {
  Group cell{"", "move", spoken(move), {}};
  cell.items.push_back(draw_hook(move.hook, at));
  const double high = lay_caption(cell, move, at + Point{0, to_caption});
  group.items.push_back(std::move(cell));
  return to_caption + high;
}

/// A strip as it stands: so many pictures side by side, the last row perhaps fewer.
struct Block {
  const MoveStrip* strip = nullptr;
  std::size_t in_row = 1;
  double x = 0;
  double width() const { return cell_width * static_cast<double>(in_row) - between_blocks; }
};

/// As few rows as it needs, filled evenly.
std::size_t pictures_in_row(std::size_t pictures) {
  const std::size_t rows = std::max<std::size_t>(1, (pictures + columns - 1) / columns);
  return std::max<std::size_t>(1, (pictures + rows - 1) / rows);
}

/// Short strips share a row.
std::vector<std::vector<Block>> rows_of(const std::vector<MoveStrip>& strips) {
  std::vector<std::vector<Block>> rows;
  std::size_t filled = columns;
  for (const MoveStrip& strip : strips) {
    Block block{&strip, pictures_in_row(strip.moves.size())};
    if (filled + block.in_row > columns) rows.emplace_back(), filled = 0;
    block.x = margin + cell_width * static_cast<double>(filled);
    filled += block.in_row;
    rows.back().push_back(block);
  }
  return rows;
}

double lay_heading(Group& group, const Block& block, double y) {
  constexpr double heading_leading = 6.4;
  double high = 0;
  for (std::string& line : wrap(block.strip->heading, lettering::part_name, block.width())) {
    group.items.push_back(written(std::move(line), lettering::part_name, {block.x, y + high}));
    high += heading_leading;
  }
  return high +
         lay_lines(group, block.strip->note, lettering::note, {block.x, y + high - 0.8}, block.width());
}

double lay_pictures(Group& group, const Block& block, double y) {
  const std::vector<MovePicture>& moves = block.strip->moves;
  double high = 0;
  for (std::size_t first = 0; first < moves.size(); first += block.in_row) {
    double row = 0;
    for (std::size_t i = first; i < std::min(first + block.in_row, moves.size()); ++i) {
      const double x = block.x + cell_width * static_cast<double>(i - first);
      row = std::max(row, lay_cell(group, moves[i], {x, y + high}));
    }
    high += row + after_row;
  }
  return high;
}

void lay_row(Sheet& sheet, const std::vector<Block>& blocks) {
  std::vector<Group> groups;
  double headings = 0, pictures = 0;
  for (const Block& block : blocks) {
    groups.push_back({"", "strip", block.strip->heading, {}});
    headings = std::max(headings, lay_heading(groups.back(), block, sheet.y + 4));
  }
  sheet.y += headings + after_heading;
  for (std::size_t i = 0; i < blocks.size(); ++i)
    pictures = std::max(pictures, lay_pictures(groups[i], blocks[i], sheet.y));
  for (Group& group : groups) sheet.scene.items.push_back(std::move(group));
  sheet.y += pictures + after_strip;
}

void lay_note(Sheet& sheet, const std::string& note) {
  Group group{"", "closing", "", {}};
  sheet.y += before_note;
  sheet.y += lay_lines(group, note, lettering::closing, {margin, sheet.y}, inner_width());
  sheet.scene.items.push_back(std::move(group));
}

} // namespace

Scene moves_sheet(const MovesText& text, const std::vector<MoveStrip>& strips) {
  Sheet sheet;
  sheet.scene.width = sheet_width;
  sheet.scene.language = text.language;
  sheet.scene.title = text.title;
  sheet.scene.description = text.description;
  sheet.scene.items.push_back(Fill{});
  lay_title(sheet, text);
  for (const std::vector<Block>& row : rows_of(strips)) lay_row(sheet, row);
  lay_note(sheet, text.note);
  sheet.scene.height = std::ceil(sheet.y - leading + margin);
  const double right = sheet.scene.width, bottom = sheet.scene.height;
  sheet.scene.items.front() =
      Fill{closed_through({{0, 0}, {right, 0}, {right, bottom}, {0, bottom}}), ink::paper, {}};
  return std::move(sheet.scene);
}

} // namespace whorl::drawing
