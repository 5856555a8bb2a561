#include "drawing/closeup.hpp"

#include "drawing/around.hpp"
#include "drawing/figure.hpp"
#include "drawing/lettering.hpp"
#include "drawing/lines.hpp"
#include "drawing/lit.hpp"
#include "drawing/placed.hpp"
#include "drawing/step_areas.hpp"

#include <algorithm>
#include <cmath>

namespace whorl::drawing {
namespace {

using layout::Figure;
using layout::Ring;

constexpr double largest = 13.2;                          ///< mm per W
constexpr double name_size = 0.5, name_air = 0.10;        ///< W
constexpr double largest_name = 6, smallest_name = 2.4;   ///< mm
constexpr double dot_radius = 0.045, between_dots = 0.16; ///< of the dotted lines, W
constexpr double dot_air = 0.05;                          ///< between a dot and other ink, W
constexpr double above = 7, below = 12;                   ///< room of the words, mm
constexpr double beside = 40;                             ///< … where they stand beside a broad close-up

Point head_of(const layout::Item& item) { return item.foot + item.height * item.up; }

/// A close-up while it is drawn.
struct CloseUp {
  const Making& making;
  const Figure& figure;
  const Ring& ring;
  const Shown& shown;
  View view;
  Group group;
  Around around; ///< what is inked so far

