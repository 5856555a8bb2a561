#include "drawing/lit.hpp"

#include "drawing/lines.hpp"

#include <algorithm>
#include <cmath>

namespace whorl::drawing {
namespace {

using layout::Figure;

constexpr double head = 0.80;      ///< of a stitch is lit from its top down, W
constexpr double besides = .12;    ///< so much more than the ink
constexpr double widest_gap = 3.2; ///< between two that one band joins
constexpr double middle_radius = 0.90;

/// The stretch of an item that is lit: of a leg of a tall increase its own end, else of the whole symbol.
struct Stretch {
  std::uint32_t item = 0;
  fabric::StitchId stitch = fabric::none; ///< of a leg
  Point foot, up;
  double low = 0, high = 0; ///< from its foot up, in W
  double size() const { return high - low; }
  Point middle() const { return foot + 0.5 * (low + high) * up; }
};

Stretch stretch_of(const Figure& figure, const Reached& place, std::uint32_t number) {
  const layout::Item& item = figure.items[number];
  Stretch stretch{number, fabric::none, item.foot, item.up, 0, item.height};
  if (place.what == fabric::On::post || item.height < head + 0.3) return stretch;
  if (item.count > 1 && place.stitch >= item.first && place.stitch < item.first + item.count) {
    const Point leg = figure.tips[item.first_tip + (place.stitch - item.first)] - item.foot;
    stretch.stitch = place.stitch;
    stretch.up = layout::unit(leg);
    stretch.high = layout::length(leg);
  }
  stretch.low = std::max(0.0, stretch.high - head);
  return stretch;
}

/// All that is lit in order, each once.
std::vector<Stretch> stretches_of(const Figure& figure, const std::vector<Reached>& places) {
  std::vector<Stretch> all;
  for (const Reached& place : places)
    for (std::uint32_t i = place.first; i < place.first + place.count; ++i)
      all.push_back(stretch_of(figure, place, i));
  std::stable_sort(all.begin(), all.end(), [](const Stretch& a, const Stretch& b) {
    if (a.item != b.item) return a.item < b.item;
    return a.stitch != b.stitch ? a.stitch < b.stitch : a.low < b.low;
  });
  const auto is_one = [](const Stretch& a, const Stretch& b) {
    return a.item == b.item && a.stitch == b.stitch;
  };
  all.erase(std::unique(all.begin(), all.end(), is_one), all.end());
  return all;
}

bool is_round(const Figure& figure) {
  return figure.form == layout::Form::disc || figure.form == layout::Form::disc_inward;
}

/// Along the ring, not across it.
void add_way_to(const Figure& figure, Point at, std::vector<Point>& points) {
  if (is_round(figure) && !points.empty()) {
    const Point before = points.back();
    for (int j = 1; j < 8; ++j) {
      const Point on = before + (j / 8.0) * (at - before);
      const double radius =
          layout::length(before) + (j / 8.0) * (layout::length(at) - layout::length(before));
      if (layout::length(on) > 1e-6) points.push_back(radius * layout::unit(on));
    }
  }
  points.push_back(at);
}

bool are_joined(const Stretch& one, const Stretch& next) {
  constexpr double most_unlike = 0.42; // an increase is a little taller than its neighbours, a chain far less
  return next.item <= one.item + 1 && std::abs(one.size() - next.size()) < most_unlike &&
         layout::length(one.middle() - next.middle()) < widest_gap;
}

/// At right angles to the way along some points, at one of them.
Point across_at(const std::vector<Point>& points, std::size_t at) {
  const Point way = points[std::min(at + 1, points.size() - 1)] - points[at > 0 ? at - 1 : 0];
  return layout::length(way) > 1e-6 ? layout::unit(Point{-way.y, way.x}) : Point{0, 1};
}

/// A little longer than its points, its ends cut straight.
Item band(std::vector<Point> points, double wide, const View& view) {
  constexpr double longer = 0.45;
  const Point first = points.front() - points[1], last = points.back() - points[points.size() - 2];
  if (layout::length(first) > 1e-6) points.front() = points.front() + longer * layout::unit(first);
  if (layout::length(last) > 1e-6) points.back() = points.back() + longer * layout::unit(last);
  const double half = (wide + besides) / 2;
  std::vector<Point> on;
  for (std::size_t i = 0; i < points.size(); ++i)
    on.push_back(view.on_sheet(points[i] + half * across_at(points, i)));
  for (std::size_t i = points.size(); i-- > 0;)
    on.push_back(view.on_sheet(points[i] - half * across_at(points, i)));
  return Fill{closed_through(on), ink::lit, {}};
}

void add_middle(const std::vector<Reached>& places, const View& view, std::vector<Item>& items) {
  for (const Reached& place : places)
    if (place.what == fabric::On::ring) {
      items.push_back(Fill{circle(view.on_sheet({0, 0}), middle_radius * view.scale), ink::lit, {}});
      return;
    }
}

/// How far the ink of what is lit reaches beside its middle line.
double half_width(const Figure& figure, const Stretch& stretch) {
  const layout::Item& item = figure.items[stretch.item];
  const Point across{-stretch.up.y, stretch.up.x};
  double half = 0.30;
  for (std::uint32_t i = 0; i < item.count && stretch.stitch == fabric::none; ++i)
    half = std::max(half, std::abs(layout::dot(figure.tips[item.first_tip + i] - item.foot, across)));
  return half + besides;
}

Item patch(const Figure& figure, const Stretch& stretch, const View& view) {
  const Point across = half_width(figure, stretch) * Point{-stretch.up.y, stretch.up.x};
  const Point low = stretch.foot + (stretch.low - besides) * stretch.up,
              high = stretch.foot + (stretch.high + besides) * stretch.up;
  std::vector<Point> on;
  for (const Point p : {low - across, high - across, high + across, low + across})
    on.push_back(view.on_sheet(p));
  return Fill{closed_through(on), ink::lit, {}};
}

} // namespace

std::vector<Item> lit_bands(const Figure& figure, const std::vector<Reached>& places, const View& view) {
  std::vector<Item> items;
  add_middle(places, view, items);
  const std::vector<Stretch> all = stretches_of(figure, places);
  for (std::size_t i = 0; i < all.size();) {
    std::vector<Point> points;
    double wide = 0;
    std::size_t next = i;
    for (; next < all.size() && (next == i || are_joined(all[next - 1], all[next])); ++next) {
      add_way_to(figure, all[next].middle(), points);
      wide = std::max(wide, all[next].size());
    }
    items.push_back(next == i + 1 ? patch(figure, all[i], view) : band(std::move(points), wide, view));
    i = next;
  }
  return items;
}

std::vector<Item> lit_patches(const Figure& figure, const std::vector<Reached>& places, const View& view) {
  std::vector<Item> items;
  add_middle(places, view, items);
  for (const Stretch& stretch : stretches_of(figure, places)) items.push_back(patch(figure, stretch, view));
  return items;
}

} // namespace whorl::drawing
