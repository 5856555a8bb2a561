#include "layout/lace_space.hpp"

#include <algorithm>

namespace whorl::layout {

namespace {

/// How readily a ring stands out: stems reach down to their places, low stitches leave a gap beneath.
double readiness(const LaceRing& ring) {
  constexpr double of_low = 0.3;
  const auto rises = [](const Bunch& bunch) { return bunch.most_rise > 0; };
  return std::any_of(ring.bunches.begin(), ring.bunches.end(), rises) ? 1 : of_low;
}

/// How far out rings stand, against how readily they do so.
struct Reached {
  double out = 0, ready = 0;
};

} // namespace

void share_pushes(const Lace& lace, Space& space) {
  std::vector<Reached> reached(1);
  for (const LaceRing& ring : lace.rings)
    reached.push_back({reached.back().out + ring.pushed, reached.back().ready + readiness(ring)});
  for (std::size_t from = 0, to = 0; from + 1 < reached.size(); from = to) {
    double steepest = -1;
    for (std::size_t next = from + 1; next < reached.size(); ++next) {
      const double slope =
          (reached[next].out - reached[from].out) / (reached[next].ready - reached[from].ready);
      if (slope >= steepest) steepest = slope, to = next;
    }
    for (std::size_t i = from; i < to; ++i)
      space.pushed[i] = steepest * (reached[i + 1].ready - reached[i].ready);
  }
}

double most_pushed(const Lace& lace) {
  double most = 0;
  for (const LaceRing& ring : lace.rings) most = std::max(most, ring.pushed);
  return most;
}

} // namespace whorl::layout
