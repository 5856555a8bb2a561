#include "fabric/joint.hpp"

#include "fabric/opening.hpp"

#include <algorithm>

namespace whorl::fabric {
namespace {

std::uint32_t part_of(const Fabric& fabric, StitchId stitch) {
  return fabric.rounds[fabric.stitches[stitch].round].part;
}

bool holds(const Fabric& fabric, const Round& round) {
  const auto first = fabric.stitches.begin() + round.first_stitch;
  return std::any_of(first, first + round.count,
                     [](const Stitch& stitch) { return (stitch.flags & holds_part) != 0; });
}

void add_joints(const Fabric& fabric, std::uint32_t round, std::vector<Joint>& joints) {
  const Round& worked = fabric.rounds[round];
  if (!holds(fabric, worked)) return;
  std::uint32_t number = 0;
  for (StitchId stitch = worked.first_stitch; stitch < worked.first_stitch + worked.count; ++stitch) {
    if (has_top(fabric, stitch)) ++number;
    const Legs held = held_legs_of(fabric, stitch);
    if (held.size() == 0) continue;
    const Leg& leg = *held.begin();
    const std::uint32_t part = part_of(fabric, leg.into.of);
    Joint* last = joints.empty() ? nullptr : &joints.back();
    if (last != nullptr && last->round == round && last->held == part && last->last + 1 >= number)
      last->last = number, last->ends = stitch;
    else
      joints.push_back({round, part, number, number, stitch, stitch, false});
    joints.back().flat = joints.back().flat || held.size() > 1;
  }
}

} // namespace

std::vector<Joint> joints_of(const Fabric& fabric) {
  std::vector<Joint> joints;
  for (std::uint32_t round = 0; round < fabric.rounds.size(); ++round) add_joints(fabric, round, joints);
  return joints;
}

} // namespace whorl::fabric
