#include "layout/plan.hpp"

#include <algorithm>

namespace whorl::layout {
namespace {

using fabric::Fabric;

Ring ring_of(std::uint32_t round) {
  Ring ring;
  ring.round = ring.last_round = round;
  return ring;
}

Centre centre_of(const Fabric& fabric, const fabric::Part& part) {
  if (part.start == fabric::Start::magic_ring) return Centre::magic_ring;
  if (part.start == fabric::Start::second_chain) return Centre::second_chain;
  return goes_into_chain_ring(fabric, part) ? Centre::chain_ring : Centre::nothing;
}

/// A leaf holds rows of so many stitches; a sector is as wide as twice its reach.
bool finds_room(const Fabric& fabric, const Section& section, const Leaf& leaf) {
  return leaf.wide == 0 || 2 * reach_of_rows(fabric, section) <= leaf.wide;
}

} // namespace

std::optional<Plan> plan_sector(const Fabric& fabric, std::uint32_t part, const Section& section,
                                const Folding& folding, const Page& page) {
  const std::optional<Sector> sector = sector_of(fabric, part, section);
  const Places places = wanted_places(fabric, section.rounds, page.wanted);
  if (!sector || places.empty() || places.first > 0 || !finds_room(fabric, section, page.leaf))
    return std::nullopt;
  const fabric::Part& worked = fabric.parts[part];
  if (!kept_of(fabric, worked, folding.kept_loops()).empty()) return std::nullopt;
  Plan plan;
  plan.part = part;
  plan.sector = *sector;
  plan.centre = centre_of(fabric, worked);
  if (begins_in_first_chain(fabric, worked)) {
    plan.rings.push_back(ring_of(worked.foundation));
    plan.rings.back().chain = true;
  }
  for (std::size_t i = places.first; i <= places.last; ++i) {
    Ring ring = ring_of(section.rounds[i]);
    ring.against = fabric.rounds[section.rounds[i]].side == fabric::Side::wrong;
    ring.ink = static_cast<std::uint8_t>((i - places.first) % 2);
    plan.rings.push_back(ring);
  }
  return plan;
}

} // namespace whorl::layout
