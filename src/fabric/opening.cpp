#include "fabric/opening.hpp"

#include <algorithm>
#include <iterator>

namespace whorl::fabric {
namespace {

StitchId end_of(const Round& round) { return round.first_stitch + round.count; }

/// Per kind, whether it takes front loops straight onto the hook: the back loops behind it are inside and out
/// of reach.
std::vector<bool> hiding_kinds(const Fabric& fabric) {
  std::vector<bool> hiding;
  for (const stitch::StitchKind& kind : fabric.kinds)
    hiding.push_back(stitch::shape_of(kind).front_loops_only);
  return hiding;
}

/// Does something with every leg of a round's own part that goes into one of its stitches from later on.
template <class Each> void for_legs_into(const Fabric& fabric, std::uint32_t index, Each each) {
  const Round& round = fabric.rounds[index];
  for (StitchId id = end_of(round); id < fabric.stitches.size(); ++id) {
    if (fabric.rounds[fabric.stitches[id].round].part != round.part) break;
    for (const Leg& leg : legs_of(fabric, id))
      if (leg.into.what == On::top && leg.into.of >= round.first_stitch && leg.into.of < end_of(round))
        each(id, leg);
  }
}

/// Loops of the round's stitches that later rounds of its own part are worked into, or hide.
std::vector<std::uint8_t> taken_by_own(const Fabric& fabric, std::uint32_t index) {
  const std::vector<bool> hiding = hiding_kinds(fabric);
  const Round& round = fabric.rounds[index];
  std::vector<std::uint8_t> taken(round.count, stitch::no_loop);
  for_legs_into(fabric, index, [&](StitchId id, const Leg& leg) {
    taken[leg.into.of - round.first_stitch] |=
        hiding[fabric.stitches[id].kind] ? std::uint8_t{stitch::both} : leg.into.loops;
  });
  return taken;
}

bool is_in_part(std::uint8_t taken) {
  const std::uint8_t loops = taken & stitch::both;
  return loops == stitch::front || loops == stitch::back;
}

/// The loops that were left where stitches were worked into one loop only; 0: nowhere.
std::uint8_t loops_mostly_left(const std::vector<std::uint8_t>& taken) {
  const auto one = std::find_if(taken.begin(), taken.end(), is_in_part);
  return one == taken.end() ? std::uint8_t{0} : static_cast<std::uint8_t>(stitch::both & ~*one);
}

} // namespace

bool has_top(const Fabric& fabric, StitchId id) {
  const Stitch& stitch = fabric.stitches[id];
  if (stitch.flags & joins) return false;
  if (stitch.flags & starts_chain) return stitch.flags & counts;
  return fabric.kinds[stitch.kind].makes > 0;
}

std::vector<Place> tops_of(const Fabric& fabric, std::uint32_t index) {
  const Round& round = fabric.rounds[index];
  std::vector<Place> places;
  const StitchId chain = round.counting_chain;
  if (chain != none && chain < round.first_stitch) places.push_back(Place{chain, On::top, stitch::both});
  for (StitchId id = round.first_stitch; id < end_of(round); ++id)
    if (has_top(fabric, id)) places.push_back(Place{id, On::top, stitch::both});
  return places;
}

std::vector<Place> loops_left(const Fabric& fabric, std::uint32_t index, std::uint8_t loops) {
  const std::vector<std::uint8_t> taken = taken_by_own(fabric, index);
  if (loops == 0) loops = loops_mostly_left(taken);
  std::vector<Place> places;
  bool in_part = false;
  for (const Place& top : tops_of(fabric, index)) {
    const StitchId first = fabric.rounds[index].first_stitch;
    const std::uint8_t of_it = top.of < first ? std::uint8_t{0} : taken[top.of - first];
    if (loops == 0 || (of_it & loops) != 0) continue;
    in_part |= is_in_part(of_it);
    places.push_back(Place{top.of, On::top, loops});
  }
  return in_part ? places : std::vector<Place>{};
}

bool hides_loops(const Fabric& fabric, std::uint32_t index) {
  const std::vector<bool> hiding = hiding_kinds(fabric);
  bool hides = false;
  for_legs_into(fabric, index,
                [&](StitchId id, const Leg&) { hides = hides || hiding[fabric.stitches[id].kind]; });
  return hides;
}

std::vector<Place> left_unworked(const Fabric& fabric, std::uint32_t round, bool& of_it) {
  std::vector<Place> by, of;
  for (const Unworked& left : fabric.unworked) {
    if (left.round == round) by.push_back(left.place);
    if (left.place.of != none && fabric.stitches[left.place.of].round == round) of.push_back(left.place);
  }
  by = still_free(fabric, by);
  of_it = by.empty();
  return of_it ? still_free(fabric, of) : by;
}

namespace {

bool is_taken(const Fabric& fabric, const Place& place) {
  return place.of < fabric.taken.size() && (fabric.taken[place.of] & place.loops) != 0;
}

} // namespace

bool all_taken(const Fabric& fabric, const std::vector<Place>& places) {
  return std::all_of(places.begin(), places.end(),
                     [&](const Place& place) { return is_taken(fabric, place); });
}

std::vector<Place> last_unworked(const Fabric& fabric, const std::vector<Place>& places) {
  std::vector<Place> last;
  std::uint32_t round = none;
  for (auto left = fabric.unworked.rbegin(); left != fabric.unworked.rend(); ++left) {
    if (is_taken(fabric, left->place) || (round != none && left->round != round)) continue;
    round = left->round;
    last.push_back(left->place);
  }
  std::reverse(last.begin(), last.end());
  return last.empty() ? places : last;
}

std::vector<Place> still_free(const Fabric& fabric, const std::vector<Place>& places) {
  std::vector<Place> free;
  std::copy_if(places.begin(), places.end(), std::back_inserter(free),
               [&](const Place& place) { return !is_taken(fabric, place); });
  return free.empty() ? places : free;
}

std::vector<Place> first_gap(std::vector<Place> places, std::uint32_t wanted) {
  const auto breaks = [](const Place& a, const Place& b) { return b.of != a.of + 1; };
  const auto end = std::adjacent_find(places.begin(), places.end(), breaks);
  if (end == places.end()) return places;
  const auto length = static_cast<std::size_t>(end - places.begin()) + 1;
  bool alike = places.size() % length == 0 && wanted > 0 && wanted <= length;
  for (std::size_t at = 1; alike && at < places.size(); ++at)
    alike = breaks(places[at - 1], places[at]) == (at % length == 0);
  if (alike) places.resize(length);
  return places;
}

const char* name_of_loops(std::uint8_t loops) {
  if (loops == stitch::front) return "front loops";
  return loops == stitch::back ? "back loops" : "loops";
}

} // namespace whorl::fabric
