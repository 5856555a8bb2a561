#include "layout/divide.hpp"

namespace whorl::layout {
namespace {

using Counts = std::vector<std::uint32_t>;

bool shrinks(const Counts& counts, std::uint32_t round) {
  return round > 0 && counts[round] < counts[round - 1];
}
bool grows(const Counts& counts, std::uint32_t round) {
  return round > 0 && counts[round] > counts[round - 1];
}

/// The last round before a growing one or the end, from a shrinking round on.
std::uint32_t end_of_shrinking(const Counts& counts, std::uint32_t round) {
  while (round + 1 < counts.size() && !grows(counts, round + 1)) ++round;
  return round;
}

bool loses_a_quarter(std::uint32_t before, std::uint32_t after) {
  return 4 * static_cast<std::uint64_t>(before - after) > before;
}

/// Whether rounds `first` to `last`, which shrink, are turned inward.
bool turns_inward(const Counts& counts, std::uint32_t first, std::uint32_t last, const Ends& ends) {
  const bool at_end = last + 1 == counts.size();
  return !at_end || ends.gathered || loses_a_quarter(counts[first - 1], counts[last]);
}

/// A first round that something shrinks from at once needs no disc of its own, unless it fills a centre.
bool joins_inward(const Stretch& outward, const Ends& ends) {
  return outward.first == 0 && outward.last == 0 && !ends.from_centre;
}

} // namespace

std::vector<Stretch> divide(const Counts& counts, const Ends& ends) {
  std::vector<Stretch> stretches;
  const auto rounds = static_cast<std::uint32_t>(counts.size());
  for (std::uint32_t first = 0, at = 0; first < rounds;) {
    while (at + 1 < rounds && !shrinks(counts, at + 1)) ++at;
    Stretch outward{first, at, false};
    if (at + 1 == rounds) return stretches.push_back(outward), stretches;
    const std::uint32_t last = end_of_shrinking(counts, at + 1);
    if (!turns_inward(counts, at + 1, last, ends))
      return stretches.push_back({first, last, false}), stretches;
    const bool whole = joins_inward(outward, ends);
    if (!whole) stretches.push_back(outward);
    stretches.push_back({whole ? 0 : at + 1, last, true});
    first = at = last + 1;
  }
  return stretches;
}

std::vector<Stretch> divide(const fabric::Fabric& fabric, std::uint32_t part,
                            const std::vector<std::uint32_t>& rounds, std::uint32_t loops) {
  const fabric::Part& worked = fabric.parts[part];
  Counts counts;
  for (const std::uint32_t round : rounds) counts.push_back(fabric.rounds[round].makes);
  if (loops > 0 && !counts.empty()) counts.front() = loops;
  const bool to_the_end = !rounds.empty() && rounds.back() + 1 == worked.first_round + worked.rounds;
  const bool from_centre =
      worked.start == fabric::Start::magic_ring || worked.start == fabric::Start::second_chain ||
      (worked.rounds > 0 && fabric.rounds[worked.first_round].both_sides);
  return divide(counts, {from_centre, to_the_end && worked.end == fabric::End::gathered});
}

} // namespace whorl::layout
