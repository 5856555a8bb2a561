#include "layout/joined_edges.hpp"

#include "fabric/opening.hpp"
#include "layout/contour.hpp"
#include "layout/figure.hpp"
#include "layout/section.hpp"
#include "layout/sign.hpp"

#include <algorithm>
#include <cmath>

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

/// The part's name inside the middle of its bracket.
Placed name_of(const Fabric& fabric, const Extents& extents, const Figure& figure, const Ring& ring,
               const Stretch& stretch, Way way) {
  Run text{fabric.parts[stretch.part].name, Face::italic, sign_text, 0, 0};
  text.width = text.size * text_width(extents, text.face, text.text);
  const double middle =
      (angle_of(ring, figure.items[stretch.first]) + angle_of(ring, figure.items[stretch.last])) / 2;
  Placed name{Sign::sewn, on_circle(figure.centre_radius - inside_feet - tick_off, middle, way), {}, text, {},
              0};
  const Point inward = -1.0 * outward(middle, way);
  name.up = inward;
  name.text_at = name.at + (tick_length + name_air + half_room(text, inward)) * inward;
  return name;
}

/// Whether names stand clear of one another and leave the middle free.
bool have_room(const std::vector<Placed>& names) {
  for (std::size_t i = 0; i < names.size(); ++i)
    for (const Convex& one : outlines_of(names[i])) {
      if (distance(one, Convex{{0, 0}}) < middle_free) return false;
      for (std::size_t j = 0; j < i; ++j)
        for (const Convex& other : outlines_of(names[j]))
          if (distance(one, other) < name_air) return false;
    }
  return true;
}

} // namespace

void add_joined_edges(const Fabric& fabric, const Extents& extents, Figure& figure) {
  if (figure.rings.empty() || figure.centre != Centre::open || figure.form != Form::disc) return;
  const Ring& ring = figure.rings.front();
  if (ring.echo || joined_parts(fabric, ring.round).empty()) return;
  const Way way = figure.clockwise ? Way::clockwise : Way::anticlockwise;
  std::vector<Stroke> brackets;
  std::vector<Placed> names;
  for (const Stretch& stretch : stretches_of(fabric, figure, ring)) {
    brackets.push_back(bracket(figure, ring, stretch, way));
    if (stretch.last - stretch.first + 1 >= least_named && !fabric.parts[stretch.part].name.empty())
      names.push_back(name_of(fabric, extents, figure, ring, stretch, way));
  }
  const bool named = !names.empty() && have_room(names);
  if (!named && centre_reach(figure) > figure.centre_radius - inside_feet) return;
  figure.strokes.insert(figure.strokes.end(), brackets.begin(), brackets.end());
  if (!named) return;
  figure.centre_text.clear();
  figure.placed.insert(figure.placed.end(), names.begin(), names.end());
}

} // namespace whorl::layout