  const layout::Item& item(std::uint32_t i) const { return figure.items[ring.first_item + i]; }
  std::uint32_t end() const { return shown.repeat.first + shown.repeat.count; }
  bool is_now(std::uint32_t i) const { return item(i).first >= shown.now && item(i).first < shown.end; }
  Color color(std::uint32_t i) const {
    return is_now(i) ? ink::black : item(i).first < shown.now ? ink::done : ink::coming;
  }
};

void draw(CloseUp& close, const layout::Item& item, Color color) {
  Symbol symbol;
  symbol.symbol = close.making.symbols.stitch(item.key, item.height);
  symbol.at = close.view.on_sheet(item.foot);
  symbol.up = close.view.direction(item.up);
  symbol.scale = close.view.scale / close.making.scale;
  symbol.color = color;
  close.around.add(symbol, close.making.symbols.definition(symbol.symbol));
  close.group.items.push_back(std::move(symbol));
}

/// The ring that a round is worked into.
void draw_middle(CloseUp& close) {
  const Symbol like{0,
                    close.view.on_sheet({0, 0}),
                    close.view.direction({0, 1}),
                    close.view.scale / close.making.scale,
                    ink::done,
                    {}};
  for (Item& item : draw_centre_mark(close.making.copy, close.figure, close.making.symbols, like)) {
    const Symbol& symbol = std::get<Symbol>(item);
    close.around.add(symbol, close.making.symbols.definition(symbol.symbol));
    close.group.items.push_back(std::move(item));
  }
}

/// What is worked into, in grey.
void draw_bases(CloseUp& close, const std::vector<Reached>& places) {
  std::vector<bool> drawn(close.figure.items.size());
  const std::uint32_t first = close.ring.first_item + close.shown.repeat.first;
  for (const Reached& place : places) {
    if (place.what == fabric::On::ring) draw_middle(close);
    for (std::uint32_t i = place.first; i < place.first + place.count; ++i) {
      const bool in_repeat = i >= first && i < first + close.shown.repeat.count;
      if (!drawn[i] && !in_repeat) draw(close, close.figure.items[i], ink::done);
      drawn[i] = true;
    }
  }
}

/// Where the dots to a place end.
Point end_of(const CloseUp& close, const Reached& place, Point foot) {
  if (place.what == fabric::On::ring) return 0.75 * layout::unit(foot);
  const fabric::StitchId stitch = place.stitch;
  for (std::uint32_t i = place.first; i < place.first + place.count; ++i) {
    const layout::Item& base = close.figure.items[i];
    if (base.first <= stitch && stitch < base.first + base.count)
      return close.figure.tips[base.first_tip + (stitch - base.first)];
  }
  return head_of(close.figure.items[place.first]);
}

/// Dots from the foot of a stitch to the place that it goes into, where there is room for them.
void add_dots(CloseUp& close, Point from, Point to) {
  const Point way = to - from;
  const double scale = close.view.scale;
  const int dots = static_cast<int>(layout::length(way) / between_dots);
  for (int i = 0; i < dots; ++i) {
    const Point at = close.view.on_sheet(from + ((i + 0.5) / dots) * way);
    if (!close.around.is_free(at, (dot_radius + dot_air) * scale)) continue;
    close.around.add(at, dot_radius * scale);
    close.group.items.push_back(Fill{circle(at, dot_radius * scale), ink::black, {}});
  }
}

void add_ways(CloseUp& close) {
  const fabric::Fabric& fabric = close.making.copy.fabric;
  const DrawnItems drawn(close.figure);
  for (std::uint32_t i = close.shown.repeat.first; i < close.end(); ++i)
    if (close.is_now(i))
      for (const Reached& place : reached_by(fabric, close.figure, drawn, close.item(i)))
        add_dots(close, place.foot, end_of(close, place, place.foot));
}

/// A name above its stitch, as near as there is room for it; false: there is none.
bool put_name(CloseUp& close, const layout::Item& item, const std::string& name, const Lettering& set) {
  const Point up = close.view.direction(item.up), head = close.view.on_sheet(head_of(item));
  constexpr double cap = 0.72;
  const double wide = width_of(name, set), high = cap * set.size;
  const double half = std::min(std::abs(up.x) < 0.05 ? 1e9 : wide / 2 / std::abs(up.x),
                               std::abs(up.y) < 0.05 ? 1e9 : high / 2 / std::abs(up.y));
  for (double out = 0.1; out < 1.5; out += 0.05) {
    const Point middle = head + (half + out * close.view.scale) * up;
    Text text = written(name, set, {middle.x, middle.y + high / 2}, Anchor::middle);
    if (!close.around.is_free(text, name_air * close.view.scale)) continue;
    close.around.add(text);
    close.group.items.push_back(std::move(text));
    return true;
  }
  return false;
}

bool put_names(CloseUp& close, const Lettering& set) {
  bool all = true;
  for (std::uint32_t i = close.shown.repeat.first; i < close.end(); ++i)
    if (close.is_now(i))
      all = put_name(close, close.item(i), stitch_name(close.making, close.item(i).key), set) && all;
  return all;
}

/// All of one size, that at which every name has room.
void add_names(CloseUp& close) {
  const Group bare = close.group;
  const Around room = close.around;
  Lettering set{std::min(name_size * close.view.scale, largest_name), Typeface::sans, true, false,
                ink::black};
  while (!put_names(close, set) && set.size > smallest_name) {
    close.group = bare, close.around = room;
    set.size *= 0.9;
  }
}

/// Upright is the mean direction of the stitches.
View upright(const CloseUp& close) {
  View view;
  Point up{0, 0}, middle{0, 0};
  for (std::uint32_t i = close.shown.repeat.first; i < close.end(); ++i) {
    up = up + close.item(i).up;
    middle = middle + close.item(i).foot;
  }
  view.up = layout::length(up) > 0.2 ? layout::unit(up) : close.item(close.shown.repeat.first).up;
  view.about = (1.0 / close.shown.repeat.count) * middle;
  return view;
}

/// The grounds of stitches in another yarn than the part's first.
void add_grounds(CloseUp& close) {
  const Copy& copy = close.making.copy;
  for (std::uint32_t i = close.shown.repeat.first; i < close.end(); ++i) {
    const std::uint8_t yarn = copy.fabric.stitches[close.item(i).first].yarn;
    const bool grounded =
        std::any_of(close.figure.grounds.begin(), close.figure.grounds.end(), [&](const auto& it) {
          return &close.figure.rings[it.ring] == &close.ring && it.yarn == yarn;
        });
    if (!grounded || !close.is_now(i)) continue;
    const Reached all{close.ring.first_item + i, 1, close.item(i).first, fabric::On::post, {}};
    for (Item& patch : lit_patches(close.figure, {all}, close.view)) {
      std::get<Fill>(patch).color = ground_color(tone_of(copy, yarn));
      close.group.items.push_back(std::move(patch));
    }
  }
}

void compose(CloseUp& close, const std::vector<Reached>& bases) {
  close.group.items = lit_patches(close.figure, bases, close.view);
  add_grounds(close);
  close.around = {};
  draw_bases(close, bases);
  for (std::uint32_t i = close.shown.repeat.first; i < close.end(); ++i)
    draw(close, close.item(i), close.color(i));
  add_ways(close);
  add_names(close);
}

/// Draws it as large as it has room in the middle of a box.
Box fit(CloseUp& close, const std::vector<Reached>& bases, const Box& area) {
  Box box;
  close.view.scale = largest;
  for (int pass = 0; pass < 5; ++pass) {
    compose(close, bases);
    box = bounds(Item{close.group}, close.making.symbols.definitions());
    const double fits = std::min(area.width() / box.width(), area.height() / box.height());
    if (fits >= 1) break;
    close.view.scale *= 0.98 * fits;
  }
  close.view.middle = close.view.middle + Point{(area.left + area.right) / 2 - (box.left + box.right) / 2,
                                                (area.top + area.bottom) / 2 - (box.top + box.bottom) / 2};
  compose(close, bases);
  return bounds(Item{close.group}, close.making.symbols.definitions());
}

/// In the direction of work.
void add_way(CloseUp& close, Point middle) {
  if (close.shown.repeat.count < 2 || close.ring.chain) return; // chains are numbered from the hook
  constexpr double wide = 14, words = 6;
  const Point first = close.view.on_sheet(close.item(close.shown.repeat.first).foot);
  const Point last = close.view.on_sheet(close.item(close.end() - 1).foot);
  for (Path& path : bent_arrow(middle, wide, last.x < first.x ? -1 : 1))
    close.group.items.push_back(Stroke{std::move(path), 0.35, ink::grey, 0, {}});
  close.group.items.push_back(written(say(close.making.copy.wording, "step-way"), lettering::note,
                                      {middle.x, middle.y + words}, Anchor::middle));
}

} // namespace

Group draw_closeup(const Making& making, std::size_t figure, std::uint32_t ring, const Shown& shown,
                   const Box& area) {
  const Figure& it = making.copy.placement.figures[figure];
  CloseUp close{making, it, it.rings[ring], shown, {}, {"", "close-up", shown.caption, {}}, {}};
  if (shown.repeat.count == 0) return close.group;
  close.view = upright(close);
  std::vector<std::uint32_t> now;
  for (std::uint32_t i = shown.repeat.first; i < close.end(); ++i)
    if (close.is_now(i)) now.push_back(close.ring.first_item + i);
  const std::vector<Reached> bases = reached_by(making.copy.fabric, it, now);
  const bool broad = is_broad(area);
  Box inner = area;
  if (broad)
    inner.left += beside, inner.right -= beside;
  else
    inner.top += above, inner.bottom -= below;
  const Box drawn = fit(close, bases, inner);
  const double middle = (drawn.top + drawn.bottom) / 2;
  if (broad) {
    close.group.items.push_back(
        written(shown.caption, lettering::note, {drawn.left - 5, middle + 1}, Anchor::end));
    add_way(close, {drawn.right + 17, middle - 2});
  } else {
    const double across = (area.left + area.right) / 2;
    close.group.items.push_back(
        written(shown.caption, lettering::note, {across, drawn.top - 3}, Anchor::middle));
    add_way(close, {across, drawn.bottom + 3.5});
  }
  return close.group;
}

} // namespace whorl::drawing
