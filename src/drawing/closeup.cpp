#include "drawing/closeup.hpp"

#include "drawing/figure.hpp"
#include "drawing/lettering.hpp"
#include "drawing/lines.hpp"
#include "layout/direction.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace whorl::drawing {
namespace {

using layout::Figure;
using layout::Ring;

constexpr double largest = 13.2;            ///< mm per W
constexpr std::uint32_t most_in_repeat = 7; ///< items; of longer repeats a few are shown
constexpr std::uint32_t few = 4;
constexpr double name_air = 0.36, name_size = 0.5; ///< W
constexpr double patch = 0.6;                      ///< half of the lit ground under a stitch, W
constexpr double dot_radius = 0.045, between_dots = 0.16; ///< of the dotted lines, W

/// Turns the figure so that one direction of it points up, about a point that moves to the middle of the
/// area.
struct View {
  Point about, up;
  Point middle;
  double scale = 1;

  Point turned(Point p) const { return {cross(p, up), dot(p, up)}; }
  Point on_sheet(Point p) const {
    const Point from = turned(p - about);
    return {middle.x + scale * from.x, middle.y - scale * from.y};
  }
  Point direction(Point d) const {
    const Point way = turned(d);
    return {way.x, -way.y};
  }
};

Point head_of(const layout::Item& item) { return item.foot + item.height * item.up; }

bool are_alike(const layout::Item& one, const layout::Item& other) { return one.key == other.key; }

/// The least number of items after which a ring repeats; all of them, if it does not.
std::uint32_t period_of(const Figure& figure, const Ring& ring) {
  const auto* items = figure.items.data() + ring.first_item;
  for (std::uint32_t period = 1; period <= ring.items / 2; ++period) {
    if (ring.items % period != 0) continue;
    bool repeats = true;
    for (std::uint32_t i = period; i < ring.items && repeats; ++i)
      repeats = are_alike(items[i], items[i - period]);
    if (repeats) return period;
  }
  return ring.items;
}

/// What a leg goes into: a stitch, or the chains of a space, told by the middle one.
struct Reached {
  fabric::StitchId first = fabric::none, last = fabric::none, middle = fabric::none;
};

std::vector<Reached> reached_by(const fabric::Fabric& fabric, const layout::Item& item) {
  std::vector<Reached> places;
  for (std::uint32_t i = 0; i < item.count; ++i)
    for (const fabric::Leg& leg : fabric::legs_of(fabric, item.first + i)) {
      const fabric::Place& into = leg.into;
      if (into.what == fabric::On::space && into.of < fabric.arches.size()) {
        const fabric::Arch& arch = fabric.arches[into.of];
        places.push_back(
            {arch.first_chain, arch.first_chain + arch.count - 1, arch.first_chain + arch.count / 2});
      } else {
        const bool stitch = into.what == fabric::On::top || into.what == fabric::On::post ||
                            into.what == fabric::On::chain_side;
        places.push_back(stitch ? Reached{into.of, into.of, into.of} : Reached{});
      }
    }
  return places;
}

bool is_reached(const layout::Item& base, const Reached& place) {
  return place.first != fabric::none && base.first <= place.last && place.first < base.first + base.count;
}

bool holds(const layout::Item& item, fabric::StitchId stitch) {
  return item.first <= stitch && stitch < item.first + item.count;
}

struct CloseUp {
  const Making& making;
  const Figure& figure;
  const Ring& ring;
  const Ring* below;
  Repeat repeat;
  View view;

