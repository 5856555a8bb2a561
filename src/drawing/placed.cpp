#include "drawing/placed.hpp"

#include "drawing/lettering.hpp"
#include "drawing/lines.hpp"
#include "layout/sign.hpp"

#include <array>
#include <string_view>

namespace whorl::drawing {
namespace {

using layout::Placed;
using layout::Sign;

constexpr double tick_pen = 0.05, capital = 0.72;

bool is_line(const Placed& placed) {
  const bool points = placed.up.x * placed.up.x + placed.up.y * placed.up.y > 0.5;
  return points && mark_of(placed.sign).empty();
}

/// White in the disc of a part's letter.
Color text_color(Sign sign) {
  if (layout::is_joined(sign)) return ink::paper;
  return mark_of(sign).empty() ? ink::grey : ink::black;
}

Stroke line_of(const Placed& placed, const Frame& frame) {
  const Point end = placed.at + layout::tick_length * placed.up;
  return {line_through({on_sheet(frame, placed.at), on_sheet(frame, end)}),
          tick_pen * frame.scale,
          ink::grey,
          0,
          {}};
}

Text text_of(const Placed& placed, const Frame& frame) {
  Lettering set;
  set.size = placed.text.size * frame.scale;
  set.bold = placed.text.face == layout::Face::bold;
  set.italic = placed.text.face == layout::Face::italic;
  set.color = text_color(placed.sign);
  const Point at = on_sheet(frame, placed.text_at) + Point{0, capital * set.size / 2};
  return written(placed.text.text, set, at, Anchor::middle);
}

} // namespace

std::string_view mark_of(Sign sign) {
  switch (sign) {
  case Sign::eye:
    return "eye";
  case Sign::marker:
    return "marker";
  case Sign::bead:
    return "bead";
  case Sign::thread:
    return "thread";
  case Sign::flag:
    return "flag";
  case Sign::attach:
    return "attach";
  case Sign::free_loop:
    return "free-loop";
  case Sign::joined:
    return "joined-part";
  case Sign::joined_first:
    return "joined-first";
  case Sign::tick:
  case Sign::front:
  case Sign::sewn:
    break;
  }
  return "";
}

Color ground_color(std::uint8_t tone) {
  constexpr std::array grounds{Color{0xEAE7E0}, ink::yarn_ground, Color{0xC9C5BA}, Color{0xDDB194}};
  return grounds[(tone + grounds.size() - 1) % grounds.size()];
}

std::uint8_t tone_of(const Copy& copy, std::uint8_t yarn) {
  return yarn >= 1 && yarn <= copy.text.tones.size() ? copy.text.tones[yarn - 1u] : yarn;
}

Group draw_grounds(const Copy& copy, const layout::Figure& figure, const Frame& frame, std::uint32_t last) {
  Group grounds{"", "grounds", "", {}};
  for (const layout::Ground& ground : figure.grounds) {
    if (figure.rings[ground.ring].round > last) continue;
    std::vector<Point> outline;
    for (const Point p : ground.outline) outline.push_back(on_sheet(frame, p));
    Path path = curve_through(outline);
    path.verbs.push_back(Verb::close);
    grounds.items.push_back(Fill{std::move(path), ground_color(tone_of(copy, ground.yarn)), {}});
  }
  return grounds;
}

std::vector<Item> draw_sign(const Placed& placed, const Frame& frame, SymbolCase& symbols, double factor) {
  std::vector<Item> items;
  if (is_line(placed)) items.push_back(line_of(placed, frame));
  const std::string_view name = mark_of(placed.sign);
  if (const auto mark = name.empty() ? std::nullopt : symbols.mark(name)) {
    const bool turns = placed.sign == Sign::attach;
    const Point up = turns ? Point{placed.up.x, -placed.up.y} : Point{0, -1};
    items.push_back(Symbol{*mark, on_sheet(frame, placed.at), up, factor, ink::black, {}});
  }
  if (!placed.text.text.empty()) items.push_back(text_of(placed, frame));
  return items;
}

Group draw_signs(const layout::Figure& figure, const Frame& frame, SymbolCase& symbols) {
  Group signs{"", "signs", "", {}};
  for (const Placed& placed : figure.placed) {
    Group sign{"", "sign", "", draw_sign(placed, frame, symbols)};
    signs.items.push_back(std::move(sign));
  }
  return signs;
}

} // namespace whorl::drawing
