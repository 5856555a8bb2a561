#include "pattern/report.hpp"

#include <utf8proc.h>

#include <algorithm>
#include <vector>

namespace whorl::pattern {

namespace {

constexpr int tab_stop = 8;
constexpr int widest = 100; ///< cells of a line that are shown
constexpr int before_the_caret = 40;
constexpr std::string_view indent = "    ";
constexpr std::string_view cut_off = "…";

/// One character as it is shown, and whether the finding is about it.
struct Cell {
  std::string text;
  int width = 0;
  bool marked = false;
};

bool is_control(utf8proc_int32_t code) { return code < 0x20 || (code >= 0x7F && code < 0xA0); }

Cell cell_of(std::string_view bytes, utf8proc_int32_t code, int column) {
  if (code == '\t') {
    const int width = tab_stop - column % tab_stop;
    return {std::string(static_cast<std::size_t>(width), ' '), width, false};
  }
  if (is_control(code)) return {" ", 1, false};
  return {std::string(bytes), utf8proc_charwidth(code), false};
}

/// The characters of a line; a byte that is no text is shown as a replacement character.
std::vector<Cell> cells_of(std::string_view line, std::size_t mark_begin, std::size_t mark_end) {
  std::vector<Cell> cells;
  int column = 0;
  for (std::size_t place = 0; place < line.size();) {
    utf8proc_int32_t code = 0;
    const auto* bytes = reinterpret_cast<const utf8proc_uint8_t*>(line.data()) + place;
    const auto rest = static_cast<utf8proc_ssize_t>(std::min<std::size_t>(line.size() - place, 4));
    const auto taken = utf8proc_iterate(bytes, rest, &code);
    const auto length = static_cast<std::size_t>(std::max<utf8proc_ssize_t>(taken, 1));
    Cell cell = taken > 0 ? cell_of(line.substr(place, length), code, column) : Cell{"\uFFFD", 1, false};
    cell.marked = place >= mark_begin && place < mark_end;
    column += cell.width;
    cells.push_back(std::move(cell));
    place += length;
  }
  return cells;
}

/// The cells [first, last) that are shown of a line.
struct Window {
  std::size_t first = 0;
  std::size_t last = 0;
};

Window window_around(const std::vector<Cell>& cells, std::size_t caret) {
  Window window{caret, caret};
  for (int width = 0; window.first > 0 && width < before_the_caret; --window.first)
    width += cells[window.first - 1].width;
  int width = 0;
  for (window.last = window.first; window.last < cells.size(); ++window.last) {
    width += cells[window.last].width;
    if (width > widest) break;
  }
  return window;
}

Window shown_part(const std::vector<Cell>& cells, std::size_t caret) {
  int width = 0;
  for (const Cell& cell : cells) width += cell.width;
  return width <= widest ? Window{0, cells.size()} : window_around(cells, caret);
}

std::string text_line(const std::vector<Cell>& cells, Window window) {
  std::string line(indent);
  if (window.first > 0) line += cut_off;
  for (auto i = window.first; i < window.last; ++i) line += cells[i].text;
  if (window.last < cells.size()) line += cut_off;
  return line + "\n";
}

/// `^` under the first cell it is about, `~` under the others.
std::string caret_line(const std::vector<Cell>& cells, Window window, std::size_t caret) {
  std::string line(indent);
  if (window.first > 0) line += ' ';
  for (auto i = window.first; i < caret; ++i) line.append(static_cast<std::size_t>(cells[i].width), ' ');
  int under = 0;
  for (auto i = caret; i < window.last && cells[i].marked; ++i) under += cells[i].width;
  line += '^';
  if (under > 1) line.append(static_cast<std::size_t>(under - 1), '~');
  return line + "\n";
}

std::string excerpt(const Source& source, Span span) {
  const Span line = source.line(source.line_of(span.begin));
  const auto begin = std::min(std::max(span.begin, line.begin), line.end) - line.begin;
  const auto end = std::min(std::max(span.end, line.begin), line.end) - line.begin;
  const auto cells = cells_of(source.at(line), begin, std::max(begin + 1, end));
  std::size_t caret = 0;
  while (caret < cells.size() && !cells[caret].marked) ++caret;
  const Window window = shown_part(cells, caret);
  return text_line(cells, window) + caret_line(cells, window, caret);
}

std::string place_of(const Source& source, Span span, std::string_view file) {
  const Position at = span.empty() && span.begin == 0 ? Position{} : source.position(span.begin);
  return std::string(file) + ':' + std::to_string(at.line) + ':' + std::to_string(at.column) + ": ";
}

std::string excerpt_unless_whole(const Source& source, Span span) {
  return span == Span{} ? std::string() : excerpt(source, span);
}

} // namespace

std::string show(const Finding& finding, const Source& source, std::string_view file) {
  std::string shown = place_of(source, finding.span, file) + name(finding.severity) + ": " + finding.message +
                      "\n" + excerpt_unless_whole(source, finding.span);
  if (!finding.mend.empty()) shown += "  mend: " + finding.mend + "\n";
  for (const Remark& remark : finding.remarks)
    shown += place_of(source, remark.span, file) + "see: " + remark.text + "\n" +
             excerpt_unless_whole(source, remark.span);
  return shown;
}

} // namespace whorl::pattern
