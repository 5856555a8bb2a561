#include "layout/owner.hpp"

#include "fabric/joint.hpp"
#include "layout/items.hpp"

#include <algorithm>

namespace whorl::layout {
namespace {

using fabric::Fabric;
using fabric::StitchId;

/// The stitches and chains of earlier parts that a part's first round is worked into, in the order of work.
std::vector<StitchId> bases_of(const Fabric& fabric, std::uint32_t part) {
  const fabric::Part& worked = fabric.parts[part];
  std::vector<StitchId> bases;
  if (worked.start != fabric::Start::free_loops || worked.rounds == 0) return bases;
  const fabric::Round& first = fabric.rounds[worked.first_round];
  for (StitchId stitch = first.first_stitch; stitch < first.first_stitch + first.count; ++stitch)
    for (const fabric::Leg& leg : fabric::legs_of(fabric, stitch)) {
      const bool in_loops = leg.into.what == fabric::On::top || leg.into.what == fabric::On::chain_side;
      const bool earlier = in_loops && leg.into.of < first.first_stitch;
      if (earlier && (bases.empty() || bases.back() != leg.into.of)) bases.push_back(leg.into.of);
    }
  return bases;
}

/// Whether work meets the stitches of a round from the last to the first: more steps lead back than on.
bool runs_against(const std::vector<StitchId>& bases) {
  int on = 0;
  for (std::size_t i = 1; i < bases.size(); ++i) on += bases[i] > bases[i - 1] ? 1 : -1;
  return on < 0;
}

std::vector<Kept> kept_for(std::vector<StitchId> bases, const std::string& letters) {
  std::sort(bases.begin(), bases.end());
  bases.erase(std::unique(bases.begin(), bases.end()), bases.end());
  std::vector<Kept> kept;
  for (const StitchId base : bases) kept.push_back({base, letters, false});
  return kept;
}

bool holds(const Item& item, StitchId stitch) {
  return item.first <= stitch && stitch < item.first + item.count;
}

std::size_t item_with(const std::vector<Item>& items, StitchId stitch) {
  std::size_t at = 0;
  while (at < items.size() && !holds(items[at], stitch)) ++at;
  return at;
}

/// The items from the first loop used to the one that lies furthest from it, in the order in which the part
/// meets them.
std::vector<Item> items_met(const Fabric& fabric, const Owner& owner, const std::vector<StitchId>& bases) {
  std::vector<Item> all = items_of(fabric, owner.round, true);
  if (owner.against) std::reverse(all.begin(), all.end());
  const std::size_t first = item_with(all, bases.front());
  if (first < all.size())
    std::rotate(all.begin(), all.begin() + static_cast<std::ptrdiff_t>(first), all.end());
  std::size_t used = 0;
  for (const StitchId base : bases) used = std::max(used, std::min(all.size(), item_with(all, base) + 1));
  all.resize(used);
  return all;
}

} // namespace

std::string part_letter(std::uint32_t part) {
  std::string letters(1, static_cast<char>('A' + part % 26));
  for (part /= 26; part > 0; part /= 26) {
    --part;
    letters.insert(letters.begin(), static_cast<char>('A' + part % 26));
  }
  return letters;
}

namespace {

/// Stitches that go through two parts, each with the other part's letter, and what they go through there with
/// theirs.
void add_joined(const Fabric& fabric, std::vector<Kept>& all) {
  for (const fabric::Joint& joint : fabric::joints_of(fabric)) {
    const std::string own = part_letter(fabric.rounds[joint.round].part), other = part_letter(joint.held);
    for (StitchId stitch = joint.begins; stitch <= joint.ends; ++stitch) {
      const fabric::Legs held = fabric::held_legs_of(fabric, stitch);
      const bool first = stitch == joint.begins;
      for (const fabric::Leg& leg : held) all.push_back({leg.into.of, own, true, first});
      if (held.size() > 0) all.push_back({stitch, other, true, first});
    }
  }
}

/// One for both; a letter stands once.
void merge(const Kept& one, Kept& with) {
  if (with.letters.find(one.letters) == std::string::npos) with.letters += one.letters;
  with.joined = with.joined && one.joined;
  with.first = with.first || one.first;
}

} // namespace

std::vector<Kept> kept_loops(const Fabric& fabric) {
  std::vector<Kept> all;
  for (std::uint32_t part = 0; part < fabric.parts.size(); ++part)
    for (const Kept& kept : kept_for(bases_of(fabric, part), part_letter(part))) all.push_back(kept);
  add_joined(fabric, all);
  std::stable_sort(all.begin(), all.end(), [](const Kept& a, const Kept& b) { return a.stitch < b.stitch; });
  std::vector<Kept> merged;
  for (const Kept& kept : all)
    if (!merged.empty() && merged.back().stitch == kept.stitch)
      merge(kept, merged.back());
    else
      merged.push_back(kept);
  return merged;
}

std::vector<Kept> kept_of(const Fabric& fabric, const fabric::Part& part, const std::vector<Kept>& all) {
  std::vector<Kept> kept;
  if (part.rounds == 0) return kept;
  const fabric::Round& last = fabric.rounds[part.first_round + part.rounds - 1];
  const auto starts = [](const Kept& one, fabric::StitchId stitch) { return one.stitch < stitch; };
  const std::uint32_t first = part.foundation != fabric::none ? part.foundation : part.first_round;
  auto at = std::lower_bound(all.begin(), all.end(), fabric.rounds[first].first_stitch, starts);
  for (; at != all.end() && at->stitch < last.first_stitch + last.count; ++at) kept.push_back(*at);
  return kept;
}

std::optional<Owner> owner_of(const Fabric& fabric, std::uint32_t part) {
  std::vector<StitchId> bases = bases_of(fabric, part);
  if (bases.empty()) return std::nullopt;
  Owner owner;
  owner.round = fabric.stitches[bases.front()].round;
  bases.erase(std::remove_if(bases.begin(), bases.end(),
                             [&](StitchId base) { return fabric.stitches[base].round != owner.round; }),
              bases.end());
  owner.against = runs_against(bases);
  owner.items = items_met(fabric, owner, bases);
  owner.kept = kept_for(std::move(bases), part_letter(part));
  return owner;
}

} // namespace whorl::layout
