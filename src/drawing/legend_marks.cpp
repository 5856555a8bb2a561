#include "drawing/caption.hpp"
#include "drawing/figure.hpp"
#include "drawing/legend_making.hpp"
#include "drawing/lettering.hpp"
#include "drawing/lines.hpp"
#include "drawing/type.hpp"
#include "layout/label.hpp"

#include <algorithm>
#include <cmath>

namespace whorl::drawing {

using layout::Centre;
using layout::Line;
using layout::SymbolKey;

namespace {

Stroke hairline(Path path, double width) { return {std::move(path), width, ink::grey, 0, {}}; }

} // namespace

namespace {

void add_mark(const Making& making, Entries& entries, const std::string& mark, const std::string& key,
              const std::string& name, const std::string& id) {
  const auto symbol = making.symbols.mark(mark);
  if (!symbol) return;
  entries.push_back(
      finished(making, {key, {centred(making, *symbol, {}, ink::black)}, {}, name, words(making, id)}));
}

} // namespace

namespace {

/// That of the first figure which begins so.
std::vector<Item> ring_of_chains(const Making& making) {
  for (std::size_t i = 0; i < making.copy.placement.figures.size(); ++i)
    if (is_on_sheet(making.copy, i) && making.copy.placement.figures[i].centre == Centre::chain_ring)
      return draw_centre_mark(making.copy, making.copy.placement.figures[i], making.symbols,
                              {0, {}, {0, -1}, making.factor, ink::black, {}});
  return {};
}

} // namespace

void add_starts(const Making& making, Entries& entries) {
  for (const Centre centre : {Centre::magic_ring, Centre::second_chain}) {
    const std::string name(centre_mark(centre));
    if (making.usage.centres.count(centre) > 0)
      add_mark(making, entries, name, name, words(making, "name-" + name), "title-" + name);
  }
  if (making.usage.centres.count(Centre::chain_ring) > 0)
    entries.push_back(
        finished(making, {"chain-ring", ring_of_chains(making), {}, "", words(making, "title-chain-ring")}));
}

namespace {

/// Which way the first figure is worked at its top: -1 to the left.
double way_of(const Making& making) {
  return making.usage.pointer != nullptr && making.usage.pointer->direction.x > 0 ? 1 : -1;
}

/// An id of the wording, for a sheet with nothing but rows another.
std::string of_rounds(const Making& making, const std::string& id) {
  return making.usage.rows && !making.usage.disc && !making.usage.strip ? id + "-row" : id;
}

} // namespace

void add_pointer(const Making& making, Entries& entries) {
  if (making.usage.pointer == nullptr) return;
  const double length = making.usage.pointer->length * making.scale;
  const double way = way_of(making);
  const Fill mark{triangle({way * length / 2, 0}, {way, 0}, length, length), ink::black, {}};
  entries.push_back(
      finished(making, {"pointer", {mark}, {}, "", words(making, of_rounds(making, "title-pointer"))}));
}

namespace {

std::string stitches(const Making& making, std::uint32_t count) {
  return words(making, count == 1 ? "stitch" : "stitches", {std::to_string(count)});
}

} // namespace

namespace {

/// A line of a label, its middle at 0.
std::vector<Item> label_sample(const Making& making, const layout::Label& label, double base) {
  const layout::Run& last = label.runs.back();
  const double width = (last.x + last.width) * making.scale;
  std::vector<Item> sample;
  for (const layout::Run& run : label.runs)
    sample.push_back(lettered(run, {run.x * making.scale - width / 2, base}, making.scale, ink::black));
  return sample;
}

} // namespace

/// A label of the sheet, as it stands there.
void add_label(const Making& making, Entries& entries) {
  const layout::Label* label = making.usage.label;
  if (label == nullptr) return;
  std::vector<Item> sample = label_sample(making, *label, base_line);
  if (const layout::Label* below = making.usage.count_below; below != nullptr) {
    const double apart = (label->at.y - below->at.y) * making.scale;
    sample = label_sample(making, *label, base_line - apart / 2);
    for (Item& item : label_sample(making, *below, base_line + apart / 2)) sample.push_back(std::move(item));
  }
  const std::uint32_t round = making.usage.label_figure->rings[label->ring].round;
  const fabric::Round& it = making.copy.fabric.rounds[round];
  const char* id = it.kind == pattern::RoundKind::row                               ? "title-label-row"
                   : label->runs.size() == 1 && making.usage.count_below == nullptr ? "title-label-number"
                                                                                    : "title-label";
  entries.push_back(finished_letters(
      making, {"label",
               std::move(sample),
               {},
               "",
               words(making, id, {round_number(making.copy.fabric, round), stitches(making, it.counted)})}));
}

namespace {

/// The third line of a sheet's first strip, or its last if there are fewer, for an example.
const fabric::Round* line_of_strip(const Copy& copy) {
  constexpr int third = 3;
  const fabric::Round* line = nullptr;
  int lines = 0;
  for (std::size_t i = 0; i < copy.placement.figures.size() && line == nullptr; ++i) {
    const layout::Figure& figure = copy.placement.figures[i];
    if (figure.form != layout::Form::strip || !is_on_sheet(copy, i)) continue;
    for (const layout::Ring& ring : figure.rings)
      if (!ring.echo && ring.round == ring.last_round && ++lines <= third)
        line = &copy.fabric.rounds[ring.round];
  }
  return line;
}

} // namespace

/// Of a sheet with strips alone: their numbers and counts stand apart.
void add_strip_label(const Making& making, Entries& entries) {
  if (!making.usage.strip || (making.usage.label != nullptr && making.usage.label->runs.size() > 1)) return;
  const fabric::Round* line = line_of_strip(making.copy);
  if (line == nullptr) return;
  std::vector<Item> sample;
  const double half = 1.1 * making.scale;
  const auto letters = [&](const std::string& text, layout::Face face, double size, double middle) {
    layout::Run run{text, face, size, 0, 0};
    run.width = size * text_width(Typeface::sans, face == layout::Face::bold, false, text);
    sample.push_back(
        lettered(run, {middle - run.width * making.scale / 2, base_line}, making.scale, ink::black));
  };
  letters(std::to_string(line->counted), layout::Face::regular, layout::count_size, way_of(making) * half);
  letters(std::to_string(line->number), layout::Face::bold, layout::number_size, 0.0 - way_of(making) * half);
  entries.push_back(finished_letters(
      making,
      {"label",
       std::move(sample),
       {},
       "",
       words(making, "title-label-strip", {std::to_string(line->number), stitches(making, line->counted)})}));
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

namespace {

/// Two of a plain stitch beside one another.
std::vector<Item> pair_of_stitches(const Making& making, Color left, Color right) {
  const std::uint32_t symbol = making.symbols.stitch(plainest(making.usage, making.copy.fabric));
  const double apart =
      std::max(0.95 * making.scale, 1.2 * making.factor * bounds(making.symbols.definition(symbol)).width());
  return {centred(making, symbol, {-apart / 2, 0}, left), centred(making, symbol, {apart / 2, 0}, right)};
}

} // namespace

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
  entries.push_back(finished(making, {"break",
                                      {hairline(path, 0.05 * making.scale)},
                                      {},
                                      "",
                                      words(making, of_rounds(making, "title-break"))}));
}

/// A dashed outline.
void add_footprint(const Making& making, Entries& entries) {
  if (making.usage.lines.count(Line::footprint) == 0) return;
  const double half = 0.85 * making.scale, up = 0.42 * making.scale;
  Stroke outline =
      hairline(closed_through({{-half, -up}, {half, -up}, {half, up}, {-half, up}}), 0.045 * making.scale);
  outline.color = ink::black;
  outline.dash = 0.2 * making.scale;
  entries.push_back(
      finished(making, {"footprint", {std::move(outline)}, {}, "", words(making, "title-footprint")}));
}

/// A bracket along stitches on the edge of another part.
void add_edge(const Making& making, Entries& entries) {
  if (making.usage.lines.count(Line::edge) == 0) return;
  const double half = 0.85 * making.scale, up = 0.16 * making.scale;
  const Path path = line_through({{-half, -up}, {-half, up}, {half, up}, {half, -up}});
  entries.push_back(finished(
      making, {"edge", {hairline(path, 0.045 * making.scale)}, {}, "", words(making, "title-edge")}));
}

void add_echo(const Making& making, Entries& entries) {
  if (!making.usage.echo || making.usage.stitches.empty()) return;
  const bool goes_on = layout::leaves_rounds_out(making.copy.placement.wanted);
  const char* id = making.usage.owner ? "title-echo-owner" : goes_on ? "title-echo-before" : "title-echo";
  entries.push_back(finished(
      making, {"echo", pair_of_stitches(making, ink::faint, ink::faint), {}, "", words(making, id)}));
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

} // namespace whorl::drawing
