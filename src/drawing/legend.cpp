#include "drawing/legend.hpp"

#include "drawing/furniture.hpp"
#include "drawing/legend_making.hpp"
#include "drawing/legend_signs.hpp"
#include "drawing/lettering.hpp"
#include "drawing/type.hpp"

#include <algorithm>

namespace whorl::drawing {
namespace {

/// Samples are as large as on the chart up to this many mm per W.
constexpr double largest_scale = 5.2;

constexpr double least_row = 6.8, line_height = 4.2, column_width = 63, text_gap = 3, margin_right = 1.5;
constexpr double below_heading = 5.4;

/// A grid of rows and columns, filled column by column.
struct Grid {
  std::size_t columns = 1, rows = 1;
  double column = column_width, sample = 7;
};

Grid grid_of(const Entries& entries, double width) {
  Grid grid;
  for (const Entry& entry : entries) grid.sample = std::max(grid.sample, entry.box.width());
  const double wanted = column_width + std::max(0.0, grid.sample - 10);
  grid.columns = std::max<std::size_t>(1, static_cast<std::size_t>((width + text_gap) / wanted));
  grid.columns = std::min(grid.columns, std::max<std::size_t>(1, (entries.size() + 2) / 3));
  grid.rows = (entries.size() + grid.columns - 1) / grid.columns;
  grid.column = std::min(width / static_cast<double>(grid.columns), wanted + 8);
  return grid;
}

double name_width(const Entry& entry) {
  return entry.name.empty() ? 0 : width_of(entry.name, lettering::legend_name) + 2;
}

double room_for_words(const Grid& grid) { return grid.column - grid.sample - text_gap - margin_right; }

/// Whether a name is so long that its words stand on lines below it.
bool stands_above(const Entry& entry, const Grid& grid) {
  const double room = room_for_words(grid);
  return name_width(entry) > (entry.words.empty() ? room : room / 2);
}

std::vector<std::string> name_lines(const Entry& entry, const Grid& grid) {
  if (!stands_above(entry, grid)) return {entry.name};
  return wrap(entry.name, lettering::legend_name, room_for_words(grid), 0, 3);
}

/// The lines of an entry's words; empty ones are beside a name that stands above them.
std::vector<std::string> lines_of(const Entry& entry, const Grid& grid) {
  const bool above = stands_above(entry, grid);
  std::vector<std::string> lines =
      wrap(entry.words, lettering::legend_words, room_for_words(grid), above ? 0 : name_width(entry), 6);
  if (above) lines.insert(lines.begin(), name_lines(entry, grid).size(), "");
  return lines;
}

double height_of(const Entry& entry, const Grid& grid) {
  const double lines = static_cast<double>(std::max<std::size_t>(1, lines_of(entry, grid).size()));
  return std::max({least_row, entry.box.height() + 2.2, line_height * lines + 2.6});
}

void shift(Path& path, Point by) {
  for (Point& point : path.points) point = point + by;
}

Item shifted(Item item, Point by) {
  if (auto* stroke = std::get_if<Stroke>(&item)) shift(stroke->path, by);
  if (auto* fill = std::get_if<Fill>(&item)) shift(fill->path, by);
  if (auto* symbol = std::get_if<Symbol>(&item)) symbol->at = symbol->at + by;
  if (auto* text = std::get_if<Text>(&item)) text->at = text->at + by;
  return item;
}

/// An entry with the middle of its sample at `middle`.
Group set_entry(const Entry& entry, const Grid& grid, Point middle) {
  Group group{"", "entry", "", {}};
  const Point ink_middle{(entry.box.left + entry.box.right) / 2, (entry.box.top + entry.box.bottom) / 2};
  for (const Item& item : entry.sample) group.items.push_back(shifted(item, middle - ink_middle));
  const std::vector<std::string> lines = lines_of(entry, grid);
  Point at =
      middle + Point{grid.sample / 2 + text_gap,
                     base_line - line_height / 2 * static_cast<double>(lines.empty() ? 0 : lines.size() - 1)};
  const std::vector<std::string> names = name_lines(entry, grid);
  for (std::size_t i = 0; i < names.size() && !entry.name.empty(); ++i)
    group.items.push_back(
        written(names[i], lettering::legend_name, at + Point{0, line_height * static_cast<double>(i)}));
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const double indent = i == 0 ? name_width(entry) : 0;
    if (!lines[i].empty())
      group.items.push_back(written(lines[i], lettering::legend_words, at + Point{indent, 0}));
    at.y += line_height;
  }
  return group;
}

double row_height(const Entries& entries, const Grid& grid, std::size_t row) {
  double height = least_row;
  for (std::size_t i = row; i < entries.size(); i += grid.rows)
    height = std::max(height, height_of(entries[i], grid));
  return height;
}

} // namespace

