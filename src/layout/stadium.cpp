#include "layout/stadium.hpp"

#include "layout/turn.hpp"

#include <algorithm>
#include <array>

namespace whorl::layout {
namespace {

constexpr double widest_ray = 0.89; ///< radians from the end of the first side, 51 degrees

/// The angle from the end of the first side to where a round begins.
double ray_at(const Stadium& stadium, double r) {
  return r * sine(widest_ray) <= stadium.beside ? widest_ray : arc_sine(stadium.beside / r);
}

/// Where the pieces of a contour begin: arc, side, arc, side, arc; and where it ends.
std::array<double, 6> pieces(const Stadium& stadium, double r) {
  const double side = 2 * stadium.half, first = ray_at(stadium, r) * r;
  return {0, first, first + side, first + side + pi * r, first + 2 * side + pi * r, 2 * side + 2 * pi * r};
}

std::size_t piece_at(const std::array<double, 6>& begins, double at) {
  std::size_t piece = 0;
  while (piece < 4 && at >= begins[piece + 1]) ++piece;
  return piece;
}

/// A place as the middle of its half circle, or the point square below it, and the way out; to the right
/// hand.
struct Standing {
  Point core, out;
};

Standing stand_at(const Stadium& stadium, double r, double at) {
  const std::array<double, 6> begins = pieces(stadium, r);
  const std::size_t piece = piece_at(begins, at);
  const double on = at - begins[piece], angle = r > 0 ? on / r : 0;
  switch (piece) {
  case 0:
    return {{stadium.half, 0}, {sine(ray_at(stadium, r) - angle), cosine(ray_at(stadium, r) - angle)}};
  case 1:
    return {{stadium.half - on, 0}, {0, 1}};
  case 2:
    return {{0 - stadium.half, 0}, {0 - sine(angle), cosine(angle)}};
  case 3:
    return {{on - stadium.half, 0}, {0, -1}};
  default:
    return {{stadium.half, 0}, {sine(angle), 0 - cosine(angle)}};
  }
}

Point mirrored(const Stadium& stadium, Point p) {
  return stadium.way == Way::anticlockwise ? p : Point{0 - p.x, p.y};
}

void add_piece(const Stadium& stadium, double r, double from, double to, std::vector<Point>& points) {
  const int cuts = std::max(1, static_cast<int>((to - from) / (r * pi / 4) + 0.999));
  const double step = (to - from) / cuts;
  const bool bent = !(outward(stadium, r, from + step * 0.25) == outward(stadium, r, from + step * 0.75));
  const double turned = step / r;
  const double handle = bent ? r * 4.0 / 3.0 * sine(turned / 4) / cosine(turned / 4) : step / 3;
  for (int i = 0; i < cuts; ++i) {
    const double a = from + i * step, b = a + step;
    points.push_back(point_on(stadium, r, a) + handle * along(stadium, r, a));
    points.push_back(point_on(stadium, r, b) - handle * along(stadium, r, b));
    points.push_back(point_on(stadium, r, b));
  }
}

} // namespace

double length_of(const Stadium& stadium, double r) { return pieces(stadium, r)[5]; }

double side_begins(const Stadium& stadium, double r) { return ray_at(stadium, r) * r; }
double far_end_begins(const Stadium& stadium, double r) { return pieces(stadium, r)[2]; }
double back_begins(const Stadium& stadium, double r) { return pieces(stadium, r)[3]; }
double near_end_begins(const Stadium& stadium, double r) { return pieces(stadium, r)[4]; }

Point point_on(const Stadium& stadium, double r, double at) {
  const Standing stand = stand_at(stadium, r, at);
  return mirrored(stadium, stand.core + r * stand.out);
}

Point outward(const Stadium& stadium, double r, double at) {
  return mirrored(stadium, stand_at(stadium, r, at).out);
}

Point along(const Stadium& stadium, double r, double at) {
  const Point out = stand_at(stadium, r, at).out;
  return mirrored(stadium, {0 - out.y, out.x});
}

double carried_square(const Stadium& stadium, double r, double at, double to) {
  const std::array<double, 6> begins = pieces(stadium, r), ends = pieces(stadium, to);
  const std::size_t piece = piece_at(begins, at);
  if (piece == 0) return ends[1] - (begins[1] - at) * to / r;
  const bool side = piece == 1 || piece == 3;
  return ends[piece] + (at - begins[piece]) * (side ? 1 : to / r);
}

double aside_on(const Stadium& stadium, double r, double at, double aside, double far) {
  const std::size_t piece = piece_at(pieces(stadium, r), at);
  return piece == 1 || piece == 3 ? at + aside : at + aside * r / far;
}

double carried(const Stadium& stadium, double r, double at, double to) {
  return std::clamp(carried_square(stadium, r, at, to), 0.0, length_of(stadium, to));
}

std::vector<Point> curve_on(const Stadium& stadium, double r, double from, double to) {
  const std::array<double, 6> begins = pieces(stadium, r);
  std::vector<Point> points{point_on(stadium, r, from)};
  double at = from;
  for (std::size_t piece = 0; piece < 5; ++piece) {
    const double end = piece == 4 ? to : std::min(to, begins[piece + 1]);
    if (end - at > 1e-9) add_piece(stadium, r, at, end, points), at = end;
  }
  return points;
}

Point core_under(const Stadium& stadium, Point p) {
  return {std::clamp(p.x, 0 - stadium.half, stadium.half), 0};
}

} // namespace whorl::layout
