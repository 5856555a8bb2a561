#include "drawing/legend.hpp"

#include "drawing/caption.hpp"
#include "drawing/figure.hpp"
#include "drawing/legend_signs.hpp"
#include "drawing/lettering.hpp"
#include "drawing/lines.hpp"
#include "drawing/type.hpp"
#include "drawing/usage.hpp"
#include "layout/label.hpp"

#include <algorithm>
#include <cmath>

namespace whorl::drawing {
namespace {

using layout::Centre;
using layout::Line;
using layout::SymbolKey;
using Entries = std::vector<Entry>;

/// Samples are as large as on the chart up to this many mm per W.
constexpr double largest_scale = 5.2;

/// What the entries are made from.
struct Making {
  const Copy& copy;
  SymbolCase& symbols;
  const Usage& usage;
  double factor; ///< of the chart's scale
  double scale;  ///< mm per W of the samples
};

std::string words(const Making& making, const std::string& id, const std::vector<std::string>& with = {}) {
  return say(making.copy.wording, id, with);
}

/// The words of an id, or others where the language has none.
std::string words_or(const Making& making, const std::string& id, const std::string& otherwise) {
  const auto found = making.copy.wording.find(id);
  return found != making.copy.wording.end() ? found->second : otherwise;
}

/// Base line of an entry's words below the middle of its sample.
constexpr double base_line = 1.1;

Entry finished(const Making& making, Entry entry) {
  for (const Item& item : entry.sample) join(entry.box, bounds(item, making.symbols.definitions()));
  return entry;
}

/// Letters keep their base line, which is that of the words beside them.
Entry finished_letters(const Making& making, Entry entry) {
  entry = finished(making, std::move(entry));
  const double half = entry.box.height() / 2;
  entry.box.top = -half;
  entry.box.bottom = half;
  return entry;
}

/// A symbol with the middle of its ink at `middle`.
Symbol centred(const Making& making, std::uint32_t symbol, Point middle, Color color) {
  const Box box = bounds(making.symbols.definition(symbol));
  const Point ink_middle{(box.left + box.right) / 2, (box.top + box.bottom) / 2};
  return {symbol, middle - making.factor * ink_middle, {0, -1}, making.factor, color, {}};
}

Stroke hairline(Path path, double width) { return {std::move(path), width, ink::grey, 0, {}}; }

// Stitches.

const stitch::StitchKind& kind_of(const Making& making, const SymbolKey& key) {
  return making.copy.fabric.kinds[key.kind];
}

/// "dc2tog" taken apart: where its number begins; npos: it is no stitches worked together.
std::size_t number_in(const std::string& name) {
  if (name.size() < 5 || name.substr(name.size() - 3) != "tog") return std::string::npos;
  const std::size_t at = name.find_last_not_of("0123456789", name.size() - 4) + 1;
  return at > 0 && at < name.size() - 3 ? at : std::string::npos;
}

/// The name of a kind in the terms of the sheet; of stitches worked together, that of the stitch and how
/// many.
std::string kind_name(const Making& making, const std::string& kind) {
  const std::size_t number = number_in(kind);
  if (number == std::string::npos || making.copy.wording.count("name-" + kind) > 0)
    return words_or(making, "name-" + kind, kind);
  const std::string base = kind.substr(0, number);
  return words_or(making, "name-" + base, base) + kind.substr(number);
}

std::string kind_title(const Making& making, const stitch::StitchKind& kind) {
  const std::size_t number = number_in(kind.name);
  if (kind.own || number == std::string::npos || making.copy.wording.count("title-" + kind.name) > 0)
    return words_or(making, "title-" + kind.name, kind.title);
  const std::string many = kind.name.substr(number, kind.name.size() - 3 - number);
  return words(making, "title-together", {many, kind_name(making, kind.name.substr(0, number))});
}

std::string stitch_name(const Making& making, const SymbolKey& key) {
  const std::string name = kind_name(making, kind_of(making, key).name);
  if (key.in_one == 1) return name;
  const std::string several = key.in_one == 2 ? "name-inc" : "name-several";
  return words_or(making, "name-" + kind_of(making, key).name + "-" + std::to_string(key.in_one),
                  words(making, several, {std::to_string(key.in_one), name}));
}

bool is_single(const stitch::StitchKind& kind) {
  const stitch::Shape shape = stitch::shape_of(kind);
  return shape.cross && shape.legs == 1;
}

std::string stitch_words(const Making& making, const SymbolKey& key) {
  const stitch::StitchKind& kind = kind_of(making, key);
  const std::string name = words_or(making, "name-" + kind.name, kind.name);
  if (key.in_one > 1) return words(making, "title-several", {std::to_string(key.in_one), name});
  const std::string title = kind_title(making, kind);
  if (is_single(kind) && making.usage.disc) return words(making, "title-turned", {title});
  return title;
}

void add_stitches(const Making& making, Entries& entries) {
  for (const SymbolKey& key : making.usage.stitches) {
    const std::uint32_t symbol = making.symbols.stitch(key);
    entries.push_back(finished(making, {making.symbols.definition(symbol).id,
                                        {centred(making, symbol, {}, ink::black)},
                                        {},
                                        stitch_name(making, key),
                                        stitch_words(making, key)}));
  }
}

const char* loops_key(std::uint8_t loops) {
  if (loops == stitch::back) return "back";
  if (loops == stitch::front) return "front";
  return loops == stitch::third ? "third" : "loops";
}

void add_loops(const Making& making, Entries& entries) {
  for (const SymbolKey& key : making.usage.looped) {
    const std::string loops = loops_key(key.loops);
    entries.push_back(finished(making, {loops,
                                        {centred(making, making.symbols.stitch(key), {}, ink::black)},
                                        {},
                                        words(making, "name-" + loops),
                                        words(making, "title-" + loops)}));
  }
}

// Marks.

void add_mark(const Making& making, Entries& entries, const std::string& mark, const std::string& key,
              const std::string& name, const std::string& id) {
  const auto symbol = making.symbols.mark(mark);
  if (!symbol) return;
  entries.push_back(
      finished(making, {key, {centred(making, *symbol, {}, ink::black)}, {}, name, words(making, id)}));
}

void add_starts(const Making& making, Entries& entries) {
  for (const Centre centre : {Centre::magic_ring, Centre::second_chain}) {
    const std::string name(centre_mark(centre));
    if (making.usage.centres.count(centre) > 0)
      add_mark(making, entries, name, name, words(making, "name-" + name), "title-" + name);
  }
}

/// Which way the first figure is worked at its top: -1 to the left.
double way_of(const Making& making) {
  return making.usage.pointer != nullptr && making.usage.pointer->direction.x > 0 ? 1 : -1;
}

/// An id of the wording, for a sheet with nothing but rows another.
std::string of_rounds(const Making& making, const std::string& id) {
  return making.usage.rows && !making.usage.disc && !making.usage.strip ? id + "-row" : id;
}

void add_pointer(const Making& making, Entries& entries) {
  if (making.usage.pointer == nullptr) return;
  const double length = making.usage.pointer->length * making.scale;
  const double way = way_of(making);
  const Fill mark{triangle({way * length / 2, 0}, {way, 0}, length, length), ink::black, {}};
  entries.push_back(
      finished(making, {"pointer", {mark}, {}, "", words(making, of_rounds(making, "title-pointer"))}));
}

std::string stitches(const Making& making, std::uint32_t count) {
  return words(making, count == 1 ? "stitch" : "stitches", {std::to_string(count)});
}

/// A label of the sheet, as it stands there.
void add_label(const Making& making, Entries& entries) {
  const layout::Label* label = making.usage.label;
  if (label == nullptr) return;
  const layout::Run& last = label->runs.back();
  const double width = (last.x + last.width) * making.scale;
  std::vector<Item> sample;
  for (const layout::Run& run : label->runs)
    sample.push_back(lettered(run, {run.x * making.scale - width / 2, base_line}, making.scale, ink::black));
  const std::uint32_t round = making.usage.label_figure->rings[label->ring].round;
  const fabric::Round& it = making.copy.fabric.rounds[round];
  const char* id = it.kind == pattern::RoundKind::row ? "title-label-row" : "title-label";
  entries.push_back(finished_letters(
      making, {"label",
               std::move(sample),
               {},
               "",
               words(making, id, {round_number(making.copy.fabric, round), stitches(making, it.counted)})}));
}

/// Of a sheet with strips alone: their numbers and counts stand apart.
void add_strip_label(const Making& making, Entries& entries) {
  if (!making.usage.strip || making.usage.label != nullptr) return;
  std::vector<Item> sample;
  const double half = 1.1 * making.scale;
  const auto letters = [&](const char* text, layout::Face face, double size, double middle) {
    layout::Run run{text, face, size, 0, 0};
    run.width = size * text_width(Typeface::sans, face == layout::Face::bold, false, text);
    sample.push_back(
        lettered(run, {middle - run.width * making.scale / 2, base_line}, making.scale, ink::black));
  };
  letters("8", layout::Face::regular, layout::count_size, way_of(making) * half);
  letters("3", layout::Face::bold, layout::number_size, 0.0 - way_of(making) * half);
  entries.push_back(finished_letters(
      making,
      {"label", std::move(sample), {}, "", words(making, "title-label-strip", {"3", stitches(making, 8)})}));
}

void add_miscounts(const Making& making, Entries& entries) {
  constexpr std::size_t most = 6;
  const auto& rounds = making.usage.miscounted;
  const Lettering set = at_size(lettering::legend_name, 0.62 * making.scale);
  for (std::size_t i = 0; i < rounds.size() && i < most; ++i) {
    const fabric::Round& round = making.copy.fabric.rounds[rounds[i]];
    const bool more = i + 1 == most && rounds.size() > most;
    const std::string said = words(making, more ? "title-miscount-more" : "title-miscount",
                                   {round_number(making.copy.fabric, rounds[i]),
                                    std::to_string(round.counted), std::to_string(round.stated)});
    entries.push_back(finished_letters(
        making, {"miscount", {written("(!)", set, {0, base_line}, Anchor::middle)}, {}, "", said}));
  }
}

void add_direction(const Making& making, Entries& entries) {
  if (making.usage.lines.count(Line::direction) == 0) return;
  std::vector<Item> sample;
  for (Path& path : bent_arrow({}, 1.9 * making.scale, way_of(making)))
    sample.push_back(hairline(std::move(path), 0.075 * making.scale));
  entries.push_back(
      finished(making, {"direction", std::move(sample), {}, "", words(making, "title-direction")}));
}

/// The first stitch of the legend that is no chain.
const SymbolKey& plainest(const Making& making) {
  for (const SymbolKey& key : making.usage.stitches)
    if (stitch::shape_of(kind_of(making, key)).legs > 0) return key;
  return making.usage.stitches.front();
}

/// Two of a plain stitch beside one another.
std::vector<Item> pair_of_stitches(const Making& making, Color left, Color right) {
  const std::uint32_t symbol = making.symbols.stitch(plainest(making));
  const double apart =
      std::max(0.95 * making.scale, 1.2 * making.factor * bounds(making.symbols.definition(symbol)).width());
  return {centred(making, symbol, {-apart / 2, 0}, left), centred(making, symbol, {apart / 2, 0}, right)};
}

void add_inks(const Making& making, Entries& entries) {
  if (!making.usage.two_inks || making.usage.stitches.empty()) return;
  entries.push_back(finished(making, {"inks",
                                      pair_of_stitches(making, ink::black, ink::second),
                                      {},
                                      "",
                                      words(making, of_rounds(making, "title-inks"))}));
}

void add_break(const Making& making, Entries& entries) {
  if (making.usage.lines.count(Line::fold_break) == 0) return;
  const Path path = break_line({}, 1.7 * making.scale, 0.2 * making.scale);
  entries.push_back(finished(
      making, {"break", {hairline(path, 0.05 * making.scale)}, {}, "", words(making, "title-break")}));
}

void add_echo(const Making& making, Entries& entries) {
  if (!making.usage.echo || making.usage.stitches.empty()) return;
  entries.push_back(
      finished(making, {"echo",
                        pair_of_stitches(making, ink::faint, ink::faint),
                        {},
                        "",
                        words(making, making.usage.owner ? "title-echo-owner" : "title-echo")}));
}

void add_starting_chain(const Making& making, Entries& entries) {
  if (!making.usage.starting_chain) return;
  const auto& kinds = making.copy.fabric.kinds;
  const auto chain = stitch::find_kind(kinds, "ch");
  if (!chain) return;
  const std::uint32_t symbol = making.symbols.stitch({*chain, 1, stitch::both});
  const double apart = 0.45 * making.scale;
  entries.push_back(finished(making, {"starting-chain",
                                      {centred(making, symbol, {-apart, 0}, ink::grey),
                                       centred(making, symbol, {apart, 0}, ink::grey)},
                                      {},
                                      "",
                                      words(making, "title-starting-chain")}));
}

void add_joins(const Making& making, Entries& entries) {
  if (making.usage.lines.count(Line::join) == 0) return;
  const double half = 0.85 * making.scale, up = 0.22 * making.scale;
  const Path path = line_through({{-half, up}, {half, up}, {half, -up}});
  entries.push_back(finished(
      making, {"join", {hairline(path, 0.035 * making.scale)}, {}, "", words(making, "title-join")}));
}

void add_endings(const Making& making, Entries& entries) {
  if (making.usage.centres.count(Centre::gathered) > 0)
    add_mark(making, entries, "gather", "gathered", "", "title-gathered");
  if (making.usage.cut) add_mark(making, entries, "cut", "cut", "", "title-cut");
}

// Setting the entries.

constexpr double least_row = 6.8, line_height = 4.2, column_width = 61, text_gap = 3, margin_right = 1.5;

/// A grid of rows and columns, filled column by column.
struct Grid {
  std::size_t columns = 1, rows = 1;
  double column = column_width, sample = 7;
};

Grid grid_of(const Entries& entries, double width) {
  Grid grid;
  for (const Entry& entry : entries) grid.sample = std::max(grid.sample, entry.box.width());
  const double wanted = column_width + std::max(0.0, grid.sample - 10);
  grid.columns = std::max<std::size_t>(1, static_cast<std::size_t>((width + 2) / wanted));
  grid.columns = std::min(grid.columns, std::max<std::size_t>(1, (entries.size() + 2) / 3));
  grid.rows = (entries.size() + grid.columns - 1) / grid.columns;
  grid.column = std::min(width / static_cast<double>(grid.columns), wanted + 8);
  return grid;
}

double name_width(const Entry& entry) {
  return entry.name.empty() ? 0 : width_of(entry.name, lettering::legend_name) + 2;
}

std::vector<std::string> lines_of(const Entry& entry, const Grid& grid) {
  const double room = grid.column - grid.sample - text_gap - margin_right;
  return wrap(entry.words, lettering::legend_words, room, std::min(name_width(entry), room / 2), 6);
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
  if (!entry.name.empty()) group.items.push_back(written(entry.name, lettering::legend_name, at));
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const double indent = i == 0 ? name_width(entry) : 0;
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
  add_joins(making, entries);
  add_starting_chain(making, entries);
  add_echo(making, entries);
  add_endings(making, entries);
  return entries;
}

Drawn draw_legend(const Copy& copy, SymbolCase& symbols, Point at, double width) {
  const Entries entries = legend_entries(copy, symbols);
  const std::string heading = say(copy.wording, "symbols");
  Drawn legend{{"legend", "legend", heading, {}}, 0};
  if (entries.empty()) return legend;
  const Grid grid = grid_of(entries, width);
  legend.group.items.push_back(written(heading, lettering::heading, at + Point{0, 3}));
  double y = at.y + 5.4;
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
