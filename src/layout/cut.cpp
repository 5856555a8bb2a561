#include "layout/cut.hpp"

#include "layout/hole.hpp"
#include "layout/room.hpp"
#include "layout/sign.hpp"

#include <algorithm>

namespace whorl::layout {
namespace {

constexpr double beyond_head = 0.31, past_break = 0.4, past_loops = 0.45;
constexpr double beside_label = 0.25, half_stitch = 0.5;
constexpr double high = 0.48, half_wide = 0.29;
constexpr double air = 0.12, step = 0.1, neighbourhood = 3;
constexpr int most_steps = 60;

/// The ring that was worked last, if it is the figure's own.
std::uint32_t last_ring(const Figure& figure) {
  std::uint32_t last = fabric::none;
  for (std::uint32_t i = 0; i < figure.rings.size(); ++i)
    if (last == fabric::none || figure.rings[last].last_round < figure.rings[i].last_round) last = i;
  return last != fabric::none && !figure.rings[last].echo && figure.rings[last].items > 0 ? last
                                                                                          : fabric::none;
}

/// In a strip at the far side of the last line's count, or of its last stitch.
Cut cut_beside(const Figure& figure, std::uint32_t ring, const Item& item) {
  const double away = figure.clockwise ? 1 : -1;
  double edge = item.foot.x + away * half_stitch;
  for (const Label& label : figure.labels)
    if (label.ring == ring)
      for (const Point p : label.box) edge = away < 0 ? std::min(edge, p.x) : std::max(edge, p.x);
  return {{edge + away * beside_label, item.foot.y + item.height / 2}, {away, 0}};
}

bool is_worked_before(const Item& one, const Item& other) { return one.first < other.first; }

Cut cut_of(const Figure& figure, std::uint32_t ring) {
  const Ring& it = figure.rings[ring];
  const auto first = figure.items.begin() + it.first_item;
  const Item& item = *std::max_element(first, first + it.items, is_worked_before);
  if (figure.form == Form::strip) return cut_beside(figure, ring, item);
  const bool broken = it.last_before_break && (figure.form == Form::disc || figure.form == Form::oval);
  const double clear =
      item.height + beyond_head + (broken ? past_break : 0) + (keeps_loops(figure, ring) ? past_loops : 0);
  return {item.foot + clear * item.up, item.up};
}

bool is_clear(const Convex& outline, const std::vector<Convex>& ink) {
  return std::all_of(ink.begin(), ink.end(),
                     [&outline](const Convex& other) { return distance(outline, other) >= air; });
}

} // namespace

Convex outline_of(const Cut& cut) {
  const Point right{cut.up.y, -cut.up.x};
  return {cut.tip, cut.tip + half_wide * right + high * cut.up, cut.tip - half_wide * right + high * cut.up};
}

bool is_cut_off(const fabric::Fabric& fabric, const Figure& figure) {
  const fabric::Part& part = fabric.parts[figure.part];
  return part.whole && part.end == fabric::End::cut &&
         figure.last_round + 1 == part.first_round + part.rounds;
}

bool add_cut(const fabric::Fabric& fabric, const Extents& extents, Figure& figure) {
  const std::uint32_t ring = last_ring(figure);
  if (ring == fabric::none || !is_cut_off(fabric, figure)) return true;
  const bool inward = figure.form == Form::disc_inward;
  if (inward) figure.centre_text.clear(); // it makes way
  Cut cut = cut_of(figure, ring);
  const int steps = inward ? static_cast<int>(figure.rings[ring].inner / step) : most_steps;
  bool clear = false;
  for (int i = 0; i < steps && !clear; ++i) {
    if (i > 0) cut.tip = cut.tip + step * cut.up;
    clear = is_clear(outline_of(cut), ink_near(figure, extents, cut.tip, neighbourhood));
  }
  figure.cut = cut;
  return clear;
}

} // namespace whorl::layout
