#include "layout/beneath.hpp"

#include "layout/items.hpp"

#include <algorithm>
#include <utility>

namespace whorl::layout {

using fabric::Fabric;
using fabric::StitchId;

Worked worked_of(const Fabric& fabric, const fabric::Round& row, const fabric::Round& chain) {
  Worked worked;
  StitchId begin = fabric::none, end = fabric::none;
  for (StitchId stitch = row.first_stitch; stitch < row.first_stitch + row.count; ++stitch)
    for (const fabric::Leg& leg : fabric::own_legs_of(fabric, stitch)) {
      const StitchId of = leg.into.of;
      if (leg.into.what == fabric::On::ring || leg.into.what == fabric::On::space) continue;
      if (of < chain.first_stitch || of >= chain.first_stitch + chain.count) continue;
      if (begin == fabric::none) begin = of;
      end = of;
      worked.first = std::min(worked.first, of);
      worked.last = std::max(worked.last, of);
    }
  worked.descending = begin == fabric::none || begin >= end;
  return worked;
}

std::uint32_t chains_high(const Fabric& fabric, const fabric::Round& row) {
  for (StitchId stitch = row.first_stitch; stitch < row.first_stitch + row.count; ++stitch) {
    const stitch::Shape shape = stitch::shape_of(fabric.kinds[fabric.stitches[stitch].kind]);
    if (shape.legs > 0) return static_cast<std::uint32_t>(std::max(1, shape.height));
  }
  return 1;
}

std::uint32_t chains_on_end(const Fabric& fabric, const fabric::Round& row, std::uint32_t chains) {
  int tallest = 1;
  for (StitchId stitch = row.first_stitch; stitch < row.first_stitch + row.count; ++stitch)
    tallest = std::max(tallest, stitch::shape_of(fabric.kinds[fabric.stitches[stitch].kind]).height);
  const auto high = static_cast<std::uint32_t>(tallest);
  return chains > high + 1 ? high : chains;
}

std::vector<Item> items_beneath(const Fabric& fabric, std::uint32_t round, std::uint32_t row) {
  constexpr std::size_t beside = 2;
  std::vector<Item> items = items_of(fabric, round, true);
  std::size_t first = items.size(), last = 0;
  const fabric::Round& worked = fabric.rounds[row];
  for (StitchId stitch = worked.first_stitch; stitch < worked.first_stitch + worked.count; ++stitch)
    for (const fabric::Leg& leg : fabric::own_legs_of(fabric, stitch))
      for (std::size_t i = 0; i < items.size(); ++i)
        if (items[i].first <= leg.into.of && leg.into.of < items[i].first + items[i].count &&
            is_stitch(leg.into))
          first = std::min(first, i), last = std::max(last, i);
  if (first >= items.size()) return items;
  items.resize(std::min(items.size(), last + 1 + beside));
  items.erase(items.begin(), items.begin() + static_cast<std::ptrdiff_t>(first - std::min(first, beside)));
  return items;
}

std::optional<Owner> owner_beneath(const Fabric& fabric, std::uint32_t part, std::uint32_t begins) {
  if (fabric.rounds[begins].part == part) return std::nullopt;
  std::optional<Owner> owner = owner_of(fabric, part);
  return owner && owner->round == begins ? owner : std::nullopt;
}

} // namespace whorl::layout
