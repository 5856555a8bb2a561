#include "layout/seen.hpp"

#include "layout/turn.hpp"

#include <algorithm>
#include <cmath>

namespace whorl::layout {
namespace {

using fabric::Fabric;

Seen seen_from_middle(const std::vector<Point>& points, Point otherwise, double foot, bool against,
                      const Turn& turn) {
  const double side = turn.hand == Hand::right ? -1 : 1;
  const auto see = [&](Point p) {
    const double across = turn.inward ? foot - p.y : foot + p.y;
    const double far = std::sqrt(across * across + p.x * p.x);
    return SeenPoint{arc_sine(side * p.x / std::max(far, 1e-9)), far};
  };
  if (points.size() < 2) return Seen(see(points.empty() ? otherwise : points.front()));
  std::vector<Point> in_order(points);
  std::stable_sort(in_order.begin(), in_order.end(),
                   [side](Point a, Point b) { return side * a.x < side * b.x; });
  if (against) std::reverse(in_order.begin(), in_order.end());
  std::vector<SeenPoint> seen;
  seen.reserve(in_order.size());
  for (const Point p : in_order) seen.push_back(see(p));
  return Seen(seen, {});
}

} // namespace

std::vector<Seen> feet_seen(const RingLaid& laid, const Turn& turn) {
  std::vector<Seen> all;
  all.reserve(laid.band.shapes.size());
  for (std::size_t i = 0; i < laid.band.shapes.size(); ++i)
    all.push_back(seen_from_middle(laid.band.shapes[i]->feet, {0, 0}, laid.size.wedges[i].foot,
                                   laid.band.against, turn));
  return all;
}

std::vector<Seen> tips_seen(const RingLaid& laid, const Turn& turn) {
  std::vector<Seen> all;
  all.reserve(laid.band.shapes.size());
  for (std::size_t i = 0; i < laid.band.shapes.size(); ++i) {
    const SymbolExtent& shape = *laid.band.shapes[i];
    all.push_back(
        seen_from_middle(shape.tips, {0, shape.height}, laid.size.wedges[i].foot, laid.band.against, turn));
  }
  return all;
}

std::vector<Head> heads_of(const Fabric& fabric, const RingLaid& laid, const std::vector<double>& at,
                           const std::vector<Seen>& tips, double radius) {
  std::vector<Head> heads;
  const fabric::StitchId onto_last =
      fabric.rounds[laid.ring.last_round].first_stitch - fabric.rounds[laid.ring.round].first_stitch;
  for (std::size_t i = 0; i < laid.items.size(); ++i) {
    const Seen& seen = tips[laid.band.shape_of[i]];
    for (std::uint32_t j = 0; j < laid.items[i].count; ++j) {
      const SeenPoint& tip = seen.or_last(j);
      heads.push_back(
          {radius * (at[i] / laid.size.middle + tip.angle), tip.far, laid.items[i].first + j + onto_last, i});
    }
  }
  return heads;
}

std::vector<Foot> feet_of(const Fabric& fabric, const RingLaid& laid, const std::vector<Seen>& seen,
                          double radius) {
  std::vector<std::vector<double>> arcs(seen.size());
  for (std::size_t i = 0; i < seen.size(); ++i)
    for (const SeenPoint& foot : seen[i]) arcs[i].push_back(radius * foot.angle);
  std::vector<const std::vector<double>*> from_ray;
  for (const std::uint32_t shape : laid.band.shape_of) from_ray.push_back(&arcs[shape]);
  return layout::feet_of(fabric, laid.items, from_ray);
}

} // namespace whorl::layout
