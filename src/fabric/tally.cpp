#include "fabric/tally.hpp"

#include "fabric/need.hpp"
#include "pattern/effect.hpp"

#include <algorithm>
#include <optional>
#include <vector>

namespace whorl::fabric {
namespace {

using stitch::KindId;
using stitch::StitchKind;

const Tally* first_tally(const Fabric& fabric, const Round& round) {
  return fabric.tallies.data() + round.first_tally;
}

template <class Is> std::uint32_t sum_of(const Fabric& fabric, const Round& round, Is is) {
  std::uint32_t sum = 0;
  const Tally* first = first_tally(fabric, round);
  for (const Tally* tally = first; tally != first + round.tallies; ++tally)
    if (is(tally->kind)) sum += tally->count;
  return sum;
}

/// Chains between stitches; those that climb are not tallied.
std::uint32_t count_chains(const Fabric& fabric, const Round& round) {
  return sum_of(fabric, round, [&](KindId kind) { return pattern::is_chain(fabric.kinds[kind]); });
}

/// Some count the chains between stitches, or the spaces, with them.
bool counts_with_chains(const Fabric& fabric, const Round& round, std::uint32_t stitches,
                        std::uint32_t stated) {
  return round.spaces > 0 && stitches > 0 &&
         (stitches + count_chains(fabric, round) == stated || stitches + round.spaces == stated);
}

/// Stitches back along chains, those that `is` speaks of; some count them with the round.
template <class Is> std::uint32_t count_apart(const Fabric& fabric, const Round& round, Is is) {
  std::uint32_t apart = 0;
  const Tally* first = first_tally(fabric, round);
  for (const Tally* tally = first; tally != first + round.tallies; ++tally) {
    const std::vector<StitchKind> back = stitch::back_along(fabric.kinds[tally->kind]);
    apart += tally->count * static_cast<std::uint32_t>(std::count_if(back.begin(), back.end(), is));
  }
  return apart;
}

/// Slip stitches that are worked into the round before count where the stated count says so.
std::uint32_t count_stitches(const Fabric& fabric, const Round& round, std::uint32_t stated) {
  const auto counting = [&](KindId kind) { return fabric.kinds[kind].counts; };
  const auto slips = [&](KindId kind) { return is_slip(fabric.kinds[kind]); };
  const auto any = [](KindId) { return true; };
  const std::uint32_t slipped = sum_of(fabric, round, slips);
  const std::uint32_t counted = sum_of(fabric, round, counting);
  if (counted + slipped > 0) return counted == 0 || counted + slipped == stated ? counted + slipped : counted;
  return sum_of(fabric, round, any);
}

bool is_digits(std::string_view text) {
  return !text.empty() && std::all_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
}

/// "6 popcorns" speaks of "dc5pc" too.
bool is_gathered(std::string_view name, std::string_view family) {
  const std::size_t digits = name.find_first_of("0123456789");
  if (digits == 0 || digits == std::string_view::npos || name.size() <= digits + family.size()) return false;
  const std::size_t end = name.size() - family.size();
  return name.substr(end) == family && is_digits(name.substr(digits, end - digits));
}

bool is_plain_post(const StitchKind& kind) {
  return kind.counts && !kind.own && kind.takes == 1 && kind.makes == 1 && kind.close == stitch::Close::none;
}

/// The chains of its run, down from the one that counts.
int height_of_chain(const Fabric& fabric, StitchId last) {
  int height = 0;
  for (StitchId id = last + 1; id > 0 && (fabric.stitches[id - 1].flags & starts_chain); --id) ++height;
  return height;
}

/// What a chain that counts stands for: the first plain stitch of its round, else the one of its height.
KindId stood_for(const Fabric& fabric, const Round& round) {
  for (std::size_t i = round.first_stitch; i < fabric.stitches.size(); ++i)
    if (is_plain_post(fabric.kinds[fabric.stitches[i].kind])) return fabric.stitches[i].kind;
  const int height = height_of_chain(fabric, round.counting_chain);
  for (std::size_t kind = 0; kind < fabric.kinds.size(); ++kind)
    if (is_plain_post(fabric.kinds[kind]) && stitch::shape_of(fabric.kinds[kind]).height == height)
      return static_cast<KindId>(kind);
  return fabric.stitches[round.counting_chain].kind;
}

/// The groups of a round: of one name, and stitches that share a place without one.
struct Groups {
  std::uint32_t named = 0, unnamed = 0;
};

/// Counts as it goes from stitch to stitch; chains between those of a group are none of its stitches.
struct GroupCount {
  Groups groups = {};
  std::optional<Place> last = std::nullopt;
  bool inside = false; ///< of stitches that share a place

