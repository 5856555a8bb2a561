#include "layout/sector.hpp"

#include "layout/items.hpp"
#include "layout/spine.hpp"
#include "layout/width.hpp"

#include <algorithm>
#include <vector>

namespace whorl::layout {
namespace {

using fabric::Fabric;
using fabric::StitchId;

// In hundredths of a stitch.
constexpr std::uint32_t low_row = 60, chain_high = 65, under_row = 45;
constexpr std::uint64_t slot_in_round = 115;

/// Of a row with what lies under it.
std::uint32_t height_of(const Fabric& fabric, std::uint32_t row) {
  int chains = 0;
  const fabric::Round& worked = fabric.rounds[row];
  for (StitchId i = worked.first_stitch; i < worked.first_stitch + worked.count; ++i)
    chains = std::max(chains, stitch::shape_of(fabric.kinds[fabric.stitches[i].kind]).height);
  return chains == 0 ? low_row : under_row + chain_high * static_cast<std::uint32_t>(chains);
}

std::uint32_t heights(const Fabric& fabric, const Section& section) {
  std::uint32_t sum = 0;
  for (const std::uint32_t row : section.rounds) sum += height_of(fabric, row);
  return sum;
}

/// How wide the last row is, in thousandths of a round that lies flat at its height.
std::uint64_t share_of_round(const Fabric& fabric, const Section& section) {
  constexpr std::uint64_t turn = 6283;
  const std::uint64_t wide = stitches_wide(widths_of(fabric, {section.rounds.back()}).front());
  return wide * slot_in_round * 1000 * 1000 / (turn * heights(fabric, section));
}

bool ever_narrower(const Fabric& fabric, const Section& section) {
  const std::vector<Width> widths = widths_of(fabric, section.rounds);
  for (std::size_t i = 1; i < widths.size(); ++i)
    if (is_narrower(widths[i], widths[i - 1])) return true;
  return false;
}

/// The places that a row's stitches go into, one after another.
std::vector<fabric::Place> places_of(const Fabric& fabric, std::uint32_t row) {
  std::vector<fabric::Place> places;
  const fabric::Round& worked = fabric.rounds[row];
  for (StitchId i = worked.first_stitch; i < worked.first_stitch + worked.count; ++i)
    for (const fabric::Leg& leg : legs_of_one(fabric, i)) places.push_back(leg.into);
  return places;
}

/// Several stitches in one place that is neither the first nor the last of its row.
bool grows_inside(const Fabric& fabric, std::uint32_t row) {
  const std::vector<fabric::Place> places = places_of(fabric, row);
  for (std::size_t i = 1; i < places.size(); ++i)
    if (places[i] == places[i - 1] && !(places[i] == places.front()) && !(places[i] == places.back()))
      return true;
  return false;
}

/// Whether most rows that are wider than the one before them grow inside.
bool grow_inside(const Fabric& fabric, const Section& section) {
  std::size_t grow = 0, inside = 0;
  for (std::size_t i = 1; i < section.rounds.size(); ++i) {
    if (fabric.rounds[section.rounds[i]].makes <= fabric.rounds[section.rounds[i - 1]].makes) continue;
    ++grow;
    if (grows_inside(fabric, section.rounds[i])) ++inside;
  }
  return 2 * inside >= grow;
}

/// Whether more rows than not have several stitches in their first place or their last.
bool grow_at_ends(const Fabric& fabric, const Section& section) {
  const auto grows = [&fabric](std::uint32_t row) {
    const std::vector<fabric::Place> places = places_of(fabric, row);
    const std::size_t many = places.size();
    return many > 1 && (places[0] == places[1] || places[many - 1] == places[many - 2]);
  };
  const auto many = std::count_if(section.rounds.begin() + 1, section.rounds.end(), grows);
  return 2 * static_cast<std::size_t>(many) >= section.rounds.size();
}

bool begins_small(const Fabric& fabric, const fabric::Part& part) {
  return part.start == fabric::Start::magic_ring || part.start == fabric::Start::second_chain ||
         goes_into_chain_ring(fabric, part) || begins_in_first_chain(fabric, part);
}

/// Nothing that asks for more than a sector shows.
bool may_spread(const Fabric& fabric, const Section& section) {
  constexpr std::uint32_t most_stitches = 600;
  return std::all_of(section.rounds.begin(), section.rounds.end(), [&](std::uint32_t number) {
    const fabric::Round& row = fabric.rounds[number];
    if (row.count == 0 || row.count > most_stitches || row.joined_open > 0 || row.attached) return false;
    const std::vector<fabric::Place> places = places_of(fabric, number);
    return std::none_of(places.begin(), places.end(),
                        [](const fabric::Place& place) { return place.what == fabric::On::row_end; });
  });
}

} // namespace

bool begins_in_first_chain(const Fabric& fabric, const fabric::Part& part) {
  if (part.start != fabric::Start::chain || part.foundation == fabric::none || part.rounds == 0) return false;
  const StitchId first = fabric.rounds[part.foundation].first_stitch;
  const std::vector<fabric::Place> places = places_of(fabric, part.first_round);
  return places.size() > 1 && std::all_of(places.begin(), places.end(), [first](const fabric::Place& place) {
           return is_stitch(place) && place.of == first;
         });
}

std::uint32_t reach_of_rows(const Fabric& fabric, const Section& section) {
  return heights(fabric, section) / 100 + 1;
}

std::optional<Sector> sector_of(const Fabric& fabric, std::uint32_t part, const Section& section) {
  constexpr std::uint64_t least = 250, third = 375, half = 720, quarter_of_square = 450;
  if (!section.rows || section.before != fabric::none || section.rounds.empty() || !section.edging.empty())
    return std::nullopt;
  if (!begins_small(fabric, fabric.parts[part]) || !may_spread(fabric, section)) return std::nullopt;
  const std::uint64_t share = share_of_round(fabric, section);
  if (share < least || ever_narrower(fabric, section)) return std::nullopt;
  if (has_spine(fabric, section.rounds)) {
    const bool half_square = share >= quarter_of_square || grow_at_ends(fabric, section);
    return Sector{half_square ? 6 : 3, true};
  }
  if (!grow_inside(fabric, section)) return std::nullopt;
  return Sector{share < third ? 4 : share < half ? 6 : 8, false};
}

} // namespace whorl::layout
