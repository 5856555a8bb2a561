#include "drawing/left_free.hpp"

namespace whorl::drawing {
namespace {

using fabric::Fabric;
using fabric::StitchId;

/// Per stitch: loops that its own part took.
using Taken = std::vector<std::uint8_t>;

std::uint32_t part_of(const Fabric& fabric, StitchId stitch) {
  return fabric.rounds[fabric.stitches[stitch].round].part;
}

/// Per kind: whether nobody gets at what it leaves free.
std::vector<bool> kinds_that_close(const Fabric& fabric) {
  std::vector<bool> closes;
  for (const stitch::StitchKind& kind : fabric.kinds)
    closes.push_back(stitch::shape_of(kind).front_loops_only);
  return closes;
}

Taken taken_by_own_part(const Fabric& fabric, std::vector<LeftFree>& left) {
  const std::vector<bool> closes = kinds_that_close(fabric);
  Taken taken(fabric.stitches.size(), stitch::no_loop);
  for (StitchId worker = 0; worker < fabric.stitches.size(); ++worker)
    for (const fabric::Leg& leg : fabric::own_legs_of(fabric, worker)) {
      const StitchId into = leg.into.of;
      if (leg.into.what != fabric::On::top || into >= taken.size()) continue;
      if (part_of(fabric, worker) != part_of(fabric, into))
        left[fabric.stitches[into].round].parts.insert(part_of(fabric, worker));
      else
        taken[into] |=
            closes[fabric.stitches[worker].kind] ? static_cast<std::uint8_t>(stitch::both) : leg.into.loops;
    }
  return taken;
}

} // namespace

std::vector<LeftFree> left_free(const Fabric& fabric) {
  std::vector<LeftFree> left(fabric.rounds.size());
  const Taken taken = taken_by_own_part(fabric, left);
  for (StitchId stitch = 0; stitch < taken.size(); ++stitch) {
    LeftFree& round = left[fabric.stitches[stitch].round];
    if ((taken[stitch] & stitch::both) == stitch::back) ++round.front;
    if ((taken[stitch] & stitch::both) == stitch::front) ++round.back;
  }
  return left;
}

} // namespace whorl::drawing
