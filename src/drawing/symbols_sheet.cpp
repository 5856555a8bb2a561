#include "drawing/furniture.hpp"
#include "drawing/lettering.hpp"
#include "drawing/lines.hpp"
#include "drawing/loop_picture.hpp"
#include "drawing/symbol_list.hpp"

#include <algorithm>
#include <cmath>

namespace whorl::drawing {
namespace {

constexpr double sheet_width = 210, inner_width = sheet_width - 2 * margin;
constexpr std::size_t columns = 8;
constexpr double cell = inner_width / columns, words_width = cell - 2;
constexpr double after_title = 9, after_heading = 4.5, name_gap = 5.2, leading = 3.7, after_row = 3.5,
                 after_group = 6;
constexpr Lettering words{2.8, Typeface::sans, false, false, ink::grey};
constexpr Lettering unnamed{2.8, Typeface::sans, false, false, ink::black};

struct Composing {
  const Copy& copy;
  SymbolCase symbols;
  Scene scene;
  double y = margin;
};

void move(Item& item, Point by) {
  const auto shift = [by](Path& path) {
    for (Point& point : path.points) point = point + by;
  };
  if (auto* stroke = std::get_if<Stroke>(&item)) shift(stroke->path);
  if (auto* fill = std::get_if<Fill>(&item)) shift(fill->path);
  if (auto* symbol = std::get_if<Symbol>(&item)) symbol->at = symbol->at + by;
  if (auto* text = std::get_if<Text>(&item)) text->at = text->at + by;
  if (auto* group = std::get_if<Group>(&item))
    for (Item& inner : group->items) move(inner, by);
}

std::vector<std::string> lines_of(const Entry& entry) { return wrap(entry.words, words, words_width, 0, 4); }

double text_height(const Entry& entry) {
  const std::size_t lines = lines_of(entry).size() + (entry.name.empty() ? 0 : 1);
  return leading * static_cast<double>(std::max<std::size_t>(1, lines));
}

/// A symbol with its foot on a line, its name and its words under it, on one axis.
Group draw_entry(const Entry& entry, double axis, double foot) {
  Group group{"", "entry", "", {}};
  const Point by{axis - (entry.box.left + entry.box.right) / 2, foot - entry.box.bottom};
  for (Item item : entry.sample) {
    move(item, by);
    group.items.push_back(std::move(item));
  }
  double y = foot + name_gap;
  if (!entry.name.empty()) {
    const double wide = width_of(entry.name, lettering::legend_name);
    const double size = lettering::legend_name.size * std::min(1.0, words_width / wide);
    group.items.push_back(
        written(entry.name, at_size(lettering::legend_name, std::max(2.5, size)), {axis, y}, Anchor::middle));
    y += leading + 0.2;
  }
  for (std::string& line : lines_of(entry)) {
    group.items.push_back(
        written(std::move(line), entry.name.empty() ? unnamed : words, {axis, y}, Anchor::middle));
    y += leading;
  }
  return group;
}

void lay_row(Composing& sheet, Group& group, const std::vector<Entry>& entries, std::size_t first) {
  const std::size_t end = std::min(entries.size(), first + columns);
  double above = 0, below = 0;
  for (std::size_t i = first; i < end; ++i) {
    above = std::max(above, entries[i].box.height());
    below = std::max(below, text_height(entries[i]));
  }
  const double foot = sheet.y + above;
  for (std::size_t i = first; i < end; ++i)
    group.items.push_back(
        draw_entry(entries[i], margin + cell * (static_cast<double>(i - first) + 0.5), foot));
  sheet.y = foot + name_gap + below - leading + after_row;
}

/// The picture of the two loops stands behind the symbols that mark them.
void lay_loops(Composing& sheet, Group& group, const SymbolGroup& symbols, double top) {
  const double left = margin + cell * static_cast<double>(symbols.entries.size());
  if (symbols.id != "loops" || sheet_width - margin - left < loop_picture_width) return;
  group.items.push_back(draw_loop_picture(sheet.copy, {left + 4, top - 6}, 56).group);
  sheet.y = std::max(sheet.y, top - 6 + loop_picture_height);
}

void lay_group(Composing& sheet, const SymbolGroup& symbols) {
  Group group{"", "symbols", symbols.heading, {}};
  group.items.push_back(written(symbols.heading, lettering::heading, {margin, sheet.y}));
  sheet.y += after_heading;
  const double top = sheet.y;
  for (std::size_t first = 0; first < symbols.entries.size(); first += columns)
    lay_row(sheet, group, symbols.entries, first);
  lay_loops(sheet, group, symbols, top);
  sheet.scene.items.push_back(std::move(group));
  sheet.y += after_group;
}

std::string spoken(const std::vector<SymbolGroup>& list) {
  std::string said;
  for (const SymbolGroup& group : list) {
    said += (said.empty() ? "" : " ") + group.heading + ":";
    const char* before = " ";
    for (const Entry& entry : group.entries) {
      said += before + (entry.name.empty() ? entry.words : entry.name);
      before = ", ";
    }
    said += ".";
  }
  return said;
}

} // namespace

Scene symbols_sheet(const Copy& copy, const std::vector<Mark>& marks) {
  Composing sheet{copy, SymbolCase(copy.fabric.kinds, marks, copy.options.style, copy.options.stitch), {}};
  sheet.scene.width = sheet_width;
  sheet.scene.items.push_back(Fill{});
  Drawn title = draw_title(copy, {margin, margin}, inner_width);
  sheet.y += title.height + after_title;
  sheet.scene.items.push_back(std::move(title.group));
  const std::vector<SymbolGroup> list = symbol_list(copy, sheet.symbols);
  for (const SymbolGroup& group : list) lay_group(sheet, group);
  Scene& scene = sheet.scene;
  scene.height = std::ceil(sheet.y - after_group + margin);
  scene.items.front() =
      Fill{closed_through({{0, 0}, {scene.width, 0}, {scene.width, scene.height}, {0, scene.height}}),
           ink::paper,
           {}};
  scene.symbols = sheet.symbols.definitions();
  scene.language = copy.text.language;
  scene.title = copy.text.title;
  scene.description = spoken(list);
  return std::move(sheet.scene);
}

} // namespace whorl::drawing
