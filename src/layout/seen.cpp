#include "layout/seen.hpp"

#include "layout/turn.hpp"

#include <algorithm>
#include <cmath>

namespace whorl::layout {
namespace {

using fabric::Fabric;

Seen seen_from_middle(std::vector<Point> points, Point otherwise, double foot, bool against,
                      const Turn& turn) {
  if (points.empty()) points.push_back(otherwise);
  const double side = turn.hand == Hand::right ? -1 : 1;
  std::stable_sort(points.begin(), points.end(),
                   [side](Point a, Point b) { return side * a.x < side * b.x; });
  if (against) std::reverse(points.begin(), points.end());
  Seen seen;
  for (const Point p : points) {
    const double across = turn.inward ? foot - p.y : foot + p.y;
    seen.far.push_back(std::sqrt(across * across + p.x * p.x));
    seen.angle.push_back(arc_sine(side * p.x / std::max(seen.far.back(), 1e-9)));
  }
  return seen;
}

} // namespace

Looks looks_of(const RingLaid& laid, const Turn& turn) {
  Looks looks;
  for (std::size_t i = 0; i < laid.band.shapes.size(); ++i) {
    const SymbolExtent& shape = *laid.band.shapes[i];
    const double foot = laid.size.wedges[i].foot;
    looks.feet.push_back(seen_from_middle(shape.feet, {0, 0}, foot, laid.band.against, turn));
    looks.tips.push_back(seen_from_middle(shape.tips, {0, shape.height}, foot, laid.band.against, turn));
  }
  return looks;
}

std::vector<Head> heads_of(const Fabric& fabric, const RingLaid& laid, const std::vector<double>& at,
                           const Looks& looks, double radius) {
  std::vector<Head> heads;
  const fabric::StitchId onto_last =
      fabric.rounds[laid.ring.last_round].first_stitch - fabric.rounds[laid.ring.round].first_stitch;
  for (std::size_t i = 0; i < laid.items.size(); ++i) {
    const Seen& tips = looks.tips[laid.band.shape_of[i]];
    for (std::uint32_t j = 0; j < laid.items[i].count; ++j) {
      const std::size_t tip = std::min<std::size_t>(j, tips.angle.size() - 1);
      heads.push_back({radius * (at[i] / laid.size.middle + tips.angle[tip]), tips.far[tip],
                       laid.items[i].first + j + onto_last, i});
    }
  }
  return heads;
}

std::vector<Foot> feet_of(const Fabric& fabric, const RingLaid& laid, const Looks& looks, double radius) {
  std::vector<std::vector<double>> arcs;
  for (const Seen& feet : looks.feet) {
    arcs.push_back(feet.angle);
    for (double& arc : arcs.back()) arc *= radius;
  }
  std::vector<const std::vector<double>*> from_ray;
  for (const std::uint32_t shape : laid.band.shape_of) from_ray.push_back(&arcs[shape]);
  return layout::feet_of(fabric, laid.items, from_ray);
}

} // namespace whorl::layout