std::string words(const Making& making, const std::string& id, const std::vector<std::string>& with) {
  return say(making.copy.wording, id, with);
}

std::string words_or(const Making& making, const std::string& id, const std::string& otherwise) {
  const auto found = making.copy.wording.find(id);
  return found != making.copy.wording.end() ? found->second : otherwise;
}

Entry finished(const Making& making, Entry entry) {
  for (const Item& item : entry.sample) join(entry.box, bounds(item, making.symbols.definitions()));
  return entry;
}

Entry finished_letters(const Making& making, Entry entry) {
  entry = finished(making, std::move(entry));
  const double half = entry.box.height() / 2;
  entry.box.top = -half;
  entry.box.bottom = half;
  return entry;
}

Symbol centred(const Making& making, std::uint32_t symbol, Point middle, Color color) {
  const Box box = bounds(making.symbols.definition(symbol));
  const Point ink_middle{(box.left + box.right) / 2, (box.top + box.bottom) / 2};
  return {symbol, middle - making.factor * ink_middle, {0, -1}, making.factor, color, {}};
}

std::vector<Entry> legend_entries(const Copy& copy, SymbolCase& symbols) {
  const Usage usage = usage_of(copy);
  const double factor = std::min(1.0, largest_scale / symbols.scale());
  const Making making{copy, symbols, usage, factor, factor * symbols.scale()};
  Entries entries;
  add_stitches(making, entries);
  add_loops(making, entries);
  add_starts(making, entries);
  add_pointer(making, entries);
  add_label(making, entries);
  add_strip_label(making, entries);
  add_miscounts(making, entries);
  add_direction(making, entries);
  add_inks(making, entries);
  add_signs(copy, symbols, usage, factor, making.scale, entries);
  add_break(making, entries);
  add_footprint(making, entries);
  add_edge(making, entries);
  add_joins(making, entries);
  add_starting_chain(making, entries);
  add_echo(making, entries);
  add_endings(making, entries);
  add_techniques(making, entries);
  return entries;
}

double legend_height(const std::vector<Entry>& entries, double width) {
  const Grid grid = grid_of(entries, width);
  double height = below_heading;
  for (std::size_t row = 0; row < grid.rows; ++row) height += row_height(entries, grid, row);
  return height;
}

Drawn draw_legend(const Copy& copy, SymbolCase& symbols, Point at, double width) {
  const Entries entries = legend_entries(copy, symbols);
  const std::string heading = say(copy.wording, "symbols");
  Drawn legend{{"legend", "legend", heading, {}}, 0};
  if (entries.empty()) return legend;
  const Grid grid = grid_of(entries, width);
  legend.group.items.push_back(written(heading, lettering::heading, at + Point{0, 3}));
  double y = at.y + below_heading;
  for (std::size_t row = 0; row < grid.rows; ++row) {
    const double height = row_height(entries, grid, row);
    for (std::size_t column = 0; column < grid.columns; ++column) {
      const std::size_t entry = column * grid.rows + row;
      if (entry >= entries.size()) break;
      const double x = at.x + grid.column * static_cast<double>(column) + grid.sample / 2;
      legend.group.items.push_back(set_entry(entries[entry], grid, {x, y + height / 2}));
    }
    y += height;
  }
  legend.height = y - at.y;
  return legend;
}

} // namespace whorl::drawing
