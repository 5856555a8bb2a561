#pragma once

#include "fabric/fabric.hpp"
#include "layout/width.hpp"

#include <cstdint>
#include <vector>

namespace whorl::layout {

/// A run of rounds that becomes one disc or strip; `first` and `last` count from the first of what was
/// divided.
struct Stretch {
  std::uint32_t first = 0, last = 0;
  bool inward = false;
  bool strip = false;
  bool operator==(const Stretch&) const = default;
};

/// How a part begins and ends, as far as its division into figures asks.
struct Ends {
  bool from_centre = true; ///< begun in a ring or one chain, or round a chain
  bool gathered = false;   ///< closed at its end
  std::uint32_t core = 0;  ///< chains that its first rounds go round
};

/// Divides rounds that lie so wide into discs: outward while they grow or stay, inward where they shrink to a
/// closing or a neck or lose more than a quarter. Lace lies flat though its rounds differ: it is turned
/// inward at a closing or where it loses more than a third.
std::vector<Stretch> divide(const std::vector<Width>& widths, const Ends& ends);

/// The same of rounds of so many plain stitches.
std::vector<Stretch> divide(const std::vector<std::uint32_t>& counts, const Ends& ends);

/// The division of rounds of a part that follow each other and lie so wide, in places of that list. Of a part
/// begun in the loops of another the owner stands before them, as wide as it gives loops.
std::vector<Stretch> divide(const fabric::Fabric& fabric, std::uint32_t part,
                            const std::vector<std::uint32_t>& rounds, const std::vector<Width>& widths);

} // namespace whorl::layout
