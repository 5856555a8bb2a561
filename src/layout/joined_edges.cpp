#include "layout/joined_edges.hpp"

#include "fabric/opening.hpp"
#include "layout/contour.hpp"
#include "layout/figure.hpp"
#include "layout/section.hpp"
#include "layout/sign.hpp"
#include "layout/stand.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace whorl::layout {
namespace {

using fabric::Fabric;

constexpr double inside_feet = 0.22, past_stitch = 0.28, hook_long = 0.16; ///< of a bracket
constexpr double tick_off = 0.14, name_air = 0.10, middle_free = 0.12;
constexpr std::uint32_t least_named = 3; ///< stitches of a stretch

/// Neighbouring items of a ring that go along the edge of one copy of a part.
struct Stretch {
  std::uint32_t part = fabric::none;
  std::uint32_t first = 0, last = 0; ///< items
  fabric::StitchId reached = 0;      ///< the top that the last goes into
};

/// The top of another part that an item goes into; none if it goes into anything else.
fabric::StitchId edge_of(const Fabric& fabric, const Figure& figure, const Item& item) {
  for (const fabric::Leg& leg : fabric::legs_of(fabric, item.first))
    if (leg.into.what == fabric::On::top && leg.into.of < fabric.stitches.size() &&
        fabric.rounds[fabric.stitches[leg.into.of].round].part != figure.part)
      return leg.into.of;
  return fabric::none;
}

std::vector<Stretch> stretches_of(const Fabric& fabric, const Figure& figure, const Ring& ring) {
  std::vector<Stretch> all;
  bool open = false;
  for (std::uint32_t i = ring.first_item; i < ring.first_item + ring.items; ++i) {
    const fabric::StitchId top = edge_of(fabric, figure, figure.items[i]);
    if (top == fabric::none) {
      open = false;
      continue;
    }
    const std::uint32_t part = fabric.rounds[fabric.stitches[top].round].part;
    if (!open || all.back().part != part || top < all.back().reached) all.push_back({part, i, i, top});
    all.back().last = i;
    all.back().reached = top;
    open = true;
  }
  return all;
}

/// The angle of an item from 12 o'clock, the way work runs.
double angle_of(const Ring& ring, const Item& item) { return ring.turned + item.at / ring.middle; }

/// A bracket beneath the feet of a stretch of a line, its ends turned towards them.
Stroke bracket_beneath(const Figure& figure, double low, const Stretch& stretch) {
  const double y = low - inside_feet;
  double from = figure.items[stretch.first].foot.x, to = figure.items[stretch.last].foot.x;
  if (from > to) std::swap(from, to);
  from -= past_stitch, to += past_stitch;
  return {Line::edge, {{from, y + hook_long}, {from, y}, {to, y}, {to, y + hook_long}}, false};
}

/// A bracket inside the feet of a stretch, its ends turned towards them.
Stroke bracket(const Figure& figure, const Ring& ring, const Stretch& stretch, Way way) {
  const double radius = figure.centre_radius - inside_feet, past = past_stitch / radius;
  const double from = angle_of(ring, figure.items[stretch.first]) - past;
  const double to = angle_of(ring, figure.items[stretch.last]) + past;
  Stroke line{Line::edge, {on_circle(radius + hook_long, from, way)}, true};
  line_to(on_circle(radius, from, way), line.points);
  curve_on(radius, from, to, way, line.points);
  line_to(on_circle(radius + hook_long, to, way), line.points);
  return line;
}

/// A part's name beyond a tick that leads from the middle of its bracket.
Placed name_at(const Fabric& fabric, const Extents& extents, std::uint32_t part, Point at, Point away) {
  Run text{fabric.parts[part].name, Face::italic, sign_text, 0, 0};
  text.width = text.size * text_width(extents, text.face, text.text);
  Placed name{Sign::sewn, at, away, text, {}, 0};
  name.text_at = name.at + (tick_length + name_air + half_room(text, away)) * away;
  return name;
}

/// Inside the middle of its bracket.
Placed name_inside(const Fabric& fabric, const Extents& extents, const Figure& figure, const Ring& ring,
                   const Stretch& stretch) {
  const Way way = figure.clockwise ? Way::clockwise : Way::anticlockwise;
  const double middle =
      (angle_of(ring, figure.items[stretch.first]) + angle_of(ring, figure.items[stretch.last])) / 2;
  return name_at(fabric, extents, stretch.part,
                 on_circle(figure.centre_radius - inside_feet - tick_off, middle, way),
                 -1.0 * outward(middle, way));
}

/// Beneath the middle of its bracket.
Placed name_beneath(const Fabric& fabric, const Extents& extents, const Figure& figure, double low,
                    const Stretch& stretch) {
  const double middle = (figure.items[stretch.first].foot.x + figure.items[stretch.last].foot.x) / 2;
  return name_at(fabric, extents, stretch.part, {middle, low - inside_feet - tick_off}, {0, -1});
}

/// How far down the ink of a line reaches.
double lowest(const Extents& extents, const Figure& figure, const Ring& ring) {
  double low = ring.inner;
  for (std::uint32_t i = ring.first_item; i < ring.first_item + ring.items; ++i)
    for (const Convex& piece : ink_of(extents, figure.items[i]))
      for (const Point p : piece) low = std::min(low, p.y);
  return low;
}

/// Whether names stand clear of one another and leave the middle of a disc free.
bool have_room(const Figure& figure, const std::vector<Placed>& names) {
  for (std::size_t i = 0; i < names.size(); ++i)
    for (const Convex& one : outlines_of(names[i])) {
      if (figure.form == Form::disc && distance(one, Convex{{0, 0}}) < middle_free) return false;
      for (std::size_t j = 0; j < i; ++j)
        for (const Convex& other : outlines_of(names[j]))
          if (distance(one, other) < name_air) return false;
    }
  return true;
}

} // namespace

void add_joined_edges(const Fabric& fabric, const Extents& extents, Figure& figure) {
  const bool line = figure.form == Form::strip;
  if (figure.rings.empty() || !(line || (figure.form == Form::disc && figure.centre == Centre::open))) return;
  const Ring& ring = figure.rings.front();
  if (ring.echo || joined_parts(fabric, ring.round).empty()) return;
  const Way way = figure.clockwise ? Way::clockwise : Way::anticlockwise;
  const double low = line ? lowest(extents, figure, ring) : 0;
  std::vector<Stroke> brackets;
  std::vector<Placed> names;
  for (const Stretch& stretch : stretches_of(fabric, figure, ring)) {
    brackets.push_back(line ? bracket_beneath(figure, low, stretch) : bracket(figure, ring, stretch, way));
    if (stretch.last - stretch.first + 1 >= least_named && !fabric.parts[stretch.part].name.empty())
      names.push_back(line ? name_beneath(fabric, extents, figure, low, stretch)
                           : name_inside(fabric, extents, figure, ring, stretch));
  }
  const bool named = !names.empty() && have_room(figure, names);
  if (!line && !named && centre_reach(figure) > figure.centre_radius - inside_feet) return;
  figure.strokes.insert(figure.strokes.end(), brackets.begin(), brackets.end());
  if (!named) return;
  figure.centre_text.clear();
  figure.placed.insert(figure.placed.end(), names.begin(), names.end());
}

} // namespace whorl::layout
