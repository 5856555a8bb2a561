#include "layout/stadium.hpp"

#include "layout/turn.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace whorl::layout {
namespace {

/// The pieces of a contour: near end, first side, far end, side back.
constexpr std::size_t pieces = 4;

bool is_straight(std::size_t piece) { return piece % 2 == 1; }

/// Where they begin, counted from the first side; and where the last ends.
std::array<double, pieces + 1> begins_of(const Stadium& stadium, double r) {
  const double side = 2 * stadium.half, arc = pi * r;
  return {-arc, 0, side, side + arc, 2 * side + arc};
}

/// A place as the piece it lies on, how far on in it, and how many times round.
struct Lying {
  std::size_t piece = 0;
  double on = 0, turns = 0;
};

Lying lying_at(const Stadium& stadium, const Lap& lap, double at) {
  const std::array<double, pieces + 1> begins = begins_of(stadium, lap.r);
  const double from_first = at - lap.lead, length = length_of(stadium, lap.r);
  Lying lying;
  lying.turns = std::floor((from_first - begins[0]) / length);
  const double place = from_first - lying.turns * length;
  while (lying.piece + 1 < pieces && place >= begins[lying.piece + 1]) ++lying.piece;
  lying.on = place - begins[lying.piece];
  return lying;
}

/// A place as the middle of its half circle, or the point square below it, and the way out; to the right
/// hand.
struct Standing {
  Point core, out;
};

Standing stand_at(const Stadium& stadium, const Lap& lap, double at) {
  const Lying lying = lying_at(stadium, lap, at);
  const double on = lying.on, angle = lap.r > 0 ? on / lap.r : 0;
  switch (lying.piece) {
  case 0:
    return {{stadium.half, 0}, {sine(angle), 0 - cosine(angle)}};
  case 1:
    return {{stadium.half - on, 0}, {0, 1}};
  case 2:
    return {{0 - stadium.half, 0}, {0 - sine(angle), cosine(angle)}};
  default:
    return {{on - stadium.half, 0}, {0, -1}};
  }
}

Point mirrored(const Stadium& stadium, Point p) {
  return stadium.way == Way::anticlockwise ? p : Point{0 - p.x, p.y};
}

void add_piece(const Stadium& stadium, const Lap& lap, double from, double to, std::vector<Point>& points) {
  const int cuts = std::max(1, static_cast<int>((to - from) / (lap.r * pi / 4) + 0.999));
  const double step = (to - from) / cuts;
  const bool bent = !is_straight(lying_at(stadium, lap, (from + to) / 2).piece);
  const double turned = step / lap.r;
  const double handle = bent ? lap.r * 4.0 / 3.0 * sine(turned / 4) / cosine(turned / 4) : step / 3;
  for (int i = 0; i < cuts; ++i) {
    const double a = from + i * step, b = a + step;
    points.push_back(point_on(stadium, lap, a) + handle * along(stadium, lap, a));
    points.push_back(point_on(stadium, lap, b) - handle * along(stadium, lap, b));
    points.push_back(point_on(stadium, lap, b));
  }
}

/// Where the piece ends that a place lies on.
double end_of_piece(const Stadium& stadium, const Lap& lap, double at) {
  constexpr double past_start = 1e-9;
  const Lying lying = lying_at(stadium, lap, at + past_start);
  const std::array<double, pieces + 1> begins = begins_of(stadium, lap.r);
  return at + past_start - lying.on + begins[lying.piece + 1] - begins[lying.piece];
}

} // namespace

double length_of(const Stadium& stadium, double r) { return 4 * stadium.half + 2 * pi * r; }

double far_end_begins(const Stadium& stadium) { return 2 * stadium.half; }
double back_begins(const Stadium& stadium, double r) { return 2 * stadium.half + pi * r; }
double near_end_begins(const Stadium& stadium, double r) { return 4 * stadium.half + pi * r; }

Lap square_to(const Stadium& stadium, const Lap& lap, double r) {
  return {r, 0 - carried(stadium, lap, 0, {r, 0})};
}

Point point_on(const Stadium& stadium, const Lap& lap, double at) {
  const Standing stand = stand_at(stadium, lap, at);
  return mirrored(stadium, stand.core + lap.r * stand.out);
}

Point outward(const Stadium& stadium, const Lap& lap, double at) {
  return mirrored(stadium, stand_at(stadium, lap, at).out);
}

Point along(const Stadium& stadium, const Lap& lap, double at) {
  const Point out = stand_at(stadium, lap, at).out;
  return mirrored(stadium, {0 - out.y, out.x});
}

double carried(const Stadium& stadium, const Lap& from, double at, const Lap& to) {
  const Lying lying = lying_at(stadium, from, at);
  const double on = is_straight(lying.piece) ? lying.on : lying.on * to.r / from.r;
  return to.lead + lying.turns * length_of(stadium, to.r) + begins_of(stadium, to.r)[lying.piece] + on;
}

double aside_on(const Stadium& stadium, const Lap& lap, double at, double aside, double far) {
  return is_straight(lying_at(stadium, lap, at).piece) ? at + aside : at + aside * lap.r / far;
}

std::vector<Point> curve_on(const Stadium& stadium, const Lap& lap, double from, double to) {
  constexpr double nothing = 1e-9;
  std::vector<Point> points{point_on(stadium, lap, from)};
  for (double at = from; to - at > nothing;) {
    const double end = std::min(to, end_of_piece(stadium, lap, at));
    add_piece(stadium, lap, at, end, points);
    at = end;
  }
  return points;
}

Point core_under(const Stadium& stadium, Point p) {
  return {std::clamp(p.x, 0 - stadium.half, stadium.half), 0};
}

} // namespace whorl::layout
