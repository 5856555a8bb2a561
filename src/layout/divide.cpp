#include "layout/divide.hpp"

namespace whorl::layout {
namespace {

using Widths = std::vector<Width>;

const Width& wider(const Width& one, const Width& other) { return one.least < other.least ? other : one; }
const Width& narrower(const Width& one, const Width& other) {
  return one.greatest > other.greatest ? other : one;
}

/// Rounds that shrink, and what they shrink from and to.
struct Shrinking {
  std::uint32_t first = 0, last = 0;
  Width from, to;
  bool lace = false;
};

/// From a shrinking round to the last before a growing one or the end.
Shrinking shrinking_at(const Widths& widths, std::uint32_t first, const Width& widest) {
  Shrinking found{first, first, widest, widths[first], is_lace(widest) || is_lace(widths[first])};
  while (found.last + 1 < widths.size() && !is_wider(widths[found.last + 1], found.to)) {
    const Width& next = widths[++found.last];
    found.to = narrower(found.to, next);
    found.lace = found.lace || is_lace(next);
  }
  return found;
}

bool loses_more_than(std::uint64_t one_in, const Shrinking& shrinking) {
  return one_in * (shrinking.from.least - shrinking.to.greatest) > shrinking.from.least;
}

bool turns_inward(const Shrinking& shrinking, bool at_end, const Ends& ends) {
  if (at_end && ends.gathered) return true;
  if (shrinking.lace) return loses_more_than(3, shrinking);
  return !at_end || loses_more_than(4, shrinking);
}

/// A first round that something shrinks from at once needs no disc of its own, unless it fills a centre.
bool joins_inward(const Stretch& outward, const Ends& ends) {
  return outward.first == 0 && outward.last == 0 && !ends.from_centre;
}

/// The next disc outward from a round on, and what is turned inward behind it, if anything is.
struct Outward {
  Stretch stretch;
  std::uint32_t inward_to = 0; ///< the last round of that; that of the stretch: none
};

Outward outward_from(const Widths& widths, std::uint32_t first, const Ends& ends) {
  const auto rounds = static_cast<std::uint32_t>(widths.size());
  Width widest = widths[first];
  std::uint32_t at = first;
  while (at + 1 < rounds) {
    if (!is_narrower(widths[at + 1], widest)) {
      widest = wider(widest, widths[++at]);
      continue;
    }
    const Shrinking shrinking = shrinking_at(widths, at + 1, widest);
    if (turns_inward(shrinking, shrinking.last + 1 == rounds, ends))
      return {{first, at, false}, shrinking.last};
    at = shrinking.last;
  }
  return {{first, at, false}, at};
}

} // namespace

std::vector<Stretch> divide(const Widths& widths, const Ends& ends) {
  std::vector<Stretch> stretches;
  const auto rounds = static_cast<std::uint32_t>(widths.size());
  for (std::uint32_t first = 0; first < rounds;) {
    const auto [outward, last] = outward_from(widths, first, ends);
    const bool inward = last > outward.last, whole = inward && joins_inward(outward, ends);
    if (!whole) stretches.push_back(outward);
    if (inward) stretches.push_back({whole ? 0 : outward.last + 1, last, true});
    first = last + 1;
  }
  return stretches;
}

std::vector<Stretch> divide(const std::vector<std::uint32_t>& counts, const Ends& ends) {
  Widths widths;
  for (const std::uint32_t count : counts) widths.push_back(width_of(count));
  return divide(widths, ends);
}

std::vector<Stretch> divide(const fabric::Fabric& fabric, std::uint32_t part,
                            const std::vector<std::uint32_t>& rounds, const Widths& widths) {
  const fabric::Part& worked = fabric.parts[part];
  const bool to_the_end = !rounds.empty() && rounds.back() + 1 == worked.first_round + worked.rounds;
  const bool from_centre = worked.start == fabric::Start::magic_ring ||
                           worked.start == fabric::Start::second_chain ||
                           (worked.rounds > 0 && fabric.rounds[worked.first_round].both_sides);
  return divide(widths, {from_centre, to_the_end && worked.end == fabric::End::gathered});
}

} // namespace whorl::layout
