#include "drawing/cell.hpp"

#include "drawing/caption.hpp"
#include "drawing/figure.hpp"
#include "drawing/lettering.hpp"

#include <algorithm>

namespace whorl::drawing {
namespace {

constexpr double number_gap = 2, caption_leading = 4.3, narrowest_caption = 46;

double number_width(const Cell& cell) { return width_of(cell.number, lettering::figure_number) + number_gap; }

double line_width(const Cell& cell, std::size_t line) {
  return (line == 0 ? number_width(cell) : 0) + width_of(cell.caption[line], lettering::caption);
}

double caption_width(const Cell& cell) {
  double width = 0;
  for (std::size_t i = 0; i < cell.caption.size(); ++i) width = std::max(width, line_width(cell, i));
  return width;
}

/// The two halves at the comma that makes the longer of them shortest; nothing where none fits.
std::vector<std::string> halves(const std::string& text, double room, double indent) {
  std::vector<std::string> best;
  for (std::size_t at = text.find(", "); at != std::string::npos; at = text.find(", ", at + 1)) {
    const std::string first = text.substr(0, at + 1), second = text.substr(at + 2);
    const double wide =
        std::max(indent + width_of(first, lettering::caption), width_of(second, lettering::caption));
    if (wide > room) continue;
    room = wide;
    best = {first, second};
  }
  return best;
}

/// A sentence in lines: in one, else in two that part at a comma, else as it comes.
void append_lines(std::vector<std::string>& lines, const std::string& text, double room, double indent) {
  std::vector<std::string> set = halves(text, room, indent);
  if (indent + width_of(text, lettering::caption) <= room) set = {text};
  if (set.empty()) set = wrap(text, lettering::caption, room, indent, 5);
  lines.insert(lines.end(), set.begin(), set.end());
}

} // namespace

Cell cell_of(const Copy& copy, std::size_t figure) {
  Cell cell;
  cell.figure = figure;
  cell.part = copy.placement.figures[figure].part;
  cell.box = figure_box(copy, figure);
  cell.side = cell.box.width() / 2;
  if (copy.options.figures_only) return cell;
  cell.number = figure_number(copy, figure);
  const double room = std::max(cell.box.width() * 1.1, narrowest_caption);
  for (const std::string& sentence : caption(copy, figure))
    append_lines(cell.caption, sentence, room, cell.caption.empty() ? number_width(cell) : 0);
  cell.side = std::max(cell.side, caption_width(cell) / 2);
  return cell;
}

double below(const Cell& cell) {
  if (cell.number.empty()) return 0;
  const double lines = static_cast<double>(std::max<std::size_t>(1, cell.caption.size()));
  return caption_gap + caption_leading * (lines - 1) + 1;
}

Group draw_caption(const Cell& cell, double x, double y) {
  Group group{"", "caption", "", {}};
  for (std::size_t i = 0; i < cell.caption.size(); ++i) {
    double left = x - line_width(cell, i) / 2;
    if (i == 0) {
      group.items.push_back(written(cell.number, lettering::figure_number, {left, y}));
      left += number_width(cell);
    }
    group.items.push_back(written(cell.caption[i], lettering::caption, {left, y}));
    y += caption_leading;
  }
  return group;
}

} // namespace whorl::drawing
