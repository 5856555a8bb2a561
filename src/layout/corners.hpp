#pragma once

#include "layout/items.hpp"

#include <vector>

namespace whorl::layout {

/// Three stitches or more in one place with none between them, odd in number, so that one is their middle.
struct Crowd {
  fabric::Place into;
  fabric::StitchId middle = fabric::none;
};
std::vector<Crowd> crowds_of(const fabric::Fabric& fabric, std::uint32_t round);

/// Whether the crowds of a round, of which there are three to six, have those of the next on their middles:
/// the corners of a motif without chain spaces.
bool has_solid_corners(const fabric::Fabric& fabric, std::uint32_t round, std::uint32_t next);

/// Whether any round of a disc does.
bool has_solid_corners(const fabric::Fabric& fabric, const std::vector<Ring>& rings);

} // namespace whorl::layout
