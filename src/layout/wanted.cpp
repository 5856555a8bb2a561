#include "layout/wanted.hpp"

#include <algorithm>

namespace whorl::layout {

bool is_wanted(const Wanted& wanted, std::uint32_t part) {
  return wanted.parts.empty() ||
         std::find(wanted.parts.begin(), wanted.parts.end(), part) != wanted.parts.end();
}

bool is_wanted(const Wanted& wanted, const fabric::Round& round) {
  return is_wanted(wanted, round.part) && (wanted.from == 0 || round.number >= wanted.from) &&
         (wanted.to == 0 || round.number <= wanted.to);
}

bool leaves_rounds_out(const Wanted& wanted) { return wanted.from > 0 || wanted.to > 0; }

Places wanted_places(const fabric::Fabric& fabric, const std::vector<std::uint32_t>& rounds,
                     const Wanted& wanted) {
  Places places;
  for (std::size_t i = 0; i < rounds.size(); ++i) {
    if (!is_wanted(wanted, fabric.rounds[rounds[i]])) continue;
    if (places.empty()) places.first = i;
    places.last = i;
  }
  return places;
}

} // namespace whorl::layout
