#include "fabric/items.hpp"

#include <algorithm>

namespace whorl::fabric {
namespace {

/// Passes that begin at one place are sought at so many distances.
constexpr int distances = 8;

bool counts_here(const Stitch& stitch) { return (stitch.flags & counts) && !(stitch.flags & joins); }

std::uint32_t places_of(const Fabric& fabric, StitchId id) {
  std::uint32_t places = 0;
  Place last;
  for (const Leg& leg : own_legs_of(fabric, id)) {
    if (places == 0 || !(leg.into == last)) ++places;
    last = leg.into;
  }
  return places;
}

/// Whether a stitch goes into the place of the one before it, and nowhere else.
bool shares_place(const Fabric& fabric, StitchId before, StitchId id) {
  const Legs a = own_legs_of(fabric, before), b = legs_of(fabric, id);
  if (a.size() == 0 || b.size() == 0 || places_of(fabric, id) > 1) return false;
  return (a.end() - 1)->into == b.begin()->into;
}

Item item_of(const Fabric& fabric, StitchId id, std::uint32_t number) {
  const Stitch& stitch = fabric.stitches[id];
  Item item;
  item.first = item.last = number;
  item.origin = stitch.origin;
  item.chain = (stitch.flags & starts_chain) != 0;
  item.places = item.chain ? 1 : places_of(fabric, id);
  const Legs legs = own_legs_of(fabric, id);
  item.in_ring = legs.size() > 0 && legs.begin()->into.what == On::ring;
  return item;
}

/// A round that goes into one chain alone is a ring in all but name.
void mark_ring(std::vector<Item>& items) {
  if (items.size() == 1 && items.front().stitches() > 3) items.front().in_ring = true;
}

std::uint32_t stitches_in(const std::vector<Item>& items, std::size_t from, std::size_t to) {
  return items[to - 1].last - items[from].first + 1;
}

std::uint32_t places_in(const std::vector<Item>& items, std::size_t from, std::size_t to) {
  std::uint32_t places = 0;
  for (std::size_t i = from; i < to; ++i) places += items[i].places;
  return places;
}

bool is_alike(const Item& a, const Item& b) {
  return a.origin == b.origin && a.stitches() == b.stitches() && a.places == b.places;
}

/// How often the items from `from` come again `length` further on, in all.
std::uint32_t times_at(const std::vector<Item>& items, std::size_t from, std::size_t length) {
  std::size_t at = from;
  while (at + 2 * length <= items.size() &&
         std::equal(items.begin() + static_cast<std::ptrdiff_t>(at),
                    items.begin() + static_cast<std::ptrdiff_t>(at + length),
                    items.begin() + static_cast<std::ptrdiff_t>(at + length), is_alike))
    at += length;
  return static_cast<std::uint32_t>((at - from) / length + 1);
}

/// The item that begins another run behind `at`.
std::size_t run_end(const std::vector<Item>& items, std::size_t at) {
  std::size_t end = at + 1;
  while (end < items.size() && is_alike(items[end], items[at])) ++end;
  return end;
}

} // namespace

std::vector<Item> items_of(const Fabric& fabric, std::uint32_t index) {
  const Round& round = fabric.rounds[index];
  std::vector<Item> items;
  std::uint32_t number = 0;
  StitchId before = none;
  const StitchId chain = round.counting_chain;
  if (chain != none && chain < round.first_stitch) items.push_back(item_of(fabric, chain, ++number));
  for (StitchId id = round.first_stitch; id < round.first_stitch + round.count; ++id) {
    if (!counts_here(fabric.stitches[id])) continue;
    ++number;
    const bool in_ring = !items.empty() && items.back().in_ring;
    if (before != none && !in_ring && shares_place(fabric, before, id))
      items.back().last = number;
    else
      items.push_back(item_of(fabric, id, number));
    before = id;
  }
  mark_ring(items);
  return items;
}

std::vector<Passes> passes_of(const std::vector<Item>& items) {
  std::vector<Passes> all;
  for (std::size_t from = 0; from < items.size();) {
    int tried = 0;
    std::size_t reached = run_end(items, from), shortest = 1;
    for (std::size_t at = reached; at < items.size() && tried < distances; at = run_end(items, at)) {
      if (items[at].origin != items[from].origin) continue;
      ++tried;
      const std::size_t length = at - from;
      if (from + 2 * length <= reached && length % shortest == 0) continue; // two passes at once
      const std::uint32_t times = times_at(items, from, length);
      if (times < 2) continue;
      all.push_back({times, stitches_in(items, from, at), places_in(items, from, at)});
      shortest = length;
      reached = std::max(reached, from + length * times);
    }
    from = reached;
  }
  return all;
}

} // namespace whorl::fabric
