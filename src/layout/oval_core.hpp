#pragma once

#include "layout/items.hpp"
#include "layout/stadium.hpp"

#include <cstdint>
#include <optional>
#include <vector>

namespace whorl::layout {

/// The chains that a round goes along, if it is the first of an oval: from the chain at the far end to the
/// one nearest the hook that is worked into.
struct OvalCore {
  fabric::StitchId far = fabric::none, near = 0;
  std::uint32_t chains() const { return far == fabric::none ? 0 : near - far + 1; }
};

/// Of a part whose first round is worked along one side of its starting chain and back along the other; of
/// any other part none.
OvalCore oval_core(const fabric::Fabric& fabric, std::uint32_t part);

/// Where the stitches of a first round want to be, on `seats_lap`: beside their chain, or
/// fanned round the end. `pitch`: of the chain.
std::vector<std::optional<double>> first_seats(const fabric::Fabric& fabric, const OvalCore& core,
                                               const Stadium& stadium, const std::vector<Item>& items,
                                               double pitch);

} // namespace whorl::layout
