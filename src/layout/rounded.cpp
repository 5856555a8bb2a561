#include "layout/rounded.hpp"

#include "layout/direction.hpp"
#include "layout/turn.hpp"

#include <algorithm>
#include <cmath>

namespace whorl::layout {
namespace {

/// One side of a contour whose r is 1, half of the corner at either end with it.
struct Side {
  double half = 0;   ///< of its straight piece
  double turn = 0;   ///< half the angle of a corner
  double corner = 0; ///< radius of a corner
  double end() const { return half + corner * turn; }
};

Side side_of(const Rounded& contour) {
  const double turn = pi / contour.corners;
  return {(1 - contour.corner) * sine(turn) / cosine(turn), turn, contour.corner};
}

/// A place as the side on which it lies and the length from that side's middle, r being 1.
struct OnSide {
  double number = 0, from_middle = 0;
};

OnSide side_at(const Rounded& contour, double at) {
  const double sides = at * contour.corners - contour.ahead, number = std::floor(sides + 0.5);
  return {number, 2 * (sides - number) * side_of(contour).end()};
}

/// An upright side's point or way out, turned to where it is.
Point turned(const Rounded& contour, double side, Point p) {
  const double angle = 2 * pi * (side + contour.ahead) / contour.corners;
  const Point out = outward(angle, contour.way), on = along(angle, contour.way);
  return p.x * on + p.y * out;
}

/// The angle of a direction from another that is 90 degrees away from `aside`, up to half a turn.
double angle_from(Point direction, Point ahead, Point aside) {
  const double sine = dot(direction, aside), cosine = dot(direction, ahead);
  const double angle = arc_sine(std::clamp(sine, -1.0, 1.0));
  if (cosine >= 0) return angle;
  return sine >= 0 ? pi - angle : -pi - angle;
}

double fraction(double at) { return at - std::floor(at); }

Spotted spot_on_circle(const Rounded& contour, Point p) {
  const double r = length(p);
  if (r < 1e-9) return {};
  return {r, fraction(angle_from((1 / r) * p, outward(0, contour.way), along(0, contour.way)) / (2 * pi))};
}

/// On the corner between a side, upright, and the next.
Spotted spot_on_corner(const Rounded& contour, double number, Point p) {
  const Side side = side_of(contour);
  const Point centre{side.half, 1 - side.corner};
  const double a = dot(centre, centre) - side.corner * side.corner, b = dot(p, centre), c = dot(p, p);
  const double r = (b - std::sqrt(std::max(0.0, b * b - a * c))) / a;
  const Point arm = p - r * centre;
  const double angle = angle_from((1 / std::max(1e-9, length(arm))) * arm, {0, 1}, {1, 0});
  return {r, fraction((number + contour.ahead + (side.half + side.corner * angle) / side.end() / 2) /
                      contour.corners)};
}

} // namespace

double length_of(const Rounded& contour, double r) {
  return contour.corners == 0 ? 2 * pi * r : 2 * r * contour.corners * side_of(contour).end();
}

Point point_on(const Rounded& contour, double r, double at) {
  if (contour.corners == 0) return on_circle(r, 2 * pi * fraction(at), contour.way);
  const Side side = side_of(contour);
  const auto [number, from_middle] = side_at(contour, at);
  const double far = std::abs(from_middle), sign = from_middle < 0 ? -1 : 1;
  if (far <= side.half) return r * turned(contour, number, {from_middle, 1});
  const double angle = (far - side.half) / side.corner;
  return r * turned(contour, number,
                    {sign * (side.half + side.corner * sine(angle)),
                     1 - side.corner + side.corner * cosine(angle)});
}

Point outward(const Rounded& contour, double at) {
  if (contour.corners == 0) return outward(2 * pi * fraction(at), contour.way);
  const auto [number, from_middle] = side_at(contour, at);
  const double far = std::abs(from_middle), sign = from_middle < 0 ? -1 : 1;
  const Side side = side_of(contour);
  const double angle = std::max(0.0, far - side.half) / side.corner;
  return turned(contour, number, {sign * sine(angle), cosine(angle)});
}

double carried(const Rounded& contour, double r, double at, double to) {
  if (contour.corners == 0) return at;
  const Side side = side_of(contour);
  const auto [number, from_middle] = side_at(contour, at);
  const double far = r * std::abs(from_middle), sign = from_middle < 0 ? -1 : 1;
  const double kept = std::min(r, to) * side.half; // of the straight piece, on both
  const double place =
      far <= kept ? far : kept + (far - kept) / (r * side.end() - kept) * (to * side.end() - kept);
  return (number + contour.ahead + sign * place / (2 * to * side.end())) / contour.corners;
}

Spotted spot_of(const Rounded& contour, Point p) {
  if (contour.corners == 0) return spot_on_circle(contour, p);
  const Side side = side_of(contour);
  for (int i = 0; i < contour.corners; ++i) {
    const Point upright{dot(p, turned(contour, i, {1, 0})), dot(p, turned(contour, i, {0, 1}))};
    if (upright.y <= 0) continue;
    if (std::abs(upright.x) <= side.half * upright.y)
      return {upright.y,
              fraction((i + contour.ahead + upright.x / upright.y / side.end() / 2) / contour.corners)};
    const Point next{dot(p, turned(contour, i + 1, {1, 0})), dot(p, turned(contour, i + 1, {0, 1}))};
    if (upright.x > 0 && next.x < 0 && next.y > 0 && -next.x > side.half * next.y)
      return spot_on_corner(contour, i, upright);
  }
  return {};
}

std::vector<Point> curve_round(const Rounded& contour, double r) {
  if (contour.corners == 0) return circle_curve(r, 0, 2 * pi, contour.way);
  const Side side = side_of(contour);
  const double handle = 4.0 / 3.0 * side.corner * r * sine(side.turn / 4) / cosine(side.turn / 4);
  std::vector<Point> points{point_on(contour, r, contour.ahead / contour.corners)};
  const auto line_to = [&points](Point to) {
    const Point from = points.back();
    points.insert(points.end(), {from + (1.0 / 3) * (to - from), from + (2.0 / 3) * (to - from), to});
  };
  const auto on = [&contour](double at) {
    const Point out = outward(contour, at);
    return contour.way == Way::anticlockwise ? Point{0 - out.y, out.x} : Point{out.y, 0 - out.x};
  };
  for (int i = 0; i < contour.corners; ++i) {
    const double straight = side.half / side.end() / 2;
    const double from = i + contour.ahead;
    const double places[] = {(from + straight) / contour.corners, (from + 0.5) / contour.corners,
                             (from + 1 - straight) / contour.corners};
    line_to(point_on(contour, r, places[0]));
    for (int k = 0; k < 2; ++k) {
      const Point to = point_on(contour, r, places[k + 1]);
      points.insert(points.end(),
                    {points.back() + handle * on(places[k]), to - handle * on(places[k + 1]), to});
    }
    line_to(point_on(contour, r, (from + 1) / contour.corners));
  }
  return points;
}

} // namespace whorl::layout