  void meet(const Legs& legs) {
    if (legs.size() == 0) return;
    const bool shares = last && *last == legs.begin()->into;
    groups.unnamed += shares && !inside ? 1 : 0;
    inside = shares;
    last = legs.begin()->into;
  }

  void pass(bool is_meant) {
    groups.named += is_meant ? 1 : 0;
    last.reset();
    inside = false;
  }
};

Groups groups_of(const Fabric& fabric, const Round& round, const std::string& name) {
  GroupCount count;
  const auto before = [](const Group& group, StitchId first) { return group.first < first; };
  auto group = std::lower_bound(fabric.groups.begin(), fabric.groups.end(), round.first_stitch, before);
  for (StitchId id = round.first_stitch; id < round.first_stitch + round.count;) {
    if (group == fabric.groups.end() || group->first != id) {
      count.meet(legs_of(fabric, id++));
      continue;
    }
    count.pass(group->name == name);
    id += std::max<std::uint32_t>(group->count, 1);
    ++group;
  }
  return count.groups;
}

/// Whether a round begins with chains, which may stand for a group's first stitches.
bool begins_with_chain(const Fabric& fabric, const Round& round) {
  return round.count > 0 && pattern::is_chain(fabric.kinds[fabric.stitches[round.first_stitch].kind]);
}

/// Groups of this name (a number in Fabric::group_names, from 1) in the round. "Ch 4, dc in same st" is one
/// of them, and so may be stitches in one place that are written out: where these explain the number that is
/// stated, it is taken.
std::uint32_t count_groups(const Fabric& fabric, const Round& round, const pattern::Stated& stated) {
  if (!round.worked) return stated.count; // its stitches are not here
  if (stated.kind == 0 || stated.kind > fabric.group_names.size()) return 0;
  const Groups groups = groups_of(fabric, round, fabric.group_names[stated.kind - 1U]);
  const std::uint32_t most = groups.named + groups.unnamed +
                             (begins_with_chain(fabric, round) || round.counting_chain != none ? 1 : 0);
  return groups.named <= stated.count && stated.count <= most ? stated.count : groups.named;
}

} // namespace

/// "18 sc" speaks of decreases too: "sc2tog" is a single crochet in the count, and so is an invisible
/// decrease.
bool is_of(const StitchKind& kind, const StitchKind& whole) {
  const std::string_view base = whole.name;
  if (kind.name == base || (kind.own && kind.moves == whole.moves)) return true;
  if (base == "sc" && kind.name == "invdec") return true;
  const std::string_view name = kind.name;
  if (is_gathered(name, base)) return true;
  if (name.size() < base.size() + 4 || name.substr(0, base.size()) != base) return false;
  const std::string_view rest = name.substr(base.size());
  return rest.substr(rest.size() - 3) == "tog" && is_digits(rest.substr(0, rest.size() - 3));
}

void tally_round(Fabric& fabric) {
  Round& round = fabric.rounds.back();
  std::vector<std::uint32_t> tallies(fabric.kinds.size(), 0);
  for (std::size_t i = round.first_stitch; i < fabric.stitches.size(); ++i) {
    const Stitch& stitch = fabric.stitches[i];
    const bool moved_start = !(stitch.flags & counts) && fabric.kinds[stitch.kind].counts;
    if (!(stitch.flags & (joins | starts_chain)) && !moved_start) ++tallies[stitch.kind];
  }
  if (round.counting_chain != none) ++tallies[stood_for(fabric, round)];
  round.first_tally = static_cast<std::uint32_t>(fabric.tallies.size());
  for (std::size_t kind = 0; kind < tallies.size(); ++kind)
    if (tallies[kind] > 0) fabric.tallies.push_back(Tally{static_cast<KindId>(kind), tallies[kind]});
  round.tallies = static_cast<std::uint32_t>(fabric.tallies.size()) - round.first_tally;
}

namespace {

/// Stitches of a kind that stand in no group of the round.
std::uint32_t count_outside_groups(const Fabric& fabric, const Round& round, const StitchKind& kind) {
  const auto before = [](const Group& group, StitchId first) { return group.first < first; };
  auto group = std::lower_bound(fabric.groups.begin(), fabric.groups.end(), round.first_stitch, before);
  std::uint32_t count = 0;
  for (StitchId id = round.first_stitch; id < round.first_stitch + round.count; ++id) {
    while (group != fabric.groups.end() && group->first + group->count <= id) ++group;
    const bool inside = group != fabric.groups.end() && group->first <= id;
    const bool climbs = (fabric.stitches[id].flags & (joins | starts_chain)) != 0;
    count += !inside && !climbs && is_of(fabric.kinds[fabric.stitches[id].kind], kind) ? 1 : 0;
  }
  return count;
}

/// "5 V-sts, 2 dc": those beside the groups, with or without a chain that stands for one.
bool counts_beside_groups(const Fabric& fabric, const Round& round, const pattern::Stated& stated) {
  const std::uint32_t outside = count_outside_groups(fabric, round, fabric.kinds[stated.kind]);
  const std::uint32_t chain = round.counting_chain != none ? 1 : 0;
  return outside <= stated.count && stated.count <= outside + chain;
}

/// Of one kind, with those back along chains where the number says so.
std::uint32_t count_kind(const Fabric& fabric, const Round& round, const pattern::Stated& stated) {
  const auto is = [&](const StitchKind& kind) { return is_of(kind, fabric.kinds[stated.kind]); };
  const std::uint32_t count = sum_of(fabric, round, [&](KindId kind) { return is(fabric.kinds[kind]); });
  return count + count_apart(fabric, round, is) == stated.count ? stated.count : count;
}

} // namespace

std::uint32_t counted_as(const Fabric& fabric, const Round& round, const pattern::Stated& stated) {
  using pattern::Unit;
  switch (stated.unit) {
  case Unit::spaces:
    return round.spaces;
  case Unit::chains:
    return count_chains(fabric, round);
  case Unit::kind:
    if (stated.kind < fabric.kinds.size() && counts_beside_groups(fabric, round, stated)) return stated.count;
    if (stated.kind < fabric.kinds.size()) return count_kind(fabric, round, stated);
    break;
  case Unit::group:
    return count_groups(fabric, round, stated);
  case Unit::any:
  case Unit::stitches:
    break;
  }
  const std::uint32_t count = count_stitches(fabric, round, stated.count);
  const std::uint32_t apart = count_apart(fabric, round, [](const StitchKind&) { return true; });
  if (apart > 0 && count + apart == stated.count) return stated.count;
  return counts_with_chains(fabric, round, count, stated.count) ? stated.count : count;
}

std::uint32_t sum_of_kinds(const std::vector<pattern::Stated>& stated) {
  const auto is_kind = [](const pattern::Stated& one) { return one.unit == pattern::Unit::kind; };
  if (std::count_if(stated.begin(), stated.end(), is_kind) < 2 || !is_kind(stated.front())) return 0;
  std::uint32_t sum = 0;
  for (const pattern::Stated& one : stated)
    if (is_kind(one)) sum += one.count;
  return sum;
}

bool counts_groups(const Fabric& fabric, const Round& round, const std::vector<pattern::Stated>& stated) {
  using pattern::Unit;
  if (stated.size() < 2) return false;
  bool groups = false;
  for (const pattern::Stated& one : stated) {
    if (one.unit == Unit::any || one.unit == Unit::stitches) return false;
    if (counted_as(fabric, round, one) != one.count) return false;
    groups = groups || one.unit == Unit::group;
  }
  return groups;
}

bool is_miscounted(const Round& round) { return round.stated >= 0 && round.stated != round.counted; }

} // namespace whorl::fabric
