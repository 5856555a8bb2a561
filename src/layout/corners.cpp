#include "layout/corners.hpp"

#include <algorithm>
#include <optional>

namespace whorl::layout {
namespace {

using fabric::Fabric;
using fabric::StitchId;

constexpr std::uint32_t least_crowd = 3;
constexpr std::size_t least_corners = 3, most_corners = 6;

/// The one place that a stitch goes into.
std::optional<fabric::Place> place_of(const Fabric& fabric, StitchId stitch) {
  const fabric::Legs legs = legs_of_one(fabric, stitch);
  const bool joins = (fabric.stitches[stitch].flags & fabric::joins) != 0;
  return legs.size() == 1 && !joins ? std::optional(legs.begin()->into) : std::nullopt;
}

bool may_be_crowded(const fabric::Place& place) {
  return is_stitch(place) || place.what == fabric::On::space;
}

} // namespace

std::vector<Crowd> crowds_of(const Fabric& fabric, std::uint32_t round) {
  std::vector<Crowd> crowds;
  const StitchId end = fabric.rounds[round].first_stitch + fabric.rounds[round].count;
  for (StitchId first = fabric.rounds[round].first_stitch; first < end;) {
    const std::optional<fabric::Place> place = place_of(fabric, first);
    StitchId behind = first + 1;
    while (place && behind < end && place_of(fabric, behind) == place) ++behind;
    const std::uint32_t many = behind - first;
    if (place && may_be_crowded(*place) && many >= least_crowd && many % 2 == 1)
      crowds.push_back({*place, first + many / 2});
    first = behind;
  }
  return crowds;
}

bool has_solid_corners(const Fabric& fabric, std::uint32_t round, std::uint32_t next) {
  const std::vector<Crowd> inner = crowds_of(fabric, round), outer = crowds_of(fabric, next);
  if (inner.size() < least_corners || inner.size() > most_corners || inner.size() != outer.size())
    return false;
  return std::all_of(outer.begin(), outer.end(), [&inner](const Crowd& corner) {
    return is_stitch(corner.into) && std::any_of(inner.begin(), inner.end(), [&corner](const Crowd& beneath) {
             return beneath.middle == corner.into.of;
           });
  });
}

bool has_solid_corners(const Fabric& fabric, const std::vector<Ring>& rings) {
  for (std::size_t i = 1; i < rings.size(); ++i)
    if (has_solid_corners(fabric, rings[i - 1].round, rings[i].round)) return true;
  return false;
}

} // namespace whorl::layout
