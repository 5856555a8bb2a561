#include "layout/base.hpp"

#include "layout/items.hpp"

#include <algorithm>

namespace whorl::layout {
namespace {

using fabric::Fabric;
using fabric::Legs;
using fabric::StitchId;

constexpr std::uint32_t deepest = 9; ///< rounds that a stitch is looked for to reach down

bool goes_round_posts(const Legs& legs) {
  return legs.size() > 0 && std::all_of(legs.begin(), legs.end(), [&](const fabric::Leg& leg) {
           return leg.into.what == fabric::On::post && leg.into.loops == legs.begin()->into.loops;
         });
}

bool is_top_or_post(const fabric::Place& place) {
  return place.what == fabric::On::top || place.what == fabric::On::post;
}

/// What is a front post as it is worked, with the wrong side facing, is a back post on the right side.
Base post_seen(const Legs& legs, fabric::Side facing) {
  const bool from_front = legs.begin()->into.loops == stitch::front;
  return from_front == (facing == fabric::Side::right) ? Base::front_post : Base::back_post;
}

/// A stitch that is worked into, and by which loops.
struct Far {
  StitchId of = fabric::none;
  std::uint8_t loops = 0;
};

bool comes_before(const Far& one, const Far& other) { return one.of < other.of; }

/// What an item's first leg goes into, where that belongs to an earlier round of its part than the one
/// before; else none.
Far far_base(const Fabric& fabric, std::uint32_t round, const Legs& legs) {
  if (legs.size() == 0 || legs.begin()->into.what != fabric::On::top) return {};
  const StitchId of = legs.begin()->into.of;
  if (of >= fabric.stitches.size()) return {};
  const std::uint32_t base = fabric.stitches[of].round;
  const bool far = base + 1 < round && round - base <= deepest;
  if (!far || fabric.rounds[base].part != fabric.rounds[round].part) return {};
  return {of, legs.begin()->into.loops};
}

bool joins(const Fabric& fabric, StitchId stitch) {
  return (fabric.stitches[stitch].flags & fabric::joins) != 0;
}

/// Of these stitches, sorted, the ones that a round between theirs and this works into: what is worked into
/// them again goes over those. Not where that round took the other loop, behind which this one is worked, nor
/// where it was only joined there.
std::vector<StitchId> worked_between(const Fabric& fabric, std::uint32_t round,
                                     const std::vector<Far>& bases) {
  std::vector<StitchId> found;
  for (std::uint32_t r = fabric.stitches[bases.front().of].round + 1; r < round; ++r)
    for (StitchId i = fabric.rounds[r].first_stitch;
         i < fabric.rounds[r].first_stitch + fabric.rounds[r].count; ++i)
      for (const fabric::Leg& leg : fabric::legs_of(fabric, i)) {
        if (!is_top_or_post(leg.into) || joins(fabric, i)) continue;
        const auto base = std::lower_bound(bases.begin(), bases.end(), Far{leg.into.of, 0}, comes_before);
        if (base == bases.end() || base->of != leg.into.of) continue;
        if (leg.into.what == fabric::On::post || (base->loops & leg.into.loops) != 0)
          found.push_back(base->of);
      }
  std::sort(found.begin(), found.end());
  return found;
}

} // namespace

void set_bases(const Fabric& fabric, std::uint32_t round, std::vector<Item>& items) {
  std::vector<Far> far_bases;
  for (Item& item : items) {
    const Legs legs = legs_of(fabric, item);
    if (goes_round_posts(legs)) item.key.base = post_seen(legs, fabric.rounds[round].side);
    if (const Far far = far_base(fabric, round, legs); far.of != fabric::none) far_bases.push_back(far);
  }
  if (far_bases.empty()) return;
  std::sort(far_bases.begin(), far_bases.end(), comes_before);
  const std::vector<StitchId> bases = worked_between(fabric, round, far_bases);
  for (Item& item : items) {
    const StitchId far = far_base(fabric, round, legs_of(fabric, item)).of;
    if (far == fabric::none || !std::binary_search(bases.begin(), bases.end(), far)) continue;
    item.key.base = Base::below;
    item.key.loops = stitch::both;
    item.key.down = static_cast<std::uint8_t>(round - fabric.stitches[far].round - 1);
  }
}

} // namespace whorl::layout
