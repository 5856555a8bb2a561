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

/// Of an angle within a quarter turn of nothing, told by its sine.
SineCosine of_sine(double sine) { return {sine, std::sqrt(std::max(0.0, 1 - sine * sine))}; }

SineCosine sum(const SineCosine& a, const SineCosine& b) {
  return {a.sine * b.cosine + b.sine * a.cosine, a.cosine * b.cosine - a.sine * b.sine};
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
  SineCosine widest{0, 1};
  for (const Convex& piece : shape.ink)
    for (const Point& point : piece) {
      const Seen seen = see(point, foot, turn);
      if (seen.across <= 0 || half >= seen.radius) return 2 * pi;
      const double toward = gutter == Beside::before ? -seen.sine : seen.sine;
      const SineCosine angle = sum(of_sine(half / seen.radius), of_sine(toward));
      if (angle.sine > 0 && angle.cosine < widest.cosine) widest = angle;
    }
  return widest.cosine >= 0 ? arc_sine(widest.sine) : pi - arc_sine(widest.sine);
}

} // namespace whorl::layout
