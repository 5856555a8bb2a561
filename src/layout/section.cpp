#include "layout/section.hpp"

#include "layout/owner.hpp"

#include <algorithm>

namespace whorl::layout {
namespace {

using fabric::Fabric;
using fabric::StitchId;

bool stands_in_part(const Fabric& fabric, StitchId stitch, std::uint32_t part) {
  return stitch < fabric.stitches.size() && fabric.rounds[fabric.stitches[stitch].round].part == part;
}

/// `owner`: the round of another part that its part is begun in.
bool has_footing(const Fabric& fabric, const fabric::Place& into, std::uint32_t part, std::uint32_t owner) {
  if (into.what == fabric::On::ring) return true;
  if (into.what == fabric::On::row_end) return false;
  if ((into.what == fabric::On::top || into.what == fabric::On::chain_side) &&
      into.of < fabric.stitches.size() && fabric.stitches[into.of].round == owner)
    return true;
  if (into.what != fabric::On::space) return stands_in_part(fabric, into.of, part);
  return into.of < fabric.arches.size() && stands_in_part(fabric, fabric.arches[into.of].first_chain, part);
}

bool can_stand_as_row(const Fabric& fabric, const fabric::Round& row, std::uint32_t owner) {
  for (StitchId stitch = row.first_stitch; stitch < row.first_stitch + row.count; ++stitch)
    for (const fabric::Leg& leg : fabric::own_legs_of(fabric, stitch))
      if (!has_footing(fabric, leg.into, row.part, owner)) return false;
  return row.worked && row.count > 0 && !row.both_sides;
}

bool begins_flat(const Fabric& fabric, const fabric::Part& part) {
  return part.start == fabric::Start::chain || part.start == fabric::Start::second_chain ||
         part.start == fabric::Start::magic_ring || goes_into_chain_ring(fabric, part);
}

/// Whether it is a row that can be drawn behind this section, or at the start of the part.
bool is_drawn_row(const Fabric& fabric, const fabric::Round& row, const std::vector<Section>& sections,
                  std::uint32_t owner) {
  if (row.kind != pattern::RoundKind::row || !can_stand_as_row(fabric, row, owner)) return false;
  return !sections.empty() || owner != fabric::none || begins_flat(fabric, fabric.parts[row.part]);
}

/// The round of another part in whose loops a part is begun; none where it is begun elsewhere.
std::uint32_t round_begun_in(const Fabric& fabric, std::uint32_t part) {
  const std::optional<Owner> owner = owner_of(fabric, part);
  return owner ? owner->round : fabric::none;
}

/// An oval that is turned is not drawn: its sides would change places.
bool is_drawn_round(const Fabric& fabric, const fabric::Round& round) {
  if (round.kind != pattern::RoundKind::round) return false;
  const fabric::Round& first = fabric.rounds[fabric.parts[round.part].first_round];
  return !first.both_sides || !(round.turned || runs_against(round));
}

/// Whether a round is worked into nothing but that before it, and itself.
bool stands_on(const Fabric& fabric, std::uint32_t number, std::uint32_t before) {
  const fabric::Round& round = fabric.rounds[number];
  for (StitchId stitch = round.first_stitch; stitch < round.first_stitch + round.count; ++stitch)
    for (const fabric::Leg& leg : fabric::own_legs_of(fabric, stitch)) {
      const bool space = leg.into.what == fabric::On::space;
      if (leg.into.what == fabric::On::ring || leg.into.what == fabric::On::row_end) return false;
      const StitchId of =
          space && leg.into.of < fabric.arches.size() ? fabric.arches[leg.into.of].first_chain : leg.into.of;
      if (of >= fabric.stitches.size()) return false;
      if (fabric.stitches[of].round != before && fabric.stitches[of].round != number) return false;
    }
  return true;
}

bool is_edging(const Fabric& fabric, std::uint32_t number, const std::vector<Section>& sections) {
  const fabric::Round& round = fabric.rounds[number];
  if (sections.empty() || !sections.back().rows || !round.worked || round.count == 0) return false;
  if (goes_along_rows(fabric, number)) return sections.back().edging.empty();
  return !sections.back().edging.empty() && stands_on(fabric, number, sections.back().edging.back());
}

/// The other part along whose rows a part's first round goes, if that has rows and no more.
std::uint32_t owner_of_edges(const Fabric& fabric, std::uint32_t number) {
  const fabric::Round& round = fabric.rounds[number];
  for (StitchId id = round.first_stitch; id < round.first_stitch + round.count; ++id)
    for (const fabric::Leg& leg : fabric::legs_of(fabric, id)) {
      if (leg.into.what != fabric::On::row_end) continue;
      const std::uint32_t part = fabric.rounds[leg.into.of].part;
      return part < round.part ? part : fabric::none;
    }
  return fabric::none;
}

/// What a section behind others goes on from.
std::uint32_t last_of(const std::vector<Section>& sections) {
  if (sections.empty()) return fabric::none;
  return sections.back().edging.empty() ? sections.back().rounds.back() : sections.back().edging.back();
}

} // namespace

bool goes_into_chain_ring(const Fabric& fabric, const fabric::Part& part) {
  if (part.start != fabric::Start::chain_ring || part.rounds == 0) return false;
  const fabric::Round& round = fabric.rounds[part.first_round];
  for (StitchId stitch = round.first_stitch; stitch < round.first_stitch + round.count; ++stitch)
    for (const fabric::Leg& leg : fabric::legs_of(fabric, stitch))
      if (leg.into.what == fabric::On::ring) return true;
  return false;
}

bool goes_along_rows(const Fabric& fabric, std::uint32_t round) {
  const fabric::Round& edging = fabric.rounds[round];
  for (StitchId id = edging.first_stitch; id < edging.first_stitch + edging.count; ++id)
    for (const fabric::Leg& leg : fabric::legs_of(fabric, id))
      if (leg.into.what == fabric::On::row_end) return true;
  return false;
}

bool runs_against(const fabric::Round& round) {
  return round.kind == pattern::RoundKind::round && round.side == fabric::Side::wrong;
}

bool is_turned(const Figure& figure) {
  return std::any_of(figure.rings.begin(), figure.rings.end(),
                     [](const Ring& ring) { return ring.against && !ring.owner; });
}

std::vector<std::uint32_t> joined_parts(const Fabric& fabric, std::uint32_t number) {
  std::vector<std::uint32_t> parts;
  const fabric::Round& round = fabric.rounds[number];
  for (std::uint32_t i = 0; round.joined_open > 0 && i < round.count; ++i)
    for (const fabric::Leg& leg : fabric::legs_of(fabric, round.first_stitch + i)) {
      if (leg.into.what != fabric::On::top || leg.into.of >= fabric.stitches.size()) continue;
      const std::uint32_t part = fabric.rounds[fabric.stitches[leg.into.of].round].part;
      if (part != round.part && std::find(parts.begin(), parts.end(), part) == parts.end())
        parts.push_back(part);
    }
  return parts;
}

std::vector<Section> sections_of(const Fabric& fabric, std::uint32_t part) {
  const fabric::Part& worked = fabric.parts[part];
  std::vector<Section> sections;
  const std::uint32_t begun_in = round_begun_in(fabric, part);
  for (std::uint32_t number = worked.first_round; number < worked.first_round + worked.rounds; ++number) {
    const fabric::Round& round = fabric.rounds[number];
    if (is_edging(fabric, number, sections)) {
      sections.back().edging.push_back(number);
      continue;
    }
    const std::uint32_t owner = sections.empty() ? owner_of_edges(fabric, number) : fabric::none;
    if (owner != fabric::none) {
      sections.push_back({{}, true, {number}, owner, fabric::none});
      continue;
    }
    const bool row = is_drawn_row(fabric, round, sections, begun_in);
    if (!row && !is_drawn_round(fabric, round)) break;
    if (!round.worked || round.count == 0) continue;
    if (sections.empty() || sections.back().rows != row || !sections.back().edging.empty())
      sections.push_back({{}, row, {}, fabric::none, sections.empty() && row ? begun_in : last_of(sections)});
    sections.back().rounds.push_back(number);
  }
  return sections;
}

} // namespace whorl::layout
