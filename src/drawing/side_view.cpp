#include "drawing/side_view.hpp"

#include "drawing/lettering.hpp"
#include "drawing/lines.hpp"
#include "drawing/profile.hpp"

#include <algorithm>
#include <cmath>

namespace whorl::drawing {
namespace {

constexpr double scale = 1.5, widest = 36, highest = 44, thinnest = 2.4; ///< mm per W; mm
constexpr double pen = 0.5, thin = 0.2, dash = 0.9;
constexpr double bracket_gap = 3.4, bracket = 1.3, name_leading = 3.9;
constexpr double least_name_gap = 1.6, leader_from = 0.4, leader_to = 0.5;
constexpr double least_slant = 0.6; ///< of what a leader rises, at least so much it also goes aside
constexpr double least_bracket = 0.5;
constexpr double least_apart = 0.6; ///< of lines that run side by side
constexpr std::uint32_t most_rounds = 1000;
constexpr Lettering name{2.9, Typeface::sans, false, false, ink::black};

using Figures = std::vector<std::size_t>;

/// The figures of a part, if all of them show rounds of one piece that go round it.
Figures figures_of(const Copy& copy, std::uint32_t part) {
  Figures figures;
  for (std::size_t i = 0; i < copy.placement.figures.size(); ++i) {
    const layout::Figure& figure = copy.placement.figures[i];
    if (figure.part != part) continue;
    const bool goes_round = figure.form == layout::Form::disc || figure.form == layout::Form::disc_inward ||
                            figure.form == layout::Form::strip || figure.form == layout::Form::oval;
    const bool follows =
        figures.empty() || copy.placement.figures[figures.back()].last_round + 1 == figure.first_round;
    if (!goes_round || !follows) return {};
    figures.push_back(i);
  }
  return figures;
}

bool can_be_seen(const Copy& copy, const fabric::Part& part, const Figures& figures) {
  const bool oval = !figures.empty() && copy.placement.figures[figures.front()].form == layout::Form::oval;
  if (figures.size() < 2 || (part.start == fabric::Start::chain && !oval)) return false;
  const std::uint32_t first = copy.placement.figures[figures.front()].first_round;
  const std::uint32_t last = copy.placement.figures[figures.back()].last_round;
  if (last - first >= most_rounds) return false;
  for (std::uint32_t round = first; round <= last; ++round)
    if (copy.fabric.rounds[round].kind != pattern::RoundKind::round) return false;
  return true;
}

double greatest_x(const std::vector<Point>& points) {
  double most = 0;
  for (const Point& point : points) most = std::max(most, point.x);
  return most;
}

/// Brings the outline to the sheet's millimetres, its upper end at 0.
void fit(SideView& view) {
  double top = view.outline.front().y, bottom = top;
  for (const Point& point : view.outline) {
    top = std::min(top, point.y);
    bottom = std::max(bottom, point.y);
  }
  const double wide = 2 * greatest_x(view.outline), high = bottom - top;
  const double fitting = std::min({scale, widest / wide, highest / std::max(high, 0.1)});
  for (Point& point : view.outline) point = {fitting * point.x, fitting * (point.y - top)};
  view.half = fitting * wide / 2;
  view.height = fitting * high;
}

double names_width(const SideView& view) {
  double width = 0;
  for (const std::string& text : view.names) width = std::max(width, width_of(text, name));
  return width;
}

/// Middles of the stretches, moved apart until a line of letters fits between any two.
std::vector<double> apart(const std::vector<double>& middles) {
  std::vector<double> down = middles, up = middles;
  for (std::size_t i = 1; i < down.size(); ++i) down[i] = std::max(down[i], down[i - 1] + name_leading);
  for (std::size_t i = up.size() - 1; i > 0; --i) up[i - 1] = std::min(up[i - 1], up[i] - name_leading);
  for (std::size_t i = 0; i < up.size(); ++i) up[i] = (up[i] + down[i]) / 2;
  return up;
}

/// Upper and lower end of the stretch of a figure.
std::pair<double, double> stretch_of(const SideView& view, std::size_t figure) {
  constexpr double air = 0.35;
  const std::size_t begin = figure == 0 ? 0 : view.ends[figure - 1];
  return {view.outline[begin].y + air, view.outline[view.ends[figure]].y - air};
}

std::vector<double> middles_of(const SideView& view) {
  std::vector<double> middles;
  for (std::size_t i = 0; i < view.names.size(); ++i) {
    const auto [top, bottom] = stretch_of(view, i);
    middles.push_back((top + bottom) / 2);
  }
  return middles;
}

/// From the brackets to the names: a steep leader would come too near to the next.
double name_gap_of(const SideView& view) {
  const std::vector<double> middles = middles_of(view), at = apart(middles);
  double rise = 0;
  for (std::size_t i = 0; i < at.size(); ++i) rise = std::max(rise, std::abs(at[i] - middles[i]));
  return std::max(least_name_gap, leader_from + leader_to + least_slant * rise);
}

Path mirrored_outline(const SideView& view, Point axis) {
  std::vector<Point> points;
  for (const Point& point : view.outline) points.push_back(axis + point);
  for (auto point = view.outline.rbegin(); point != view.outline.rend(); ++point)
    points.push_back(axis + Point{-point->x, point->y});
  return closed_through(points);
}

/// How far a line across the piece may reach from its axis without touching the outline.
double clear_reach(const SideView& view, double y) {
  constexpr double near = 1.3, air = 0.2;
  double reach = view.half;
  for (const Point& point : view.outline)
    if (point.y > y - near && point.y < y + near) reach = std::min(reach, point.x);
  return std::max(0.0, reach - pen - air);
}

void draw_changes(Group& group, const SideView& view, Point axis) {
  double last = view.outline.front().y;
  for (std::size_t i = 0; i + 1 < view.ends.size(); ++i) {
    const Point end = view.outline[view.ends[i]];
    const double reach = clear_reach(view, end.y);
    const bool at_edge = view.outline.back().y - end.y < least_apart;
    if (reach < least_bracket || end.y - last < least_apart || at_edge) continue;
    last = end.y;
    group.items.push_back(Stroke{
        line_through({axis + Point{-reach, end.y}, axis + Point{reach, end.y}}), thin, ink::grey, dash, {}});
  }
}

/// A bracket beside a stretch; one too short for it has a line at its middle.
Path bracket_along(double x, double top, double bottom) {
  const double middle = (top + bottom) / 2;
  if (bottom - top < least_bracket) return line_through({{x, middle}, {x + bracket, middle}});
  return line_through({{x, top}, {x + bracket, top}, {x + bracket, bottom}, {x, bottom}});
}

void draw_names(Group& group, const SideView& view, Point axis) {
  const std::vector<double> middles = middles_of(view), at = apart(middles);
  const double x = axis.x + view.half + bracket_gap, names = x + bracket + name_gap_of(view);
  double last = -least_apart;
  for (std::size_t i = 0; i < view.names.size(); ++i) {
    const auto [top, bottom] = stretch_of(view, i);
    const bool shifted = at[i] - middles[i] > 0.5 || middles[i] - at[i] > 0.5;
    const bool has_room = middles[i] - last >= least_apart;
    if (has_room) last = middles[i];
    if (bottom - top >= least_bracket || has_room)
      group.items.push_back(Stroke{bracket_along(x, axis.y + top, axis.y + bottom), thin, ink::grey, 0, {}});
    if (shifted && has_room)
      group.items.push_back(Stroke{line_through({{x + bracket + leader_from, axis.y + middles[i]},
                                                 {names - leader_to, axis.y + at[i]}}),
                                   thin,
                                   ink::grey,
                                   0,
                                   {}});
    group.items.push_back(written(view.names[i], name, {names, axis.y + at[i] + 1}));
  }
}

/// Stands a piece on its start: what is last comes first.
void turn_over(SideView& view) {
  const std::size_t last = view.outline.size() - 1;
  std::vector<std::size_t> ends;
  for (std::size_t i = view.ends.size(); i > 0; --i) ends.push_back(last - (i == 1 ? 0 : view.ends[i - 2]));
  view.ends = std::move(ends);
  std::reverse(view.names.begin(), view.names.end());
  std::reverse(view.outline.begin(), view.outline.end());
  for (Point& point : view.outline) point.y = 0.0 - point.y;
}

} // namespace

SideView side_view_of(const Copy& copy, std::uint32_t part) {
  SideView view;
  const fabric::Part& it = copy.fabric.parts[part];
  const Figures figures = figures_of(copy, part);
  if (!can_be_seen(copy, it, figures)) return view;
  const std::uint32_t first = copy.placement.figures[figures.front()].first_round;
  const Profile profile = profile_of(copy.fabric, first, copy.placement.figures[figures.back()].last_round);
  view.outline = profile.side;
  for (const std::size_t figure : figures) {
    view.ends.push_back(profile.ends[copy.placement.figures[figure].last_round - first]);
    view.names.push_back(say(copy.wording, "side-view-figure", {std::to_string(figure + 1)}));
  }
  if (part < copy.text.from_below.size() && copy.text.from_below[part]) turn_over(view);
  fit(view);
  if (2 * view.half < thinnest) return SideView();
  const std::vector<double> at = apart(middles_of(view));
  view.axis_top = std::max(0.3, name_leading / 2 - at.front());
  view.height = view.axis_top + std::max(view.height, at.back() + name_leading / 2);
  view.width = 2 * view.half + bracket_gap + bracket + name_gap_of(view) + names_width(view);
  view.title =
      it.name.empty() ? say(copy.wording, "side-view-title") : say(copy.wording, "side-view", {it.name});
  return view;
}

Drawn draw_side_view(const SideView& view, Point at) {
  Drawn drawn{{"", "side-view", view.title, {}}, view.height};
  const Point axis = at + Point{view.half, view.axis_top};
  drawn.group.items.push_back(Stroke{mirrored_outline(view, axis), pen, ink::black, 0, {}});
  draw_changes(drawn.group, view, axis);
  draw_names(drawn.group, view, axis);
  return drawn;
}

} // namespace whorl::drawing
