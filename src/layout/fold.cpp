#include "layout/fold.hpp"

#include "fabric/opening.hpp"
#include "layout/items.hpp"

namespace whorl::layout {
namespace {

using fabric::Fabric;
using fabric::Round;
using fabric::Stitch;
using fabric::StitchId;

/// Posts of an eye or marker stand between a round and the next.
void keep_placings(const Fabric& fabric, std::vector<char>& kept) {
  for (const fabric::Placing& placing : fabric.placings) {
    if (placing.round == fabric::none || placing.round >= kept.size()) continue;
    const bool pierces = placing.what == pattern::What::eye || placing.what == pattern::What::bead;
    if (!pierces && placing.after.empty()) continue;
    kept[placing.round] = 1;
    if (placing.round + 1 < kept.size()) kept[placing.round + 1] = 1;
  }
}

/// Rounds that a spike passes, and the one it goes into.
void keep_passed(std::uint32_t base, std::uint32_t round, std::vector<char>& kept) {
  constexpr std::uint32_t deepest = 9;
  if (base + 1 >= round || round - base > deepest) return;
  for (std::uint32_t i = base; i < round; ++i) kept[i] = 1;
}

/// Rounds that a part other than their own is worked into.
void keep_owners(const Fabric& fabric, std::vector<char>& kept) {
  for (StitchId stitch = 0; stitch < fabric.stitches.size(); ++stitch) {
    const std::uint32_t part = fabric.rounds[fabric.stitches[stitch].round].part;
    for (const fabric::Leg& leg : fabric::legs_of(fabric, stitch)) {
      const bool in_stitch = leg.into.what != fabric::On::ring && leg.into.of < fabric.stitches.size();
      if (!in_stitch || leg.into.what == fabric::On::space) continue;
      const std::uint32_t owner = fabric.stitches[leg.into.of].round;
      if (fabric.rounds[owner].part != part)
        kept[owner] = 1;
      else
        keep_passed(owner, fabric.stitches[stitch].round, kept);
    }
  }
}

bool is_plain_stitch(const Fabric& fabric, StitchId stitch, std::uint32_t before) {
  const Stitch& worked = fabric.stitches[stitch];
  const fabric::Legs legs = fabric::legs_of(fabric, stitch);
  if (worked.flags != fabric::counts || worked.yarn != fabric.stitches[stitch - before].yarn) return false;
  if (legs.size() != 1) return false;
  return legs.begin()->into == fabric::Place{stitch - before, fabric::On::top, stitch::both};
}

/// The next stitch back from `end` that has a top, not before `begin`; none.
StitchId topped_before(const Fabric& fabric, StitchId end, StitchId begin) {
  while (end > begin)
    if (fabric::has_top(fabric, --end)) return end;
  return fabric::none;
}

/// Every stitch of it has one leg, in the stitches of the row before from its end back; besides there are
/// chains to turn with.
bool is_plain_row(const Fabric& fabric, const Round& row, const Round& before) {
  if (before.kind != pattern::RoundKind::row || before.makes != row.makes) return false;
  if (row.counting_chain != fabric::none) return false;
  StitchId base = before.first_stitch + before.count;
  for (StitchId stitch = row.first_stitch; stitch < row.first_stitch + row.count; ++stitch) {
    const Stitch& worked = fabric.stitches[stitch];
    if ((worked.flags & fabric::starts_chain) != 0) continue;
    base = topped_before(fabric, base, before.first_stitch);
    const fabric::Legs legs = fabric::legs_of(fabric, stitch);
    if (base == fabric::none || worked.flags != fabric::counts || legs.size() != 1) return false;
    if (worked.yarn != fabric.stitches[base].yarn) return false;
    if (!(legs.begin()->into == fabric::Place{base, fabric::On::top, stitch::both})) return false;
  }
  return true;
}

bool same_miscount(const Round& one, const Round& other) {
  const auto miss = [](const Round& round) { return round.stated >= 0 && round.stated != round.counted; };
  return miss(one) == miss(other);
}

} // namespace

namespace {

/// Rounds that a part is sewn over, each for itself.
void keep_covered(const Fabric& fabric, std::vector<char>& kept) {
  for (const fabric::Footprint& print : fabric.footprints)
    for (std::uint32_t round = print.first_round; round <= print.last_round; ++round) kept[round] = 1;
}

} // namespace

Folding::Folding(const Fabric& fabric)
    : fabric_(fabric), loops_(layout::kept_loops(fabric)), kept_(fabric.rounds.size(), 0) {
  keep_placings(fabric, kept_);
  keep_owners(fabric, kept_);
  keep_covered(fabric, kept_);
}

/// Every stitch of a plain round has one leg, in the stitch that stands one round's length before it.
bool Folding::is_plain(std::uint32_t round) const {
  const Round& worked = fabric_.rounds[round];
  if (kept_[round] || worked.again != 0 || worked.joined || worked.attached || round == 0 ||
      worked.count == 0)
    return false;
  const Round& before = fabric_.rounds[round - 1];
  if (before.part != worked.part) return false;
  if (worked.kind == pattern::RoundKind::row) return is_plain_row(fabric_, worked, before);
  if (worked.turned || before.count != worked.count) return false;
  for (std::uint32_t i = 0; i < worked.count; ++i)
    if (!is_plain_stitch(fabric_, worked.first_stitch + i, worked.count)) return false;
  return true;
}

bool Folding::are_alike(std::uint32_t round, std::uint32_t next) const {
  const Round &one = fabric_.rounds[round], &other = fabric_.rounds[next];
  if (next != round + 1 || other.number != one.number + 1 || one.count != other.count) return false;
  if (!same_miscount(one, other)) return false;
  for (std::uint32_t i = 0; i < one.count; ++i) {
    const Stitch &a = fabric_.stitches[one.first_stitch + i], &b = fabric_.stitches[other.first_stitch + i];
    if (a.kind != b.kind || a.yarn != b.yarn) return false;
  }
  return true;
}

std::vector<Fold> Folding::fold(const std::vector<std::uint32_t>& rounds) const {
  std::vector<Fold> rings;
  for (std::size_t at = 0; at < rounds.size();) {
    std::size_t last = at;
    if (is_plain(rounds[at]))
      while (last + 1 < rounds.size() && is_plain(rounds[last + 1]) &&
             are_alike(rounds[last], rounds[last + 1]))
        ++last;
    if (fabric_.rounds[rounds[at]].kind == pattern::RoundKind::row) last -= (last - at) % 2;
    if (last < at + 2) last = at;
    rings.push_back({rounds[at], rounds[last]});
    at = last + 1;
  }
  return rings;
}

} // namespace whorl::layout
