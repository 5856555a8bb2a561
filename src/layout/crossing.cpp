#include "layout/crossing.hpp"

#include <algorithm>
#include <limits>

namespace whorl::layout {
namespace {

/// Whether the line is worked into the stitches below it in the order they were made, or against it.
bool runs_on(const std::vector<Seat>& seats) {
  const auto is_one = [](const Seat& seat) { return seat.into != fabric::none; };
  const auto first = std::find_if(seats.begin(), seats.end(), is_one);
  const auto last = std::find_if(seats.rbegin(), seats.rend(), is_one);
  return first == seats.end() || first->into <= last->into;
}

/// Whether one of them goes into a stitch that comes, on the way of its line, before that of the one before.
bool steps_back(const std::vector<Seat>& seats, const Crossing& run, bool on) {
  fabric::StitchId before = fabric::none;
  for (std::size_t i = run.first; i < run.end; ++i) {
    const fabric::StitchId into = seats[i].into;
    if (into == fabric::none) continue;
    if (before != fabric::none && into != before && (into > before) != on) return true;
    before = into;
  }
  return false;
}

} // namespace

std::vector<Crossing> crossings_of(const std::vector<Seat>& seats) {
  constexpr double same_place = 0.3;
  constexpr std::size_t most_crossing = 8; // more are out of order for another reason: a row round a tube
  constexpr std::size_t most_alone = 4;    // of a line that has no others
  constexpr double far = std::numeric_limits<double>::max();
  std::vector<double> least(seats.size() + 1, far); // of this and all behind
  for (std::size_t i = seats.size(); i-- > 0;) least[i] = std::min(least[i + 1], seats[i].at.value_or(far));
  std::vector<Crossing> crossings;
  const bool on = runs_on(seats);
  double most = 0 - far;
  std::size_t first = 0;
  for (std::size_t i = 0; i < seats.size(); ++i) {
    most = std::max(most, seats[i].at.value_or(most));
    if (most > least[i + 1] + same_place) continue; // one behind belongs before
    const Crossing run{first, i + 1};
    const std::size_t many = run.end - run.first;
    const bool all = many > most_alone && many == seats.size();
    if (many > 1 && many <= most_crossing && !all && steps_back(seats, run, on)) crossings.push_back(run);
    first = i + 1;
  }
  return crossings;
}

} // namespace whorl::layout
