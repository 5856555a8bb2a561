#include "drawing/profile.hpp"

#include "layout/width.hpp"

#include <algorithm>
#include <cmath>

namespace whorl::drawing {
namespace {

using layout::Point;

constexpr double round_length = 1.10, stitches_to_radius = 0.15915494309189535; // of 2 pi
/// A round is cut into steps, and its outline rounded by taking means of neighbours; so many passes of so
/// long steps spread like a bell curve with a deviation of 1.5 W.
constexpr int least_steps = 4, passes = 60;
constexpr double step = round_length / least_steps;

double radius(std::uint32_t stitches) { return stitches_to_radius * stitches; }

double radius_of(const fabric::Fabric& fabric, std::uint32_t number) {
  const fabric::Round& round = fabric.rounds[number];
  if (round.makes == 0) return radius(round.counted);
  return radius(layout::stitches_wide(layout::widths_of(fabric, {number}).front()));
}

/// A chain that is worked round on both sides closes the piece as a ring does.
bool starts_closed(const fabric::Part& part) {
  return part.start == fabric::Start::magic_ring || part.start == fabric::Start::second_chain ||
         part.start == fabric::Start::chain_ring || part.start == fabric::Start::chain;
}

/// Goes on to a radius, by steps; the way down is what the slope leaves of a round's length.
void go_on(Profile& profile, double to) {
  const Point from = profile.side.back();
  const double out = to - from.x;
  const double down = std::sqrt(std::max(0.0, round_length * round_length - out * out));
  const double length = std::sqrt(out * out + down * down);
  const int steps = std::max(least_steps, static_cast<int>(length / step));
  for (int i = 1; i <= steps; ++i) {
    const double part = static_cast<double>(i) / steps;
    profile.side.push_back({from.x + out * part, from.y + down * part});
  }
}

Point mean(Point before, Point point, Point after) {
  return {(before.x + 2 * point.x + after.x) / 4, (before.y + 2 * point.y + after.y) / 4};
}

/// One pass: at a pole the outline goes on as its own mirror image, an open edge stays where it is.
std::vector<Point> smoothed(const std::vector<Point>& side) {
  std::vector<Point> smooth = side;
  const std::size_t last = side.size() - 1;
  for (std::size_t i = 1; i < last; ++i) smooth[i] = mean(side[i - 1], side[i], side[i + 1]);
  if (side[0].x == 0) smooth[0] = mean({-side[1].x, side[1].y}, side[0], side[1]);
  if (side[last].x == 0)
    smooth[last] = mean(side[last - 1], side[last], {-side[last - 1].x, side[last - 1].y});
  return smooth;
}

} // namespace

Profile profile_of(const fabric::Fabric& fabric, std::uint32_t first, std::uint32_t last) {
  Profile profile;
  const fabric::Part& part = fabric.parts[fabric.rounds[first].part];
  const bool from_pole = first == part.first_round && starts_closed(part);
  const std::uint32_t uses = fabric.rounds[first].uses;
  profile.side.push_back({from_pole ? 0 : (uses > 0 ? radius(uses) : radius_of(fabric, first)), 0});
  for (std::uint32_t round = first; round <= last; ++round) {
    go_on(profile, radius_of(fabric, round));
    profile.ends.push_back(profile.side.size() - 1);
  }
  if (part.end == fabric::End::gathered && last + 1 == part.first_round + part.rounds) {
    go_on(profile, 0);
    profile.ends.back() = profile.side.size() - 1;
  }
  for (int pass = 0; pass < passes; ++pass) profile.side = smoothed(profile.side);
  return profile;
}

} // namespace whorl::drawing
