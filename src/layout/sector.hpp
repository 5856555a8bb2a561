#pragma once

#include "fabric/fabric.hpp"
#include "layout/section.hpp"

#include <cstdint>
#include <optional>

namespace whorl::layout {

/// Over how much of a circle rows spread that grow fast from a small start, or of a square where they have a
/// spine.
struct Sector {
  int twelfths = 12;  ///< about 12 o'clock; 12: all of it
  bool spine = false; ///< groups in the middle of its rows stand one on the other, in a corner of the square
  double part() const { return twelfths / 12.0; }
};

/// The sector of a flat piece that begins in a ring or one chain, never grows narrower and is more than a
/// quarter as wide as whole rounds would be, its increases not only at the ends of its rows; nothing: its
/// rows lie straight.
std::optional<Sector> sector_of(const fabric::Fabric& fabric, std::uint32_t part, const Section& section);

/// How far its last row is from the start, in stitches.
std::uint32_t reach_of_rows(const fabric::Fabric& fabric, const Section& section);

/// Whether all stitches of a part's first row go into the first chain of its starting chain.
bool begins_in_first_chain(const fabric::Fabric& fabric, const fabric::Part& part);

} // namespace whorl::layout
