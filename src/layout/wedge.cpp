#include "layout/wedge.hpp"

#include "layout/turn.hpp"

#include <algorithm>
#include <cmath>

namespace whorl::layout {
namespace {

/// A point of the ink as seen from the centre: how far out along the symbol's ray, and how far aside of it
/// toward the item behind it.
struct Seen {
  double across = 0, aside = 0;
  double squared() const { return across * across + aside * aside; } ///< of how far out it is
};

Seen see(Point point, double foot, const Turn& turn) {
  return {turn.inward ? foot - point.y : foot + point.y, turn.hand == Hand::right ? -point.x : point.x};
}

/// The sine of the angle at which a point is seen.
double sine_of(const Seen& seen) { return seen.aside / std::max(std::sqrt(seen.squared()), 1e-9); }

/// Of points aside to the same side: at a wider angle within a quarter turn.
bool is_wider(const Seen& one, const Seen& other) {
  return one.aside * one.aside * other.squared() > other.aside * other.aside * one.squared();
}

/// The angle between the middle of the gutter and the ray of an item of which a point that is seen so keeps
/// away from it by half its width.
SineCosine from_gutter(const Seen& seen, double half) {
  const double squared = seen.squared(), along = std::sqrt(squared - half * half);
  return {(half * seen.across + along * seen.aside) / squared,
          (along * seen.across - half * seen.aside) / squared};
}

} // namespace

Wedge wedge_of(const SymbolExtent& shape, double foot, const Turn& turn) {
  Wedge wedge;
  wedge.foot = wedge.low = foot;
  double highest = foot * foot;
  Seen before{1, 0}, after{1, 0};
  for (const Convex& piece : shape.ink)
    for (const Point& point : piece) {
      const Seen seen = see(point, foot, turn);
      if (seen.aside > 0 ? is_wider(seen, after) : is_wider(seen, before))
        (seen.aside > 0 ? after : before) = seen;
      wedge.low = std::min(wedge.low, seen.across);
      highest = std::max(highest, seen.squared());
    }
  wedge.high = std::sqrt(highest);
  wedge.before = arc_sine(0 - sine_of(before));
  wedge.after = arc_sine(sine_of(after));
  return wedge;
}

double gutter_angle(const SymbolExtent& shape, double foot, double half, Beside gutter, const Turn& turn) {
  SineCosine widest{0, 1};
  for (const Convex& piece : shape.ink)
    for (const Point& point : piece) {
      Seen seen = see(point, foot, turn);
      if (seen.across <= 0 || half * half >= seen.squared()) return 2 * pi;
      if (gutter == Beside::before) seen.aside = 0 - seen.aside;
      const SineCosine angle = from_gutter(seen, half);
      if (angle.sine > 0 && angle.cosine < widest.cosine) widest = angle;
    }
  return widest.cosine >= 0 ? arc_sine(widest.sine) : pi - arc_sine(widest.sine);
}

} // namespace whorl::layout
