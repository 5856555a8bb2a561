#pragma once
/// Rows by chance that grow fast from a small start: half circles, triangles with a spine.

#include "pictures/floor.hpp"

#include <string>

namespace whorl::pictures {

/// The start and the rows of a part.
std::string spread_rows_by_chance(Dice& dice);

} // namespace whorl::pictures