  const layout::Item& item(std::uint32_t i) const { return figure.items[ring.first_item + repeat.first + i]; }
};

Symbol symbol_of(const CloseUp& close, const layout::Item& item, Color color) {
  Symbol symbol;
  symbol.symbol = close.making.symbols.stitch(item.key, item.height);
  symbol.at = close.view.on_sheet(item.foot);
  symbol.up = close.view.direction(item.up);
  symbol.scale = close.view.scale / close.making.scale;
  symbol.color = color;
  return symbol;
}

std::vector<const layout::Item*> bases_of(const CloseUp& close) {
  std::vector<const layout::Item*> bases;
  if (close.below == nullptr) return bases;
  const fabric::Fabric& fabric = close.making.copy.fabric;
  for (std::uint32_t b = 0; b < close.below->items; ++b) {
    const layout::Item& base = close.figure.items[close.below->first_item + b];
    bool used = false;
    for (std::uint32_t i = 0; i < close.repeat.count && !used; ++i)
      for (const Reached& place : reached_by(fabric, close.item(i))) used = used || is_reached(base, place);
    if (used) bases.push_back(&base);
  }
  return bases;
}

Stroke patch_under(const CloseUp& close, const layout::Item& base) {
  const Point low = close.view.on_sheet(base.foot + (patch * 0.5) * base.up);
  const Point high = close.view.on_sheet(head_of(base) - (patch * 0.5) * base.up);
  return {line_through({low, high}), 2 * patch * close.view.scale, ink::lit, 0, {}};
}

/// Dots from the foot of a stitch to the place that it goes into.
void add_dots(const CloseUp& close, Point from, Point to, std::vector<Item>& items) {
  const Point way = to - from;
  const int dots = static_cast<int>(length(way) / between_dots);
  for (int i = 0; i < dots; ++i) {
    const Point at = from + ((i + 0.5) / dots) * way;
    items.push_back(Fill{circle(close.view.on_sheet(at), dot_radius * close.view.scale), ink::black, {}});
  }
}

/// The middle of the ink of a base's head above a stitch of it.
Point tip_of(const CloseUp& close, const layout::Item& base, fabric::StitchId stitch) {
  return close.figure.tips[base.first_tip + (stitch - base.first)];
}

/// From each foot of a stitch to the stitch that it stands on.
void add_ways(const CloseUp& close, const std::vector<const layout::Item*>& bases, std::vector<Item>& items) {
  const fabric::Fabric& fabric = close.making.copy.fabric;
  for (std::uint32_t i = 0; i < close.repeat.count; ++i) {
    const layout::Item& item = close.item(i);
    const std::vector<Reached> places = reached_by(fabric, item);
    for (std::size_t leg = 0; leg < places.size(); ++leg) {
      const bool spread = item.count == 1 && places.size() == item.feet && places.size() > 1;
      const Point foot = spread ? close.figure.feet[item.first_foot + leg] : item.foot;
      for (const layout::Item* base : bases)
        if (holds(*base, places[leg].middle))
          add_dots(close, foot, tip_of(close, *base, places[leg].middle), items);
    }
  }
}

void add_names(const CloseUp& close, std::vector<Item>& items) {
  std::vector<std::string> names;
  Lettering set{name_size * close.view.scale, Typeface::sans, true, false, ink::black};
  for (std::uint32_t i = 0; i < close.repeat.count; ++i)
    names.push_back(stitch_name(close.making, close.item(i).key));
  double shrink = 1;
  for (std::uint32_t i = 0; i + 1 < names.size(); ++i) {
    const Point one = close.view.on_sheet(head_of(close.item(i))),
                next = close.view.on_sheet(head_of(close.item(i + 1)));
    const double apart = std::abs(next.x - one.x),
                 wide = (width_of(names[i], set) + width_of(names[i + 1], set)) / 2;
    shrink = std::min(shrink, 0.86 * apart / std::max(wide, 0.01));
  }
  set.size *= std::max(shrink, 0.3);
  for (std::uint32_t i = 0; i < names.size(); ++i) {
    const Point head = close.view.on_sheet(head_of(close.item(i)) + name_air * close.item(i).up);
    items.push_back(written(names[i], set, head, Anchor::middle));
  }
}

/// What is inked by the repeat and its bases in the figure, turned upright about a point, in W.
Box box_of(const CloseUp& close, const std::vector<const layout::Item*>& bases) {
  Box box;
  const auto take = [&](const layout::Item& item, double above) {
    cover(box, close.view.turned(item.foot - close.view.about), 0.6);
    cover(box, close.view.turned(head_of(item) - close.view.about), above);
  };
  for (std::uint32_t i = 0; i < close.repeat.count; ++i) take(close.item(i), 0.95);
  for (const layout::Item* base : bases) take(*base, 0.6);
  return box;
}

/// Upright is the mean direction of the repeat's stitches.
View upright(const CloseUp& close) {
  View view;
  Point up{0, 0}, middle{0, 0};
  for (std::uint32_t i = 0; i < close.repeat.count; ++i) {
    up = up + close.item(i).up;
    middle = middle + close.item(i).foot;
  }
  view.up = unit(up);
  view.about = (1.0 / close.repeat.count) * middle;
  return view;
}

/// Below the repeat, in the direction of work.
void add_way(const CloseUp& close, double below, std::vector<Item>& items) {
  if (close.repeat.count < 2) return;
  constexpr double wide = 14, words = 6;
  const Point first = close.view.on_sheet(close.item(0).foot);
  const Point last = close.view.on_sheet(close.item(close.repeat.count - 1).foot);
  const Point middle{(first.x + last.x) / 2, below};
  for (Path& path : bent_arrow(middle, wide, last.x < first.x ? -1 : 1))
    items.push_back(Stroke{std::move(path), 0.35, ink::grey, 0, {}});
  items.push_back(written(say(close.making.copy.wording, "step-way"), lettering::note,
                          {middle.x, middle.y + words}, Anchor::middle));
}

} // namespace

