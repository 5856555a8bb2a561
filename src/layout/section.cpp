#include "layout/section.hpp"

#include <algorithm>

namespace whorl::layout {
namespace {

using fabric::Fabric;
using fabric::StitchId;

bool stands_in_part(const Fabric& fabric, StitchId stitch, std::uint32_t part) {
  return stitch < fabric.stitches.size() && fabric.rounds[fabric.stitches[stitch].round].part == part;
}

bool has_footing(const Fabric& fabric, const fabric::Place& into, std::uint32_t part) {
  if (into.what == fabric::On::ring) return true;
  if (into.what == fabric::On::row_end) return false;
  if (into.what != fabric::On::space) return stands_in_part(fabric, into.of, part);
  return into.of < fabric.arches.size() && stands_in_part(fabric, fabric.arches[into.of].first_chain, part);
}

bool can_stand_as_row(const Fabric& fabric, const fabric::Round& row) {
  for (StitchId stitch = row.first_stitch; stitch < row.first_stitch + row.count; ++stitch)
    for (const fabric::Leg& leg : fabric::legs_of(fabric, stitch))
      if (!has_footing(fabric, leg.into, row.part)) return false;
  return row.worked && row.count > 0 && !row.both_sides;
}

bool begins_flat(fabric::Start start) {
  return start == fabric::Start::chain || start == fabric::Start::second_chain ||
         start == fabric::Start::magic_ring;
}

/// Whether it is a row that can be drawn behind this section, or at the start of the part.
bool is_drawn_row(const Fabric& fabric, const fabric::Round& row, const std::vector<Section>& sections) {
  if (row.kind != pattern::RoundKind::row || !can_stand_as_row(fabric, row)) return false;
  return !sections.empty() || begins_flat(fabric.parts[row.part].start);
}

/// An oval that is turned is not drawn: its sides would change places.
bool is_drawn_round(const Fabric& fabric, const fabric::Round& round) {
  if (round.kind != pattern::RoundKind::round) return false;
  const fabric::Round& first = fabric.rounds[fabric.parts[round.part].first_round];
  return !first.both_sides || !(round.turned || runs_against(round));
}

} // namespace

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
  for (std::uint32_t number = worked.first_round; number < worked.first_round + worked.rounds; ++number) {
    const fabric::Round& round = fabric.rounds[number];
    const bool row = is_drawn_row(fabric, round, sections);
    if (!row && !is_drawn_round(fabric, round)) break;
    if (!round.worked || round.count == 0) continue;
    if (sections.empty() || sections.back().rows != row)
      sections.push_back({{}, row, sections.empty() ? fabric::none : sections.back().rounds.back()});
    sections.back().rounds.push_back(number);
  }
  return sections;
}

} // namespace whorl::layout
