#include "layout/wedge.hpp"

#include "layout/turn.hpp"

#include <algorithm>
#include <cmath>

namespace whorl::layout {
namespace {

/// A point of the ink as seen from the centre: how far out, and the sine of its angle from the symbol's ray
/// toward the item behind it.
struct Seen {
  double across = 0, radius = 0, sine = 0;
};

Seen see(Point point, double foot, const Turn& turn) {
  Seen seen;
  seen.across = turn.inward ? foot - point.y : foot + point.y;
  seen.radius = std::sqrt(seen.across * seen.across + point.x * point.x);
  seen.sine = (turn.hand == Hand::right ? -point.x : point.x) / std::max(seen.radius, 1e-9);
  return seen;
}

} // namespace

Wedge wedge_of(const SymbolExtent& shape, double foot, const Turn& turn) {
  Wedge wedge;
  wedge.foot = wedge.low = wedge.high = foot;
  double least = 0, most = 0;
  for (const Convex& piece : shape.ink)
    for (const Point& point : piece) {
      const Seen seen = see(point, foot, turn);
      least = std::min(least, seen.sine);
      most = std::max(most, seen.sine);
      wedge.low = std::min(wedge.low, seen.across);
      wedge.high = std::max(wedge.high, seen.radius);
    }
  wedge.before = -arc_sine(least);
  wedge.after = arc_sine(most);
  return wedge;
}

double gutter_angle(const SymbolExtent& shape, double foot, double half, Beside gutter, const Turn& turn) {
  double angle = 0;
  for (const Convex& piece : shape.ink)
    for (const Point& point : piece) {
      const Seen seen = see(point, foot, turn);
      if (seen.across <= 0 || half >= seen.radius) return 2 * pi;
      const double toward = arc_sine(gutter == Beside::before ? -seen.sine : seen.sine);
      angle = std::max(angle, arc_sine(half / seen.radius) + toward);
    }
  return angle;
}

} // namespace whorl::layout