std::vector<std::uint32_t> in_order(const Figure& figure) {
  std::vector<std::uint32_t> order(figure.rings.size());
  std::iota(order.begin(), order.end(), 0U);
  const auto begins = [&](std::uint32_t ring) {
    return figure.rings[ring].owner || figure.rings[ring].chain;
  };
  std::stable_sort(order.begin(), order.end(), [&](std::uint32_t one, std::uint32_t other) {
    if (begins(one) != begins(other)) return begins(one);
    return figure.rings[one].round < figure.rings[other].round;
  });
  return order;
}

std::uint32_t ring_below(const Figure& figure, std::uint32_t ring) {
  const std::vector<std::uint32_t> order = in_order(figure);
  const auto at = std::find(order.begin(), order.end(), ring);
  return at == order.begin() || at == order.end() ? fabric::none : *(at - 1);
}

Repeat repeat_shown(const Figure& figure, const Ring& ring) {
  const std::uint32_t period = period_of(figure, ring);
  if (period > most_in_repeat) {
    const std::uint32_t count = std::min(few, ring.items);
    return {(ring.items - count) / 2, count};
  }
  const std::uint32_t passes = ring.items / std::max(period, 1U);
  if (period <= 2 && passes > 2) { // alone it shows little
    const std::uint32_t count = period == 1 ? 3 : 2 * period;
    return {(ring.items - count) / 2 / period * period, count};
  }
  return {passes / 2 * period, period};
}

Item lit_band(const Figure& figure, const Ring& ring, const Frame& frame) {
  std::vector<Point> points;
  const bool disc = figure.form == layout::Form::disc || figure.form == layout::Form::disc_inward;
  for (std::uint32_t i = 0; i < ring.items; ++i) {
    const layout::Item& item = figure.items[ring.first_item + i];
    const Point at = item.foot + (item.height / 2) * item.up;
    if (disc && !points.empty()) { // along the ring, not across it
      const Point before = points.back();
      for (int j = 1; j < 8; ++j) {
        const Point on = before + (j / 8.0) * (at - before);
        if (length(on) > 1e-6) points.push_back(length(before) * unit(on));
      }
    }
    points.push_back(at);
  }
  std::vector<Point> on;
  for (const Point p : points) on.push_back(on_sheet(frame, p));
  constexpr double besides = 0.12;
  const double wide = (std::abs(ring.outer - ring.inner) + besides) * frame.scale;
  return Stroke{line_through(on), wide, ink::lit, 0, {}};
}

Group draw_closeup(const Making& making, std::size_t figure, std::uint32_t ring, const Box& area) {
  const Figure& it = making.copy.placement.figures[figure];
  const std::uint32_t below = ring_below(it, ring);
  CloseUp close{making,
                it,
                it.rings[ring],
                below == fabric::none ? nullptr : &it.rings[below],
                repeat_shown(it, it.rings[ring]),
                {}};
  Group group{"", "close-up", say(making.copy.wording, "step-close-up"), {}};
  if (close.repeat.count == 0) return group;
  const std::vector<const layout::Item*> bases = bases_of(close);
  close.view = upright(close);
  const Box box = box_of(close, bases);
  const double words = 7.5, room = area.height() - 2 * words;
  close.view.scale = std::min({largest, area.width() / box.width(), room / box.height()});
  close.view.middle = {(area.left + area.right) / 2 - close.view.scale * (box.left + box.right) / 2,
                       (area.top + area.bottom) / 2 + close.view.scale * (box.top + box.bottom) / 2};
  for (const layout::Item* base : bases) group.items.push_back(patch_under(close, *base));
  for (const layout::Item* base : bases) group.items.push_back(symbol_of(close, *base, ink::done));
  add_ways(close, bases, group.items);
  for (std::uint32_t i = 0; i < close.repeat.count; ++i)
    group.items.push_back(symbol_of(close, close.item(i), ink::black));
  add_names(close, group.items);
  const double middle = (area.top + area.bottom) / 2, half = close.view.scale * box.height() / 2;
  add_way(close, middle + half + 2.5, group.items);
  group.items.push_back(written(say(making.copy.wording, "step-close-up"), lettering::note,
                                {(area.left + area.right) / 2, middle - half - 3}, Anchor::middle));
  return group;
}

} // namespace whorl::drawing
