#include "layout/items.hpp"

#include "fabric/fabric.hpp"
#include "layout/base.hpp"

#include <algorithm>

namespace whorl::layout {
namespace {

using fabric::Fabric;
using fabric::Legs;
using fabric::Stitch;
using fabric::StitchId;

/// More than this in one place are drawn side by side.
constexpr std::uint32_t most_in_one_symbol = 5;

/// The loops a symbol is marked with: those of its legs where they agree on a part of the top.
std::uint8_t marked_loops_of(const Fabric& fabric, StitchId stitch) {
  const Legs legs = legs_of_one(fabric, stitch);
  if (legs.size() == 0) return stitch::both;
  const std::uint8_t loops = legs.begin()->into.loops;
  if (loops != stitch::front && loops != stitch::back && loops != stitch::third) return stitch::both;
  for (const fabric::Leg& leg : legs)
    if (leg.into.loops != loops || leg.into.what != fabric::On::top) return stitch::both;
  // an invisible decrease takes front loops by its nature: no mark
  const auto own_nature = [&] {
    return stitch::shape_of(fabric.kinds[fabric.stitches[stitch].kind]).front_loops_only;
  };
  return loops == stitch::front && own_nature() ? static_cast<std::uint8_t>(stitch::both) : loops;
}

/// Into a ring, a space or the one chain that a part begins with a whole group goes, and it is no increase.
bool holds_many(const Fabric& fabric, const fabric::Place& into, std::uint32_t round) {
  const fabric::Part& part = fabric.parts[fabric.rounds[round].part];
  return into.what == fabric::On::ring || into.what == fabric::On::space || is_gap(into) ||
         (part.start == fabric::Start::second_chain && round == part.first_round);
}

/// The chains at the ends of a round that goes along both sides of them: stitches fan round an end.
struct EndChains {
  StitchId first = fabric::none, last = fabric::none;
};

EndChains end_chains(const Fabric& fabric, const fabric::Round& round) {
  EndChains ends;
  const fabric::Part& part = fabric.parts[round.part];
  if (!round.both_sides || part.foundation == fabric::none) return ends;
  const fabric::Round& chain = fabric.rounds[part.foundation];
  for (StitchId stitch = round.first_stitch; stitch < round.first_stitch + round.count; ++stitch) {
    if ((fabric.stitches[stitch].flags & fabric::joins) != 0) continue; // into the top of the chains skipped
    for (const fabric::Leg& leg : legs_of_one(fabric, stitch)) {
      const StitchId of = leg.into.of;
      const bool in_chain = leg.into.what != fabric::On::ring && leg.into.what != fabric::On::space &&
                            of >= chain.first_stitch && of < chain.first_stitch + chain.count;
      if (!in_chain) continue;
      if (ends.first == fabric::none || of < ends.first) ends.first = of;
      if (ends.last == fabric::none || of > ends.last) ends.last = of;
    }
  }
  return ends;
}

bool is_plain(const Stitch& stitch) { return (stitch.flags & (fabric::joins | fabric::starts_chain)) == 0; }

bool share_a_place(const Fabric& fabric, const EndChains& ends, StitchId one, StitchId other) {
  const Stitch &a = fabric.stitches[one], &b = fabric.stitches[other];
  if (a.kind != b.kind || a.yarn != b.yarn || !is_plain(a) || !is_plain(b)) return false;
  const Legs p = legs_of_one(fabric, one), q = legs_of_one(fabric, other);
  if (((a.flags | b.flags) & (fabric::holds_part | fabric::two_layers)) != 0)
    return false; // their feet do not stand side by side
  return p.size() == 1 && q.size() == 1 && p.begin()->into == q.begin()->into &&
         p.begin()->into.of != ends.first && p.begin()->into.of != ends.last &&
         !holds_many(fabric, p.begin()->into, a.round);
}

Item item_of(const Fabric& fabric, StitchId stitch, bool echo) {
  Item item;
  item.key.kind = fabric.stitches[stitch].kind;
  if (!echo) item.key.loops = marked_loops_of(fabric, stitch);
  item.first = stitch;
  return item;
}

} // namespace

std::vector<Item> items_of(const Fabric& fabric, std::uint32_t round, bool echo) {
  const fabric::Round& worked = fabric.rounds[round];
  const EndChains ends = end_chains(fabric, worked);
  std::vector<Item> items;
  items.reserve(worked.count);
  for (StitchId stitch = worked.first_stitch; stitch < worked.first_stitch + worked.count; ++stitch) {
    const bool shares = !items.empty() && share_a_place(fabric, ends, items.back().first, stitch);
    if (shares && items.back().count < most_in_one_symbol) {
      items.back().key.in_one = static_cast<std::uint16_t>(++items.back().count);
      continue;
    }
    items.push_back(item_of(fabric, stitch, echo));
    if (shares) items.back().key.loops = stitch::both; // the symbol before it shows the loop of all
  }
  set_bases(fabric, round, items);
  return items;
}

bool is_shaping(const Fabric& fabric, const Item& item) {
  const fabric::Legs legs = legs_of(fabric, item);
  return item.count > 1 || (legs.size() > 1 && !(legs.begin()->into == (legs.end() - 1)->into));
}

bool shares_place(const Fabric& fabric, const Item& one, const Item& other) {
  const fabric::Legs p = legs_of(fabric, one), q = legs_of(fabric, other);
  return p.size() > 0 && q.size() > 0 && is_stitch(p.begin()->into) &&
         p.begin()->into.of == q.begin()->into.of && (p.end() - 1)->into.of == (q.end() - 1)->into.of;
}

std::uint8_t marked_loops(const std::vector<Item>& items) {
  if (items.empty()) return stitch::both;
  const std::uint8_t loops = items.front().key.loops;
  const bool alike =
      std::all_of(items.begin(), items.end(), [loops](const Item& item) { return item.key.loops == loops; });
  return alike ? loops : static_cast<std::uint8_t>(stitch::both);
}

bool closes_flat(const Fabric& fabric, std::uint32_t round) {
  const auto first = fabric.stitches.begin() + fabric.rounds[round].first_stitch;
  return std::any_of(first, first + fabric.rounds[round].count,
                     [](const Stitch& stitch) { return (stitch.flags & fabric::two_layers) != 0; });
}

bool has_loop_marks(const Fabric& fabric, std::uint32_t round) {
  const fabric::Round& worked = fabric.rounds[round];
  bool may = false; // most rounds have none, which is quickly told
  for (StitchId i = 0; i < worked.count && !may; ++i)
    may = marked_loops_of(fabric, worked.first_stitch + i) != stitch::both;
  if (!may) return false;
  const std::vector<Item> items = items_of(fabric, round);
  return std::any_of(items.begin(), items.end(),
                     [](const Item& item) { return item.key.loops != stitch::both; });
}

} // namespace whorl::layout
