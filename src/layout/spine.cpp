#include "layout/spine.hpp"

#include "layout/items.hpp"

#include <algorithm>
#include <cstdlib>

namespace whorl::layout {
namespace {

using fabric::Fabric;
using fabric::StitchId;

constexpr std::uint32_t least_without_chains = 3;

/// Stitches of a row in one place, counted from its first stitch with a leg.
struct Group {
  fabric::Place into;
  std::uint32_t first = 0, many = 0;
  bool chains = false; ///< within
};

/// All places of a row with what goes into each.
std::vector<Group> groups_in(const Fabric& fabric, std::uint32_t row) {
  std::vector<Group> groups;
  const fabric::Round& worked = fabric.rounds[row];
  std::uint32_t at = 0;
  bool chains = false;
  for (StitchId i = worked.first_stitch; i < worked.first_stitch + worked.count; ++i) {
    const fabric::Legs legs = legs_of_one(fabric, i);
    if (legs.size() == 0) {
      chains = true;
      continue;
    }
    if (groups.empty() || !(groups.back().into == legs.begin()->into))
      groups.push_back({legs.begin()->into, at, 0, false});
    else
      groups.back().chains = groups.back().chains || chains;
    ++groups.back().many, ++at, chains = false;
  }
  return groups;
}

bool is_marked(const Group& group, bool with_chains) {
  return with_chains ? group.chains : group.many >= least_without_chains;
}

bool has_spine(const Fabric& fabric, std::uint32_t row) {
  constexpr int off_middle = 2;
  std::vector<Group> groups = groups_in(fabric, row);
  if (groups.size() < 3) return groups.size() == 1 && is_marked(groups.front(), false);
  const auto stitches = static_cast<int>(groups.back().first + groups.back().many);
  groups.erase(groups.begin());
  groups.pop_back();
  const bool with_chains =
      std::any_of(groups.begin(), groups.end(), [](const Group& group) { return group.chains; });
  const auto marked = [with_chains](const Group& group) { return is_marked(group, with_chains); };
  const auto spine = std::find_if(groups.begin(), groups.end(), marked);
  if (spine == groups.end() || std::find_if(spine + 1, groups.end(), marked) != groups.end()) return false;
  const auto before = static_cast<int>(spine->first);
  return std::abs(before - (stitches - before - static_cast<int>(spine->many))) <= off_middle;
}

} // namespace

bool has_spine(const Fabric& fabric, const std::vector<std::uint32_t>& rows) {
  return rows.size() > 1 && std::all_of(rows.begin() + 1, rows.end(),
                                        [&fabric](std::uint32_t row) { return has_spine(fabric, row); });
}

} // namespace whorl::layout
