#include "drawing/figure.hpp"

#include "drawing/caption.hpp"
#include "drawing/lettering.hpp"
#include "drawing/lines.hpp"
#include "drawing/placed.hpp"

#include "layout/turn.hpp"
#include <algorithm>
#include <string>

namespace whorl::drawing {
namespace {

using layout::Centre;
using layout::Figure;
using layout::Form;
using layout::Ring;

/// Everything that drawing one figure needs.
struct Drawing {
  const Copy& copy;
  const Figure& figure;
  std::size_t number;
  Frame frame;
  SymbolCase& symbols;
};

Point turned_over(Point direction) { return {direction.x, -direction.y}; }

std::vector<Point> on_sheet(const Frame& frame, const std::vector<Point>& points) {
  std::vector<Point> moved;
  moved.reserve(points.size());
  for (const Point p : points) moved.push_back(on_sheet(frame, p));
  return moved;
}

bool is_disc(const Figure& figure) { return figure.form == Form::disc || figure.form == Form::disc_inward; }

Origin origin_of(const Copy& copy, fabric::StitchId stitch, std::uint32_t count) {
  const pattern::NodeId node = copy.fabric.stitches[stitch].origin;
  return {stitch, node < copy.tree.nodes.size() ? copy.tree.nodes[node].span : Span{}, count};
}

// Parts of a figure.

Color line_color(const layout::Stroke& stroke) {
  const bool black = stroke.line == layout::Line::gathering || stroke.line == layout::Line::footprint;
  return black ? ink::black : ink::grey;
}

double pen_of(layout::Line line) {
  switch (line) {
  case layout::Line::fold_break:
    return 0.05;
  case layout::Line::direction:
    return 0.075;
  case layout::Line::gathering:
    return 0.05;
  case layout::Line::join:
    return 0.035;
  case layout::Line::footprint:
  case layout::Line::edge:
    return 0.045;
  case layout::Line::stem:
    return 0.10;
  }
  return 0.05;
}

Stroke drawn(const layout::Stroke& stroke, const Frame& frame) {
  Stroke line;
  const std::vector<Point> points = on_sheet(frame, stroke.points);
  line.path = stroke.curved ? curve_through(points) : line_through(points);
  line.width = pen_of(stroke.line) * frame.scale;
  line.color = line_color(stroke);
  const bool dashed = stroke.line == layout::Line::gathering || stroke.line == layout::Line::footprint;
  line.dash = dashed ? 0.2 * frame.scale : 0;
  return line;
}

Group lines_of(const Drawing& drawing) {
  Group lines{"", "lines", "", {}};
  for (const layout::Stroke& stroke : drawing.figure.strokes)
    if (stroke.line != layout::Line::stem) lines.items.push_back(drawn(stroke, drawing.frame));
  return lines;
}

/// The middle of a neck: its name in the serif of part names, its note below. Where the yarn is cut on the
/// inside, the mark of that stands there instead.
void write_centre(const Drawing& drawing, Group& centre) {
  if (drawing.figure.form == Form::disc_inward && shows_cut(drawing.copy, drawing.number)) return;
  const auto& runs = drawing.figure.centre_text;
  double y = runs.size() > 1 ? 0.1 : -0.3;
  for (std::size_t i = 0; i < runs.size(); ++i) {
    const Point at = on_sheet(drawing.frame, {0, y});
    Lettering set = i == 0 && runs.size() > 1 ? lettering::subtitle : lettering::note;
    set.size = runs[i].size * drawing.frame.scale;
    centre.items.push_back(written(runs[i].text, set, at, Anchor::middle));
    y -= 0.9;
  }
}

/// The end of the yarn in the middle of the dashed circle.
Fill gathered_mark(const Frame& frame) {
  const double scale = frame.scale;
  return {triangle(frame.origin + Point{0, 0.26 * scale}, {0, 1}, 0.52 * scale, 0.6 * scale), ink::black, {}};
}

Group centre_of(const Drawing& drawing) {
  const Centre what = drawing.figure.centre;
  Group centre{"", "centre", "", {}};
  const std::string_view name = centre_mark(what);
  if (!name.empty()) centre.title = say(drawing.copy.wording, "title-" + std::string(name));
  centre.items = draw_centre_mark(drawing.copy, drawing.figure, drawing.symbols,
                                  {0, drawing.frame.origin, {0, -1}, 1, ink::black, {}});
  if (what == Centre::gathered) {
    centre.items.push_back(gathered_mark(drawing.frame));
    centre.title = say(drawing.copy.wording, "title-gathered");
  }
  write_centre(drawing, centre);
  return centre;
}

Color tone(const Ring& ring, layout::Tone tone) {
  return tone == layout::Tone::grey ? ink::grey : label_color_of(ring);
}

Group label_group(const Drawing& drawing, const layout::Label& label, const Ring& ring) {
  Group group{"", "label", "", {}};
  for (const layout::Run& run : label.runs)
    group.items.push_back(lettered(run, on_sheet(drawing.frame, label.at + Point{run.x, 0}),
                                   drawing.frame.scale, tone(ring, label.tone)));
  return group;
}

Fill pointer_mark(const Drawing& drawing, const layout::Pointer& pointer, Color color) {
  const double length = pointer.length * drawing.frame.scale;
  Fill fill;
  fill.path = triangle(on_sheet(drawing.frame, pointer.tip), turned_over(pointer.direction), length, length);
  fill.color = color;
  return fill;
}

Symbol symbol_of(const Drawing& drawing, const layout::Item& item, Color color) {
  Symbol symbol;
  symbol.symbol = drawing.symbols.stitch(item.key, item.height);
  symbol.at = on_sheet(drawing.frame, item.foot);
  symbol.up = turned_over(item.up);
  symbol.color = color;
  symbol.origin = origin_of(drawing.copy, item.first, item.count);
  return symbol;
}

std::string round_id(const fabric::Fabric& fabric, std::uint32_t round) {
  return fabric.parts[fabric.rounds[round].part].key + "-" + round_number(fabric, round);
}

std::string ring_id(const Drawing& drawing, const Ring& ring) {
  std::string id = round_id(drawing.copy.fabric, ring.round);
  if (ring.echo) id += "_" + std::to_string(drawing.number + 1);
  return id;
}

/// The ids of the rounds that a folded ring shows.
std::vector<std::string> folded_rounds(const Drawing& drawing, const Ring& ring) {
  std::vector<std::string> ids;
  if (ring.echo || ring.last_round == ring.round) return ids;
  for (std::uint32_t round = ring.round; round <= ring.last_round; ++round)
    ids.push_back(round_id(drawing.copy.fabric, round));
  return ids;
}

/// The stitches of a ring, and the stems that lead down from its spikes.
void add_stitches(const Drawing& drawing, std::uint32_t number, Color color, Group& group) {
  const Figure& figure = drawing.figure;
  const Ring& ring = figure.rings[number];
  for (const layout::Stroke& stroke : figure.strokes) {
    if (stroke.line != layout::Line::stem || stroke.ring != number) continue;
    Stroke stem = drawn(stroke, drawing.frame);
    stem.color = color;
    group.items.push_back(std::move(stem));
  }
  for (std::uint32_t i = 0; i < ring.items; ++i)
    group.items.push_back(symbol_of(drawing, figure.items[ring.first_item + i], color));
}

Group ring_group(const Drawing& drawing, std::uint32_t number) {
  const Figure& figure = drawing.figure;
  const Ring& ring = figure.rings[number];
  Group group{
      ring_id(drawing, ring), "round", ring_title(drawing.copy, ring), {}, folded_rounds(drawing, ring)};
  group.items.reserve(ring.items + 2);
  for (const layout::Pointer& pointer : figure.pointers)
    if (pointer.ring == number)
      group.items.push_back(pointer_mark(drawing, pointer, tone(ring, pointer.tone)));
  for (const layout::Label& label : figure.labels)
    if (label.ring == number) group.items.push_back(label_group(drawing, label, ring));
  add_stitches(drawing, number, color_of(ring), group);
  return group;
}

Group cut_group(const Drawing& drawing) {
  Group group{"", "cut", say(drawing.copy.wording, "title-cut"), {}};
  const layout::Cut& cut = drawing.figure.cut;
  if (const auto mark = drawing.symbols.mark("cut"))
    group.items.push_back(
        Symbol{*mark, on_sheet(drawing.frame, cut.tip), turned_over(cut.up), 1, ink::black, {}});
  return group;
}

/// How far the mark reaches from its point, in W.
constexpr double cut_reach = 0.54;

Box cut_box(const Copy& copy, std::size_t figure) {
  if (!shows_cut(copy, figure)) return {};
  const layout::Cut& cut = copy.placement.figures[figure].cut;
  Box box;
  cover(box, {cut.tip.x, -cut.tip.y}, cut_reach);
  return box;
}

} // namespace

Box figure_box(const Copy& copy, std::size_t figure) {
  const Figure& it = copy.placement.figures[figure];
  Box box;
  cover(box, {it.low.x, -it.low.y});
  cover(box, {it.high.x, -it.high.y});
  join(box, cut_box(copy, figure));
  if (is_disc(it)) {
    const double side = std::max(-box.left, box.right);
    box.left = -side;
    box.right = side;
  }
  const double scale = copy.options.stitch;
  return {box.left * scale, box.top * scale, box.right * scale, box.bottom * scale};
}

Group draw_figure(const Copy& copy, std::size_t figure, const Frame& frame, SymbolCase& symbols) {
  const Figure& it = copy.placement.figures[figure];
  const Drawing drawing{copy, it, figure, frame, symbols};
  Group group{"figure_" + std::to_string(figure + 1), "figure", spoken_caption(copy, figure), {}};
  if (!it.grounds.empty()) group.items.push_back(draw_grounds(copy, it, frame));
  group.items.push_back(lines_of(drawing));
  group.items.push_back(centre_of(drawing));
  for (std::uint32_t i = 0; i < it.rings.size(); ++i) group.items.push_back(ring_group(drawing, i));
  if (!it.placed.empty()) group.items.push_back(draw_signs(it, frame, symbols));
  if (shows_cut(copy, figure)) group.items.push_back(cut_group(drawing));
  return group;
}

namespace {

/// Where the number of a label stands without the rest: where it does, or beside the pointer at its right.
Point number_at(const Drawing& drawing, const layout::Label& label) {
  const layout::Run &first = label.runs.front(), &last = label.runs.back();
  for (const layout::Pointer& pointer : drawing.figure.pointers)
    if (pointer.ring == label.ring && pointer.tip.x > label.at.x + first.x + first.width)
      return label.at + Point{last.x + last.width - first.width, 0};
  return label.at + Point{first.x, 0};
}

} // namespace

Group draw_ring(const Copy& copy, std::size_t figure, const Frame& frame, SymbolCase& symbols,
                std::uint32_t number, Color color) {
  const Drawing drawing{copy, copy.placement.figures[figure], figure, frame, symbols};
  const Ring& ring = drawing.figure.rings[number];
  Group group{ring_id(drawing, ring), "round", ring_title(copy, ring), {}, {}};
  for (const layout::Pointer& pointer : drawing.figure.pointers)
    if (pointer.ring == number) group.items.push_back(pointer_mark(drawing, pointer, color));
  bool told = false;
  for (const layout::Label& label : drawing.figure.labels) {
    if (label.ring != number || told || label.runs.empty()) continue;
    group.items.push_back(
        lettered(label.runs.front(), on_sheet(frame, number_at(drawing, label)), frame.scale, color));
    told = true;
  }
  add_stitches(drawing, number, color, group);
  return group;
}

Group draw_centre(const Copy& copy, std::size_t figure, const Frame& frame, SymbolCase& symbols) {
  return centre_of({copy, copy.placement.figures[figure], figure, frame, symbols});
}

Color color_of(const Ring& ring) {
  if (ring.echo) return ink::faint;
  if (ring.chain) return ink::grey;
  return ring.ink == 0 ? ink::black : ink::second;
}

Color label_color_of(const Ring& ring) { return ring.echo ? ink::grey : color_of(ring); }

Text lettered(const layout::Run& run, Point at, double scale, Color color) {
  Text text;
  text.text = run.text;
  text.at = at;
  text.size = run.size * scale;
  text.bold = run.face == layout::Face::bold;
  text.italic = run.face == layout::Face::italic;
  text.width = run.width * scale;
  text.color = color;
  return text;
}

bool shows_cut(const Copy& copy, std::size_t figure) {
  return !(copy.placement.figures[figure].cut == layout::Cut{});
}

bool shows_miscount(const Figure& figure, std::uint32_t ring) {
  for (const layout::Label& label : figure.labels)
    if (label.ring == ring)
      for (const layout::Run& run : label.runs)
        if (run.text.find("(!)") != std::string::npos) return true;
  return false;
}

namespace {

/// So many ovals round a point.
std::vector<Item> ring_of_chains(std::uint32_t chains, SymbolCase& symbols, const Symbol& like) {
  constexpr double radius = 0.50, oval = 0.55, longest = 0.42, share = 0.80; // W
  std::vector<Item> items;
  const auto mark = symbols.mark("oval");
  if (!mark || chains == 0) return items;
  const double pitch = 2 * layout::pi * radius / chains;
  for (std::uint32_t i = 0; i < chains; ++i) {
    Symbol chain = like;
    chain.symbol = *mark;
    const layout::SineCosine turn = layout::sine_cosine(2 * layout::pi * i / chains);
    chain.up = {turn.cosine * like.up.x - turn.sine * like.up.y,
                turn.sine * like.up.x + turn.cosine * like.up.y};
    chain.at = like.at + (radius * symbols.scale() * like.scale) * chain.up;
    chain.scale *= std::min(longest, share * pitch) / oval;
    items.push_back(chain);
  }
  return items;
}

} // namespace

std::vector<Item> draw_centre_mark(const Copy& copy, const Figure& figure, SymbolCase& symbols,
                                   const Symbol& like) {
  if (figure.centre == Centre::chain_ring) {
    constexpr std::uint32_t usual = 6, most = 12;
    const std::uint32_t chain = copy.fabric.parts[figure.part].foundation;
    return ring_of_chains(chain == fabric::none ? usual : std::min(most, copy.fabric.rounds[chain].count),
                          symbols, like);
  }
  const auto mark = symbols.mark(centre_mark(figure.centre));
  if (!mark) return {};
  Symbol symbol = like;
  symbol.symbol = *mark;
  return {symbol};
}

std::string_view centre_mark(Centre centre) {
  if (centre == Centre::chain_ring) return "chain-ring";
  if (centre == Centre::magic_ring) return "magic-ring";
  return centre == Centre::second_chain ? "second-chain" : "";
}

} // namespace whorl::drawing
