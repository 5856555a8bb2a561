#pragma once

#include "fabric/fabric.hpp"
#include "layout/place.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace whorl::layout {

/// The letter by which a sheet calls a part: A to Z, then AA, AB …
std::string part_letter(std::uint32_t part);

/// A stitch in whose loops later parts are begun, or through which another part is joined, and their letters.
struct Kept {
  fabric::StitchId stitch = 0;
  std::string letters;
  bool joined = false; ///< by stitches that go through both parts: both show the other's letter
  bool first = false;  ///< … by the first of them
};

/// All of them, in order of stitches.
std::vector<Kept> kept_loops(const fabric::Fabric& fabric);

/// Those of a part's own stitches.
std::vector<Kept> kept_of(const fabric::Fabric& fabric, const fabric::Part& part,
                          const std::vector<Kept>& all);

/// The round in whose loops a part is begun, as its own figure shows it.
struct Owner {
  std::uint32_t round = fabric::none;
  bool against = false;    ///< the part runs against it: the owner is seen from its other end
  std::vector<Item> items; ///< not yet placed, from the first loop that the part uses to the last
  std::vector<Kept> kept;  ///< the loops that it uses, in order of stitches
};

/// The owner of a part that is begun in the loops of another; nothing where it is not.
std::optional<Owner> owner_of(const fabric::Fabric& fabric, std::uint32_t part);

} // namespace whorl::layout
